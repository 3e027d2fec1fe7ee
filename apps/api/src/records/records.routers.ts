// The routers of all kinds of record.
import { partInputSchemas } from '@gusset/contracts/records';
import { router } from '../trpc/procedures.ts';
import { bayKind } from './kinds/bay.queries.ts';
import { customerKind } from './kinds/customer.queries.ts';
import { partKind } from './kinds/part.queries.ts';
import { personKind } from './kinds/person.queries.ts';
import { supplierKind } from './kinds/supplier.queries.ts';
import { vehicleKind } from './kinds/vehicle.queries.ts';
import { vehicleModelKind } from './kinds/vehicle-model.queries.ts';
import { recordRouter } from './record.router.ts';

export const customerRouter = recordRouter(customerKind);
export const vehicleModelRouter = recordRouter(vehicleModelKind);
export const vehicleRouter = recordRouter(vehicleKind);
export const supplierRouter = recordRouter(supplierKind);
export const personRouter = recordRouter(personKind);
export const bayRouter = recordRouter(bayKind);

/** The catalogue: one router a kind of part, so that each has its own figures. */
export const partRouter = router({
  driver: recordRouter(partKind('driver', partInputSchemas.driver)),
  amplifier: recordRouter(partKind('amplifier', partInputSchemas.amplifier)),
  processor: recordRouter(partKind('processor', partInputSchemas.processor)),
  source: recordRouter(partKind('source', partInputSchemas.source)),
  sheet: recordRouter(partKind('sheet', partInputSchemas.sheet)),
  finish: recordRouter(partKind('finish', partInputSchemas.finish)),
  hardware: recordRouter(partKind('hardware', partInputSchemas.hardware)),
  supply: recordRouter(partKind('supply', partInputSchemas.supply)),
});
