// Every address of the app. Screens link through these, never with a literal.

import { SHEET_KINDS, type SheetKind } from '@gusset/contracts/sheet';

/** The sheet that a part of an address names; null for nonsense. */
export function sheetKindOf(text: string): SheetKind | null {
  return SHEET_KINDS.find((kind) => kind === text) ?? null;
}

const part = (text: string | number): string => encodeURIComponent(String(text));

export const paths = {
  today: () => '/',
  jobs: () => '/jobs',
  newJob: () => '/jobs/new',
  job: (jobNumber: string | number, sheet: SheetKind = 'brief') => `/jobs/${part(jobNumber)}/${sheet}`,
  /** The built box beside its drawing. */
  builtBox: (jobNumber: string | number) => `/jobs/${part(jobNumber)}/built`,
  /** A PDF that the API makes. */
  cutFiles: (jobId: string) => `/api/papers/cut-files/${part(jobId)}`,
  cutSheetPaper: (jobId: string) => `/api/papers/cut-sheet/${part(jobId)}`,
  mockUpDxf: (jobId: string) => `/api/papers/mock-up-dxf/${part(jobId)}`,
  mockUpPaper: (jobId: string) => `/api/papers/mock-up/${part(jobId)}`,
  soundSheetPaper: (jobId: string) => `/api/papers/sound-sheet/${part(jobId)}`,
  customers: () => '/customers',
  newCustomer: () => '/customers/new',
  customer: (customerId: string) => `/customers/${part(customerId)}`,
  vehicles: () => '/vehicles',
  vehicle: (vehicleId: string) => `/vehicles/${part(vehicleId)}`,
  newVehicle: (customerId?: string) =>
    customerId ? `/vehicles/new?customer=${part(customerId)}` : '/vehicles/new',
  vehicleModels: () => '/vehicles/models',
  vehicleModel: (modelId: string) => `/vehicles/models/${part(modelId)}`,
  newVehicleModel: () => '/vehicles/models/new',
  survey: (surveyId: string) => `/surveys/${part(surveyId)}`,
  modelSurveys: (modelId: string) => `/vehicles/models/${part(modelId)}/surveys`,
  modelInCar: (modelId: string) => `/vehicles/models/${part(modelId)}/in-car`,
  suppliers: () => '/suppliers',
  supplier: (supplierId: string) => `/suppliers/${part(supplierId)}`,
  newSupplier: () => '/suppliers/new',
  catalogue: (kind = 'drivers') => `/catalogue/${part(kind)}`,
  cataloguePart: (kind: string, partId: string) => `/catalogue/${part(kind)}/${part(partId)}`,
  driverSweep: (driverId: string) => `/catalogue/drivers/${part(driverId)}/sweep`,
  newPart: (kind: string) => `/catalogue/${part(kind)}/new`,
  shop: (section = 'details') => `/shop/${part(section)}`,
  signIn: (next?: string) => (next ? `/sign-in?next=${part(next)}` : '/sign-in'),
  forgotPassword: () => '/forgot-password',
  resetPassword: () => '/reset-password',
  setUp: () => '/set-up',
  invite: (token: string) => `/invite/${part(token)}`,
  quote: (token: string) => `/q/${part(token)}`,
  customerQuote: () => '/quote',
  quotePaper: (quoteId: string) => `/api/papers/quote/${part(quoteId)}`,
  customerQuotePaper: () => '/api/papers/quote',
} as const;

/** Where to go after signing in: only a path of this app, so a link can't send anyone elsewhere. */
export function safeNext(next: string | null | undefined): string {
  if (!next?.startsWith('/') || next.startsWith('//') || next.includes('\\')) return paths.today();
  return next;
}
