import { BODY_STYLES, type VehicleModelInput } from '@gusset/contracts/records';
import type { Option } from '../../shared/controls/option.ts';

type Body = VehicleModelInput['body'];
type Powertrain = VehicleModelInput['powertrain'];

export const BODY_WORDS: Readonly<Record<Body, string>> = {
  saloon: 'Saloon',
  hatch: 'Hatchback',
  estate: 'Estate',
  coupe: 'Coupe',
  van: 'Van',
  pickup: 'Pickup',
  suv: 'Off-roader',
};

export const POWERTRAIN_WORDS: Readonly<Record<Powertrain, string>> = {
  combustion: 'Combustion',
  hybrid: 'Hybrid',
  electric: 'Electric',
  unknown: 'Not known yet',
};

export const BODY_OPTIONS: readonly Option<Body>[] = BODY_STYLES.map((id) => ({ id, label: BODY_WORDS[id] }));

export const POWERTRAIN_OPTIONS: readonly Option<Powertrain>[] = (
  ['combustion', 'hybrid', 'electric', 'unknown'] as const
).map((id) => ({ id, label: POWERTRAIN_WORDS[id] }));

/** "2021 on", "2018 to 2022", "2021" */
export function yearsWords(from: number | null, to: number | null): string {
  if (from === null) return to === null ? '' : `to ${to}`;
  if (to === null) return `${from} on`;
  return from === to ? String(from) : `${from} to ${to}`;
}
