// Every address of the app. Screens link through these, never with a literal.

export const JOB_SHEETS = [
  { number: 1, slug: 'brief', name: 'Brief' },
  { number: 2, slug: 'survey', name: 'Survey' },
  { number: 3, slug: 'sound', name: 'Sound' },
  { number: 4, slug: 'box', name: 'Box' },
  { number: 5, slug: 'cutting', name: 'Cutting' },
  { number: 6, slug: 'parts', name: 'Parts' },
  { number: 7, slug: 'price', name: 'Price' },
  { number: 8, slug: 'plan', name: 'Plan' },
] as const;

export type JobSheetSlug = (typeof JOB_SHEETS)[number]['slug'];

/** The sheet a slug names; null for nonsense in an address. */
export function jobSheetOf(slug: string): (typeof JOB_SHEETS)[number] | null {
  return JOB_SHEETS.find((sheet) => sheet.slug === slug) ?? null;
}

const part = (text: string | number): string => encodeURIComponent(String(text));

export const paths = {
  today: () => '/',
  jobs: () => '/jobs',
  newJob: () => '/jobs/new',
  job: (jobNumber: string | number, sheet: JobSheetSlug = 'brief') => `/jobs/${part(jobNumber)}/${sheet}`,
  customers: () => '/customers',
  customer: (customerId: string) => `/customers/${part(customerId)}`,
  vehicles: () => '/vehicles',
  vehicle: (vehicleId: string) => `/vehicles/${part(vehicleId)}`,
  catalogue: (kind = 'drivers') => `/catalogue/${part(kind)}`,
  cataloguePart: (kind: string, partId: string) => `/catalogue/${part(kind)}/${part(partId)}`,
  shop: (section = 'details') => `/shop/${part(section)}`,
  signIn: (next?: string) => (next ? `/sign-in?next=${part(next)}` : '/sign-in'),
  forgotPassword: () => '/forgot-password',
  resetPassword: () => '/reset-password',
  setUp: () => '/set-up',
  invite: (token: string) => `/invite/${part(token)}`,
  quote: (token: string) => `/q/${part(token)}`,
} as const;

/** Where to go after signing in: only a path of this app, so a link can't send anyone elsewhere. */
export function safeNext(next: string | null | undefined): string {
  if (!next?.startsWith('/') || next.startsWith('//') || next.includes('\\')) return paths.today();
  return next;
}
