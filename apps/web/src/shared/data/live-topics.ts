// What to ask again when somebody else has changed something: by the noun of the news, the first word of the queries
// that show it.

/** As the API tells it: that something has changed, never what to. For a sheet, `id` is the job's. */
export type LiveNews = { readonly act: string; readonly noun: string; readonly id: string };

const PLANNED = ['plan', 'job'];
const SHOWN_WITH: Readonly<Record<string, readonly string[]>> = {
  bay: ['bay', ...PLANNED],
  calendar: ['calendar'],
  customer: ['customer', 'vehicle', ...PLANNED],
  delivery: ['delivery', ...PLANNED],
  invitation: ['people'],
  job: ['quote', 'customer', ...PLANNED],
  leave: ['leave', ...PLANNED],
  member: ['people', 'person'],
  part: ['part', 'delivery', 'quote'],
  person: ['person', 'people', 'leave', ...PLANNED],
  quote: ['quote', ...PLANNED],
  sheet: ['delivery', 'quote', ...PLANNED],
  shop: ['shop', ...PLANNED],
  supplier: ['supplier', 'part'],
  survey: ['survey', 'vehicleModel', 'job'],
  task: PLANNED,
  vehicle: ['vehicle', ...PLANNED],
  'vehicle model': ['vehicleModel', 'vehicle', 'survey', ...PLANNED],
};
/** A sheet that is only typed at moves nothing but its own mark; the bays need not plan again for each word. */
const WHILE_TYPED: readonly string[] = ['job'];

/** The first word of a query: `job` of `job.byNumber`, `part` of the whole list of drivers. */
export function topicOf(queryKey: readonly unknown[]): string {
  const [first, second] = queryKey;
  if (Array.isArray(first)) return String(first[0]);
  const name = first === 'whole-list' ? String(second) : String(first);
  return name.split('.')[0] ?? name;
}

/** The topics that this news touches; the record of changes always. A noun that is not known touches all: null. */
export function topicsOf({ act, noun }: LiveNews): readonly string[] | null {
  const topics = act === 'sheet.saved' ? WHILE_TYPED : SHOWN_WITH[noun.split('.')[0] ?? noun];
  return topics === undefined ? null : [...topics, 'audit', 'record-of-changes'];
}

/** Null for what is no news: another version of the program may say things this one does not know. */
export function readNews(data: unknown): LiveNews | null {
  if (typeof data !== 'string') return null;
  try {
    const news: unknown = JSON.parse(data);
    if (typeof news !== 'object' || news === null) return null;
    if (!('act' in news && 'noun' in news && 'id' in news)) return null;
    const { act, noun, id } = news;
    if (typeof act !== 'string' || typeof noun !== 'string' || typeof id !== 'string') return null;
    return { act, noun, id };
  } catch {
    return null; // not JSON
  }
}
