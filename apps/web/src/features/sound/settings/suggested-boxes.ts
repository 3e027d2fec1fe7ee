// Which of the boxes that theory knows are worth offering for what stands on the sheet.
import { deriveDriver, suggestAlignments } from '@gusset/acoustics';
import type { AlignmentStrength } from '@gusset/contracts/acoustics';
import { type DriverFact, FILL_EFFECT, LEAK_Q, type SoundDesign } from '@gusset/contracts/sound';
import { isRefusal } from '@gusset/units';

/** Outside of this nobody builds a box for a car. */
const LEAST_OFFERED_LITRES = 1;
const MOST_OFFERED_LITRES = 500;

export type Suggestion = {
  readonly key: string;
  /** What it does better than the others; one that does nothing better is not offered. */
  readonly strengths: readonly AlignmentStrength[];
  readonly textbook: string;
  readonly netLitres: number;
  /** Null = closed. */
  readonly tuningHz: number | null;
  readonly f3Hz: number;
};

/** Rounded to tenths, as they are set; small before large. */
export function suggestionsFor(design: SoundDesign, driver: DriverFact | null): readonly Suggestion[] {
  const { enclosure, count, seriesPerString, coilWiring } = design;
  if (driver === null || (enclosure !== 'closed' && enclosure !== 'vented')) return [];
  const sheet = deriveDriver(driver.figures.dataSheet);
  if (isRefusal(sheet) || count % seriesPerString !== 0) return [];
  const { fillFactor, qa } = FILL_EFFECT[design.fill];
  const found = suggestAlignments({
    driver: sheet.driver,
    array: { count, seriesPerString, parallelStrings: count / seriesPerString, coilWiring, isobaric: null },
    fillFactor,
    qa,
    ql: LEAK_Q[design.leak],
    seriesOhm: (design.amplifier.outputOhm?.value ?? 0) + (design.amplifier.cableOhm?.value ?? 0),
  });
  if (isRefusal(found)) return [];
  return found.designs
    .filter(
      ({ kind, netLitres, strengths }) =>
        kind === enclosure &&
        strengths.length > 0 &&
        netLitres >= LEAST_OFFERED_LITRES &&
        netLitres <= MOST_OFFERED_LITRES,
    )
    .map((box) => ({
      key: `${box.textbook} ${box.netLitres.toFixed(1)}`,
      strengths: box.strengths,
      textbook: box.textbook,
      netLitres: Number(box.netLitres.toFixed(1)),
      tuningHz: box.kind === 'vented' ? Number(box.tuningHz.toFixed(1)) : null,
      f3Hz: box.f3Hz,
    }))
    .sort((a, b) => a.netLitres - b.netLitres);
}
