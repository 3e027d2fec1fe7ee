// The whole API in one place. Each noun has its own router; this file only lists them.
import { auditRouter } from '../audit/audit.router.ts';
import { calendarRouter } from '../calendar/calendar.router.ts';
import { deliveryRouter } from '../deliveries/delivery.router.ts';
import { jobRouter } from '../jobs/job.router.ts';
import { measurementRouter } from '../measurements/measurement.router.ts';
import { cutReportRouter, offcutRouter } from '../offcuts/offcut.routers.ts';
import { accountRouter, leaveRouter, peopleRouter } from '../people/people.routers.ts';
import { planRouter } from '../planning/plan.router.ts';
import { customerQuoteRouter, quoteRouter } from '../quotes/quote.router.ts';
import {
  bayRouter,
  customerRouter,
  partRouter,
  personRouter,
  supplierRouter,
  vehicleModelRouter,
  vehicleRouter,
} from '../records/records.routers.ts';
import { searchRouter } from '../search/search.router.ts';
import { sheetRouter } from '../sheets/sheet.router.ts';
import { shopRouter } from '../shops/shop.router.ts';
import { soundSearchRouter } from '../sound-search/sound-search.router.ts';
import { surveyRouter } from '../surveys/survey.router.ts';
import { taskRouter } from '../tasks/task.router.ts';
import { router } from './procedures.ts';

export const appRouter = router({
  account: accountRouter,
  audit: auditRouter,
  bay: bayRouter,
  calendar: calendarRouter,
  customer: customerRouter,
  customerQuote: customerQuoteRouter,
  cutReport: cutReportRouter,
  delivery: deliveryRouter,
  job: jobRouter,
  leave: leaveRouter,
  measurement: measurementRouter,
  offcut: offcutRouter,
  part: partRouter,
  people: peopleRouter,
  person: personRouter,
  quote: quoteRouter,
  search: searchRouter,
  plan: planRouter,
  sheet: sheetRouter,
  task: taskRouter,
  shop: shopRouter,
  soundSearch: soundSearchRouter,
  supplier: supplierRouter,
  survey: surveyRouter,
  vehicle: vehicleRouter,
  vehicleModel: vehicleModelRouter,
});

export type AppRouter = typeof appRouter;
