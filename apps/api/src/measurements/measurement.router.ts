// Sweeps by what they belong to, each with its own rights; what is worked out from them stands beside them.
import { idempotencyKeySchema, idSchema, versionSchema } from '@gusset/contracts/common';
import {
  compareBuiltBoxSchema,
  fitDriverSchema,
  importSweepSchemas,
  keepTransferSchema,
  workOutTransferSchema,
} from '@gusset/contracts/measurement';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import { compareBuiltBox } from './built-box.service.ts';
import { fitDriver, takeDriverFigures } from './driver-fit.service.ts';
import { archiveSweep, importSweep, listSweeps } from './sweep.service.ts';
import { keepTransfer, listTransfers, workOutTransfer } from './transfer.service.ts';

const archived = z.boolean().default(false);
const putAwaySchema = z.strictObject({ sweepId: idSchema, archived: z.boolean() });

const driverRouter = router({
  list: allowed('catalogue.read')
    .input(z.strictObject({ driverId: idSchema, archived }))
    .query(({ ctx, input }) => listSweeps(ctx.deps, ctx.who, { owner: 'driver', id: input.driverId }, input)),

  import: allowed('catalogue.edit')
    .input(z.strictObject({ key: idempotencyKeySchema, sweep: importSweepSchemas.driver }))
    .mutation(({ ctx, input: { key, sweep } }) => {
      const { driverId: id, ...rest } = sweep;
      return importSweep(ctx.deps, ctx.who, { owner: 'driver', id }, key, rest);
    }),

  archive: allowed('catalogue.edit')
    .input(putAwaySchema)
    .mutation(({ ctx, input }) => archiveSweep(ctx.deps, ctx.who, { owner: 'driver' }, input)),

  fit: allowed('catalogue.read')
    .input(fitDriverSchema)
    .query(({ ctx, input }) => fitDriver(ctx.deps, ctx.who, input)),

  take: allowed('catalogue.edit')
    .input(fitDriverSchema.extend({ version: versionSchema }))
    .mutation(({ ctx, input }) => takeDriverFigures(ctx.deps, ctx.who, input)),
});

const jobRouter = router({
  list: allowed('job.read')
    .input(z.strictObject({ jobId: idSchema, archived }))
    .query(({ ctx, input }) => listSweeps(ctx.deps, ctx.who, { owner: 'job', id: input.jobId }, input)),

  // Whoever measures cars measures boxes: no design is changed by it.
  import: allowed('survey.edit')
    .input(z.strictObject({ key: idempotencyKeySchema, sweep: importSweepSchemas.job }))
    .mutation(({ ctx, input: { key, sweep } }) => {
      const { jobId: id, ...rest } = sweep;
      return importSweep(ctx.deps, ctx.who, { owner: 'job', id }, key, rest);
    }),

  archive: allowed('survey.edit')
    .input(putAwaySchema)
    .mutation(({ ctx, input }) => archiveSweep(ctx.deps, ctx.who, { owner: 'job' }, input)),

  compare: allowed('job.read')
    .input(compareBuiltBoxSchema)
    .query(({ ctx, input }) => compareBuiltBox(ctx.deps, ctx.who, input)),
});

const vehicleModelRouter = router({
  list: allowed('vehicle.read')
    .input(z.strictObject({ modelId: idSchema, archived }))
    .query(({ ctx, input }) =>
      listSweeps(ctx.deps, ctx.who, { owner: 'vehicle-model', id: input.modelId }, input),
    ),

  import: allowed('vehicle.edit')
    .input(z.strictObject({ key: idempotencyKeySchema, sweep: importSweepSchemas['vehicle-model'] }))
    .mutation(({ ctx, input: { key, sweep } }) => {
      const { modelId: id, ...rest } = sweep;
      return importSweep(ctx.deps, ctx.who, { owner: 'vehicle-model', id }, key, rest);
    }),

  archive: allowed('vehicle.edit')
    .input(putAwaySchema)
    .mutation(({ ctx, input }) => archiveSweep(ctx.deps, ctx.who, { owner: 'vehicle-model' }, input)),

  workOut: allowed('vehicle.read')
    .input(workOutTransferSchema)
    .query(({ ctx, input }) => workOutTransfer(ctx.deps, ctx.who, input)),

  keep: allowed('vehicle.edit')
    .input(z.strictObject({ key: idempotencyKeySchema, transfer: keepTransferSchema }))
    .mutation(({ ctx, input }) => keepTransfer(ctx.deps, ctx.who, input.key, input.transfer)),

  transfers: allowed('vehicle.read')
    .input(z.strictObject({ modelId: idSchema }))
    .query(({ ctx, input }) => listTransfers(ctx.deps, ctx.who, input)),
});

export const measurementRouter = router({
  driver: driverRouter,
  job: jobRouter,
  vehicleModel: vehicleModelRouter,
});
