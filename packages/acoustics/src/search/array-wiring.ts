// How drivers of the same kind are wired to an amplifier: the wiring that takes the most watts from it.
//
// With no resistance before the array, wiring changes nothing but the load: at the same watts every cone moves alike
// (proved in the tests). So of all wirings only the one with the most watts is worth a search.
import type { CoilWiring, DriverArray, SearchDriver } from '@gusset/contracts/acoustics';
import { type PowerRating, wattsInto } from './amplifier-power.ts';

/** Direct-current resistance over nominal load: the lowest impedance may lie at 80 % of the nominal one (IEC 60268-5). */
const RESISTANCE_OF_NOMINAL = 0.8;

export type WiredArray = {
  readonly array: DriverArray;
  /** As loads are named. */
  readonly loadOhm: number;
  readonly watts: number;
};

/** Every even wiring of `count` drivers with all coils driven. */
export function wiringsOf({ parameters }: SearchDriver, count: number): DriverArray[] {
  const coilWirings: readonly CoilWiring[] = parameters.coils === 1 ? ['single'] : ['series', 'parallel'];
  const strings = Array.from({ length: count }, (_, i) => i + 1).filter((series) => count % series === 0);
  return coilWirings.flatMap((coilWiring) =>
    strings.map((seriesPerString) => ({
      count,
      seriesPerString,
      parallelStrings: count / seriesPerString,
      coilWiring,
      isobaric: null,
    })),
  );
}

/** The most watts; of equals the higher load. Null where every wiring is too low a load. */
export function bestWiring(
  driver: SearchDriver,
  count: number,
  ratings: readonly PowerRating[],
): WiredArray | null {
  let best: WiredArray | null = null;
  for (const array of wiringsOf(driver, count)) {
    const loadOhm = loadOf(driver, array);
    const watts = wattsInto(ratings, loadOhm);
    if (watts === null) continue;
    const isBetter = best === null || watts > best.watts || (watts === best.watts && loadOhm > best.loadOhm);
    if (isBetter) best = { array, loadOhm, watts };
  }
  return best;
}

function loadOf({ parameters, nominalOhm }: SearchDriver, array: DriverArray): number {
  const oneCoil = nominalOhm ?? parameters.reOhm / RESISTANCE_OF_NOMINAL;
  const turns = array.coilWiring === 'series' ? parameters.coils : 1;
  const sharing = array.coilWiring === 'parallel' ? parameters.coils : 1;
  return (oneCoil * turns * array.seriesPerString) / sharing / array.parallelStrings;
}
