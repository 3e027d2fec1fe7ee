// The routers of all kinds of record.
import { idSchema, versionSchema } from '@gusset/contracts/common';
import { measuredThicknessMmSchema, partInputSchemas } from '@gusset/contracts/records';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import { measureBoard } from './board-measure.service.ts';
import { customerCsv } from './csv/kinds/customer.csv.ts';
import { partCsv } from './csv/kinds/part.csv.ts';
import { supplierCsv } from './csv/kinds/supplier.csv.ts';
import { vehicleCsv } from './csv/kinds/vehicle.csv.ts';
import { vehicleModelCsv } from './csv/kinds/vehicle-model.csv.ts';
import { bayKind } from './kinds/bay.queries.ts';
import { personKind } from './kinds/person.queries.ts';
import { vehiclesBelonging } from './kinds/vehicle.queries.ts';
import { listedRecordProcedures, listedRecordRouter, recordRouter } from './record.router.ts';

export const customerRouter = listedRecordRouter(customerCsv);
export const vehicleModelRouter = listedRecordRouter(vehicleModelCsv);
export const vehicleRouter = router({
  ...listedRecordProcedures(vehicleCsv),
  belonging: allowed('vehicle.read')
    .input(z.strictObject({ customerId: idSchema.nullable(), modelId: idSchema.nullable() }))
    .query(({ ctx, input }) => vehiclesBelonging(ctx.deps, ctx.who, input)),
});
export const supplierRouter = listedRecordRouter(supplierCsv);
export const personRouter = recordRouter(personKind);
export const bayRouter = recordRouter(bayKind);

const boardCsv = partCsv('sheet', partInputSchemas.sheet);

/** The catalogue: one router a kind of part, so that each has its own figures. */
export const partRouter = router({
  driver: listedRecordRouter(partCsv('driver', partInputSchemas.driver)),
  amplifier: listedRecordRouter(partCsv('amplifier', partInputSchemas.amplifier)),
  processor: listedRecordRouter(partCsv('processor', partInputSchemas.processor)),
  source: listedRecordRouter(partCsv('source', partInputSchemas.source)),
  sheet: router({
    ...listedRecordProcedures(boardCsv),
    measure: allowed('board.measure')
      .input(
        z.strictObject({
          id: idSchema,
          version: versionSchema,
          measuredThicknessMm: measuredThicknessMmSchema,
        }),
      )
      .mutation(({ ctx, input }) => measureBoard(ctx.deps, ctx.who, boardCsv.kind, input)),
  }),
  finish: listedRecordRouter(partCsv('finish', partInputSchemas.finish)),
  hardware: listedRecordRouter(partCsv('hardware', partInputSchemas.hardware)),
  supply: listedRecordRouter(partCsv('supply', partInputSchemas.supply)),
});
