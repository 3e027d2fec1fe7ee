import { idSchema } from '@gusset/contracts/common';
import { paperSizeSchema } from '@gusset/contracts/drawings';
import type { FastifyPluginAsync } from 'fastify';
import { z } from 'zod';
import type { Deps } from '../deps.ts';
import { actorWith, answering } from '../files/file.routes.ts';
import { surveyPaper } from './survey-paper.ts';

const atSchema = z.object({ surveyId: idSchema });
const querySchema = z.object({ paper: paperSizeSchema.nullable().default(null) });

/** `GET /api/papers/survey-sheet/<survey>?paper=A4`: a PDF to print and take to the car. */
export const surveyPaperRoutes: FastifyPluginAsync<{ readonly deps: Deps }> = async (app, { deps }) => {
  app.get('/api/papers/survey-sheet/:surveyId', (request, reply) =>
    answering(deps, request, reply, async () => {
      const actor = await actorWith(deps, request, 'vehicle.read');
      const { surveyId } = atSchema.parse(request.params);
      const { paper } = querySchema.parse(request.query);
      const pdf = await surveyPaper(deps, actor, { surveyId, paper });
      return reply
        .header('content-type', 'application/pdf')
        .header('x-content-type-options', 'nosniff')
        .header('content-disposition', 'inline; filename="measuring-sheet.pdf"')
        .send(Buffer.from(pdf));
    }),
  );
};
