// Every driver of the demo's catalogue. Their figures hang together: `catalogue.test.ts` asks the acoustics engine.
import type { CatalogueEntry } from './catalogue-entry.ts';
import { MEDLAR_DRIVERS } from './drivers-medlar.ts';
import { QUINCE_DRIVERS } from './drivers-quince.ts';
import { SORREL_AND_ROWAN_DRIVERS } from './drivers-sorrel-rowan.ts';

export const DRIVERS: readonly CatalogueEntry<'driver'>[] = [
  ...QUINCE_DRIVERS,
  ...MEDLAR_DRIVERS,
  ...SORREL_AND_ROWAN_DRIVERS,
];
