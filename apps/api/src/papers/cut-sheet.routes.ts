import { idSchema } from '@gusset/contracts/common';
import { paperSizeSchema } from '@gusset/contracts/drawings';
import { SHEETS } from '@gusset/contracts/sheet';
import type { FastifyPluginAsync } from 'fastify';
import { z } from 'zod';
import type { Deps } from '../deps.ts';
import { actorWith, answering } from '../files/file.routes.ts';
import { cutFiles } from './cut-files.ts';
import { cutSheetPaper } from './cut-sheet.ts';

const atSchema = z.object({ jobId: idSchema });
const querySchema = z.object({ paper: paperSizeSchema.nullable().default(null) });

/** `GET /api/papers/cut-sheet/<job>?paper=A4`: a PDF for the saw. */
export const cutSheetRoutes: FastifyPluginAsync<{ readonly deps: Deps }> = async (app, { deps }) => {
  app.get('/api/papers/cut-sheet/:jobId', (request, reply) =>
    answering(deps, request, reply, async () => {
      const actor = await actorWith(deps, request, SHEETS.cutting.readPermission);
      const { jobId } = atSchema.parse(request.params);
      const { paper } = querySchema.parse(request.query);
      const { pdf, fileName } = await cutSheetPaper(deps, actor, { jobId, paper });
      return reply
        .header('content-type', 'application/pdf')
        .header('x-content-type-options', 'nosniff')
        .header('content-disposition', `inline; filename="${fileName}"`)
        .send(Buffer.from(pdf));
    }),
  );

  /** `GET /api/papers/cut-files/<job>`: a ZIP of DXF, SVG and CSV for machines and spreadsheets. */
  app.get('/api/papers/cut-files/:jobId', (request, reply) =>
    answering(deps, request, reply, async () => {
      const actor = await actorWith(deps, request, SHEETS.cutting.readPermission);
      const { jobId } = atSchema.parse(request.params);
      const { zip, fileName } = await cutFiles(deps, actor, jobId);
      return reply
        .header('content-type', 'application/zip')
        .header('x-content-type-options', 'nosniff')
        .header('content-disposition', `attachment; filename="${fileName}"`)
        .send(Buffer.from(zip));
    }),
  );
};
