import { idSchema } from '@gusset/contracts/common';
import { paperSizeSchema } from '@gusset/contracts/drawings';
import { SHEETS } from '@gusset/contracts/sheet';
import type { FastifyPluginAsync } from 'fastify';
import { z } from 'zod';
import type { Deps } from '../deps.ts';
import { actorWith, answering } from '../files/file.routes.ts';
import { mockUpDxf, mockUpPaper } from './mock-up-paper.ts';

const atSchema = z.object({ jobId: idSchema });
const querySchema = z.object({ paper: paperSizeSchema.nullable().default(null) });

/** `GET /api/papers/mock-up/<job>?paper=A4`: side profile and opening at full size, in tiles. */
export const mockUpRoutes: FastifyPluginAsync<{ readonly deps: Deps }> = async (app, { deps }) => {
  app.get('/api/papers/mock-up/:jobId', (request, reply) =>
    answering(deps, request, reply, async () => {
      const actor = await actorWith(deps, request, SHEETS.box.readPermission);
      const { jobId } = atSchema.parse(request.params);
      const { paper } = querySchema.parse(request.query);
      const { pdf, fileName } = await mockUpPaper(deps, actor, { jobId, paper });
      return reply
        .header('content-type', 'application/pdf')
        .header('x-content-type-options', 'nosniff')
        .header('content-disposition', `inline; filename="${fileName}"`)
        .send(Buffer.from(pdf));
    }),
  );

  /** `GET /api/papers/mock-up-dxf/<job>`: the same outlines in millimetres. */
  app.get('/api/papers/mock-up-dxf/:jobId', (request, reply) =>
    answering(deps, request, reply, async () => {
      const actor = await actorWith(deps, request, SHEETS.box.readPermission);
      const { jobId } = atSchema.parse(request.params);
      const { dxf, fileName } = await mockUpDxf(deps, actor, jobId);
      return reply
        .header('content-type', 'image/vnd.dxf')
        .header('x-content-type-options', 'nosniff')
        .header('content-disposition', `attachment; filename="${fileName}"`)
        .send(dxf);
    }),
  );
};
