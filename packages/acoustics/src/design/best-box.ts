// The net volume (and tuning) that serves an aim best within a range, and what every other volume would give. Each volume
// is solved by the circuit with the tuning that serves the aim best; then both are refined from the best of them.
import {
  type BestBox,
  type BestBoxInput,
  type BestBoxQuestion,
  type BoxPoint,
  bestBoxSchema,
  type Enclosure,
  type FlattestInCarInput,
  firstRefusal,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type CompiledSystem, compileSystem } from '../compiled-system.ts';
import { aimScore, type BandSweep, bandFigures, openBandSweep } from './band-figures.ts';
import { isBuildable } from './buildable-port.ts';
import { inSystem, withFrequencies } from './design-system.ts';
import { descend } from './downhill-simplex.ts';

const VOLUMES = 17;
const TUNINGS = 13;
const REFINED = 1e-4; // of the range, in its logarithm: under 0.1 % in volume and tuning
const MOST_SCORES = 80;

/** Best volume and tuning for an aim, and the trade-off over the whole range. */
export function bestBox(input: BestBoxInput): BestBox | Refusal {
  const parsed = bestBoxSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const question = parsed.data;
  const { kind } = question.system.enclosure;
  if (kind !== 'closed' && kind !== 'vented') {
    return refuse('system.enclosure.kind', {
      allowed: 'closed or vented',
      got: kind,
      why: 'one net volume and at most one tuning are looked for',
    });
  }
  const band = openBandSweep(question.band);
  const asGiven = compileSystem(withFrequencies(question.system));
  if (isRefusal(asGiven)) return inSystem(asGiven);
  const givenFigures = bandFigures(band, asGiven);
  const look = boxLooker(question, band);
  const tradeOff = Array.from({ length: VOLUMES }, (_, i) =>
    bestAtVolume(look, i / (VOLUMES - 1), kind === 'vented'),
  ).flatMap((found) => (found === null ? [] : [found]));
  const first = tradeOff.reduce<Placed | null>(
    (top, next) => (top === null || next.score < top.score ? next : top),
    null,
  );
  if (first === null) {
    return refuse('tuning', {
      allowed: 'tunings that this mouth can have in these volumes',
      got: `${question.tuning.leastHz} to ${question.tuning.mostHz} Hz`,
      why: `the port would be shorter than nothing or longer than ${question.mostPortMm} mm everywhere in the range`,
    });
  }
  const refined = refine(look, first, 1 / (VOLUMES - 1));
  look(refined.place); // leaves the best box's curve in the sweep
  return {
    best: refined.point,
    asGiven: givenFigures,
    tradeOff: tradeOff.map(({ point }) => point),
    curve: {
      frequenciesHz: [...band.sweep.frequenciesHz],
      splDb: [...band.sweep.curves.splDb],
    },
  };
}

/** The volume (and tuning) whose level in the car is evenest over the band; refused where no cabin is given. */
export function flattestInCar(input: FlattestInCarInput): BestBox | Refusal {
  const question = { ...input, aim: 'smooth' } as const;
  const parsed = bestBoxSchema.safeParse(question);
  if (!parsed.success) return firstRefusal(parsed.error, question);
  if (parsed.data.system.cabin === null) {
    return refuse('system.cabin', {
      allowed: 'a shelf or a measured curve',
      got: null,
      why: 'without a cabin there is nothing in the car to be flat with',
    });
  }
  return bestBox(question);
}

type Placed = { readonly place: readonly number[]; readonly point: BoxPoint; readonly score: number };

/** Volume and tuning as shares (0 to 1) of their ranges in logarithm; null where the port can't be built. */
type Look = (place: readonly number[]) => Placed | null;

function boxLooker({ system, aim, litres, tuning, mostPortMm }: BestBoxQuestion, band: BandSweep): Look {
  return (place) => {
    const netLitres = between(litres.leastLitres, litres.mostLitres, place[0] ?? 0);
    const tuningHz =
      system.enclosure.kind === 'vented' ? between(tuning.leastHz, tuning.mostHz, place[1] ?? 0) : null;
    const compiled = compileSystem(
      withFrequencies({ ...system, enclosure: resized(system.enclosure, netLitres, tuningHz) }),
    );
    if (isRefusal(compiled)) return null;
    const portLengthMm = portLengthOf(compiled, mostPortMm);
    if (portLengthMm === 'unbuildable') return null;
    const figures = bandFigures(band, compiled);
    return { place, point: { netLitres, tuningHz, portLengthMm, ...figures }, score: aimScore(aim, figures) };
  };
}

function portLengthOf({ built }: CompiledSystem, mostMm: number): number | null | 'unbuildable' {
  const port = built.ports[0];
  if (port === undefined) return null;
  return isBuildable(port.figures, mostMm) ? port.figures.lengthMm : 'unbuildable';
}

function resized(enclosure: Enclosure, netLitres: number, tuningHz: number | null): Enclosure {
  if (enclosure.kind === 'closed') return { ...enclosure, chamber: { ...enclosure.chamber, netLitres } };
  if (enclosure.kind !== 'vented' || tuningHz === null) return enclosure;
  return {
    ...enclosure,
    chamber: { ...enclosure.chamber, netLitres },
    port: { ...enclosure.port, sizing: { by: 'tuning', tuningHz } },
  };
}

/** Tunings even over their range, then downhill from the best; a closed box has but one. */
function bestAtVolume(look: Look, volumeShare: number, isVented: boolean): Placed | null {
  const shares = Array.from({ length: isVented ? TUNINGS : 1 }, (_, i) => i / (TUNINGS - 1));
  let best: Placed | null = null;
  for (const share of shares) {
    const next = look([volumeShare, share]);
    if (next !== null && (best === null || next.score < best.score)) best = next;
  }
  if (best === null || !isVented) return best;
  const { place } = descend(([share = 0]) => look([volumeShare, share])?.score ?? Number.POSITIVE_INFINITY, {
    start: best.place.slice(1),
    step: 0.5 / (TUNINGS - 1),
    tolerance: REFINED,
    mostScores: MOST_SCORES / 2,
  });
  return look([volumeShare, ...place]) ?? best;
}

function refine(look: Look, first: Placed, step: number): Placed {
  const isVented = first.point.tuningHz !== null;
  const { place } = descend((shares) => look(shares)?.score ?? Number.POSITIVE_INFINITY, {
    start: isVented ? first.place : first.place.slice(0, 1),
    step: step / 2,
    tolerance: REFINED,
    mostScores: MOST_SCORES,
  });
  const refined = look(place);
  return refined !== null && refined.score <= first.score ? refined : first;
}

function between(least: number, most: number, share: number): number {
  return least * (most / least) ** share;
}
