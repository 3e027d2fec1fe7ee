// What the fields of the sheet are called, and on which page of the settings each of them stands.
import type { SoundInput } from '@gusset/contracts/sound';
import type { SheetOutcome } from '@gusset/sheets';

export const FIELD_WORDS: Readonly<Record<keyof SoundInput, string>> = {
  driverId: 'Driver',
  count: 'How many',
  seriesPerString: 'In series',
  coilWiring: 'Coils',
  isobaric: 'One behind the other',
  drive: 'Power',
  amplifier: 'Amplifier',
  highPass: 'High-pass',
  lowPass: 'Low-pass',
  equaliser: 'Equaliser',
  enclosure: 'Kind of box',
  targetNet: 'Net volume',
  fill: 'Lining',
  leak: 'Sealing',
  front: 'Front chamber',
  port: 'Port',
  rearPort: 'Rear port',
  radiator: 'Passive radiators',
  letter: 'Letter',
  name: 'Name of the design',
  variants: 'Other designs',
  cabin: 'Cabin',
  target: 'Target',
  notes: 'Notes',
};

export const SETTING_PAGES = ['driver', 'box', 'port', 'signal', 'car'] as const;
export type SettingPage = (typeof SETTING_PAGES)[number];

export const PAGE_WORDS: Readonly<Record<SettingPage, string>> = {
  driver: 'Driver',
  box: 'Box',
  port: 'Port',
  signal: 'Amplifier and filters',
  car: 'Car',
};

const PAGE_OF: Readonly<Partial<Record<string, SettingPage>>> = {
  driverId: 'driver',
  count: 'driver',
  seriesPerString: 'driver',
  coilWiring: 'driver',
  isobaric: 'driver',
  enclosure: 'box',
  targetNet: 'box',
  fill: 'box',
  leak: 'box',
  front: 'box',
  radiator: 'port',
  port: 'port',
  rearPort: 'port',
  drive: 'signal',
  amplifier: 'signal',
  highPass: 'signal',
  lowPass: 'signal',
  equaliser: 'signal',
  cabin: 'car',
  target: 'car',
};

/** The page on which a field of the sheet (`port.diameter`) is asked. */
export function pageOfField(field: string): SettingPage {
  return PAGE_OF[field.split(/[.[]/)[0] ?? ''] ?? 'driver';
}

/** How many fields of a page are still empty or cannot be, by page. */
export function openFields(outcome: SheetOutcome<unknown>): ReadonlyMap<SettingPage, number> {
  const fields =
    outcome.state === 'incomplete' ? outcome.missing : outcome.state === 'refused' ? outcome.refusals : [];
  const counts = new Map<SettingPage, number>();
  for (const { field } of fields) {
    const page = pageOfField(field);
    counts.set(page, (counts.get(page) ?? 0) + 1);
  }
  return counts;
}
