// The whole API in one place. Each noun has its own router; this file only lists them.
import { jobRouter } from '../jobs/job.router.ts';
import { sheetRouter } from '../sheets/sheet.router.ts';
import { shopRouter } from '../shops/shop.router.ts';
import { router } from './procedures.ts';

export const appRouter = router({
  job: jobRouter,
  sheet: sheetRouter,
  shop: shopRouter,
});

export type AppRouter = typeof appRouter;
