// The whole API in one place. Each noun has its own router; this file only lists them.
import { jobRouter } from '../jobs/job.router.ts';
import {
  bayRouter,
  customerRouter,
  partRouter,
  personRouter,
  supplierRouter,
  vehicleModelRouter,
  vehicleRouter,
} from '../records/records.routers.ts';
import { sheetRouter } from '../sheets/sheet.router.ts';
import { shopRouter } from '../shops/shop.router.ts';
import { router } from './procedures.ts';

export const appRouter = router({
  bay: bayRouter,
  customer: customerRouter,
  job: jobRouter,
  part: partRouter,
  person: personRouter,
  sheet: sheetRouter,
  shop: shopRouter,
  supplier: supplierRouter,
  vehicle: vehicleRouter,
  vehicleModel: vehicleModelRouter,
});

export type AppRouter = typeof appRouter;
