// One box a line: a design with the document's id in, its panels, volumes, mass and findings out.
import { solveIdSchema } from '@gusset/contracts/acoustics';
import { boxDesignSchema, boxResultSchema } from '@gusset/contracts/enclosure';
import { buildBox } from '@gusset/enclosure';
import { isRefusal } from '@gusset/units';
import type { z } from 'zod';
import type { SolveEngine } from '../engine.ts';

const requestSchema = boxDesignSchema.extend({ id: solveIdSchema });
const answerSchema = boxResultSchema.extend({ id: solveIdSchema });

export const engine: SolveEngine<z.infer<typeof requestSchema>, z.infer<typeof answerSchema>> = {
  name: 'panels',
  inputSchema: requestSchema,
  outputSchema: answerSchema,
  solve({ id, ...design }) {
    const box = buildBox(design);
    return isRefusal(box) ? box : { id, ...box };
  },
};
