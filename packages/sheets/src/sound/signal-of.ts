// What stands before the drivers: filters in the order of the processor, and the wiring of the drivers themselves.
import type { DriverArray, Filter } from '@gusset/contracts/acoustics';
import type { SoundDesign, SoundPass } from '@gusset/contracts/sound';
import { type Refusal, refuse } from '@gusset/units';
import type { Missing } from '../sheet-definition.ts';

export function missingOfSignal({ highPass, lowPass, equaliser }: SoundDesign): readonly Missing[] {
  const missing: Missing[] = [];
  if (highPass !== null && highPass.corner === null)
    missing.push({ field: 'highPass.corner', what: 'the corner of the high-pass' });
  if (lowPass !== null && lowPass.corner === null)
    missing.push({ field: 'lowPass.corner', what: 'the corner of the low-pass' });
  for (const [i, { centre, gainDb, q }] of equaliser.entries()) {
    const band = `band ${i + 1} of the equaliser`;
    if (centre === null) missing.push({ field: `equaliser.${i}.centre`, what: `the frequency of ${band}` });
    if (gainDb === null) missing.push({ field: `equaliser.${i}.gainDb`, what: `the gain of ${band}` });
    if (q === null) missing.push({ field: `equaliser.${i}.q`, what: `the Q of ${band}` });
  }
  return missing;
}

/** A filter and the field that it was typed in. */
export type PlacedFilter = { readonly field: string; readonly filter: Filter };

/** Only of a signal that misses nothing. */
export function filtersOf({ highPass, lowPass, equaliser }: SoundDesign): readonly PlacedFilter[] {
  const pass = (kind: 'highpass' | 'lowpass', field: string, given: SoundPass | null): PlacedFilter[] =>
    given === null
      ? []
      : [
          {
            field,
            filter: {
              kind,
              alignment: given.alignment,
              order: given.order,
              cornerHz: given.corner?.value ?? 0,
            },
          },
        ];
  return [
    ...pass('highpass', 'highPass', highPass),
    ...pass('lowpass', 'lowPass', lowPass),
    ...equaliser.map(
      ({ centre, gainDb, q }, i): PlacedFilter => ({
        field: `equaliser.${i}`,
        filter: {
          kind: 'peaking',
          centreHz: centre?.value ?? 0,
          gainDb: gainDb?.value ?? 0,
          q: q?.value ?? 0,
        },
      }),
    ),
  ];
}

/** Drivers in equal strings, or an isobaric pair. */
export function arrayOf({
  count,
  seriesPerString,
  coilWiring,
  isobaric,
}: SoundDesign): DriverArray | Refusal {
  if (count % seriesPerString !== 0) {
    const why = `${count} drivers cannot stand in equal strings of ${seriesPerString}`;
    return refuse('seriesPerString', { allowed: `a divisor of ${count}`, got: seriesPerString, why });
  }
  if (isobaric !== null && count !== 2) {
    const why = 'An isobaric pair is two drivers, one behind the other';
    return refuse('count', { allowed: '2', got: count, why });
  }
  return {
    count,
    seriesPerString,
    parallelStrings: count / seriesPerString,
    coilWiring,
    isobaric: isobaric === null ? null : { couplingLitres: isobaric.coupling?.litres ?? 0 },
  };
}
