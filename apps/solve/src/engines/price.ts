// One quote a line: the pricing engine's own input and answer, with the document's id.
import { solveIdSchema } from '@gusset/contracts/acoustics';
import { pricedQuoteSchema, quoteInputSchema } from '@gusset/contracts/estimating';
import { priceQuote } from '@gusset/estimating';
import { isRefusal } from '@gusset/units';
import type { z } from 'zod';
import type { SolveEngine } from '../engine.ts';

const requestSchema = quoteInputSchema.extend({ id: solveIdSchema });
const answerSchema = pricedQuoteSchema.extend({ id: solveIdSchema });

export const engine: SolveEngine<z.infer<typeof requestSchema>, z.infer<typeof answerSchema>> = {
  name: 'price',
  inputSchema: requestSchema,
  outputSchema: answerSchema,
  solve({ id, ...input }) {
    const quote = priceQuote(input);
    return isRefusal(quote) ? quote : { id, ...quote };
  },
};
