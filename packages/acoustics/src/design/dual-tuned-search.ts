// Volumes and tunings of a dual-tuned bandpass box: a few starts from practice (front tuned near twice the rear) and many
// seeded ones, then downhill by the circuit from the best of them. Same seed, same box.
import {
  type DualTunedDesign,
  type DualTunedSearch,
  type DualTunedSearchInput,
  type DualTunedSearchQuestion,
  dualTunedSearchSchema,
  type Enclosure,
  firstRefusal,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { compileSystem } from '../compiled-system.ts';
import { type BandSweep, bandFigures, meanDb, openBandSweep } from './band-figures.ts';
import { isBuildable } from './buildable-port.ts';
import { inSystem, withFrequencies } from './design-system.ts';
import { descend } from './downhill-simplex.ts';
import { seededDraws } from './seeded-draws.ts';

const FRONT_OVER_REAR = { least: 1.2, most: 4 };
const REAR_SHARE = { least: 0.15, most: 0.85 }; // of the litres
const SEEDED_STARTS = 60;
const DESCENTS = 5;
const FIRST = { step: 0.12, tolerance: 1e-3, mostScores: 140 };
const LAST = { step: 0.03, tolerance: 1e-4, mostScores: 200 };

type DualTuned = Extract<Enclosure, { readonly kind: 'dual-tuned-bandpass' }>;

/** The evenest (and, by its weight, loudest) box over the band. Refused where no start has ports that can be built. */
export function searchDualTuned(input: DualTunedSearchInput): DualTunedSearch | Refusal {
  const parsed = dualTunedSearchSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const question = parsed.data;
  const { enclosure } = question.system;
  if (enclosure.kind !== 'dual-tuned-bandpass') {
    return refuse('system.enclosure.kind', {
      allowed: 'dual-tuned-bandpass',
      got: enclosure.kind,
      why: 'two volumes and two tunings are looked for',
    });
  }
  const given = compileSystem(withFrequencies(question.system));
  if (isRefusal(given)) return inSystem(given);
  const band = openBandSweep(question.band);
  let solved = 0;
  const look = (place: readonly number[]) => {
    solved++;
    return designAt(question, enclosure, band, place);
  };
  const place = bestPlace((at) => look(at)?.score ?? Number.POSITIVE_INFINITY, question.seed);
  const best = look(place);
  if (best === null) {
    return refuse('system.enclosure', {
      allowed: 'mouths that can be tuned so in these volumes',
      got: `${question.rearTuning.leastHz} to ${question.rearTuning.mostHz} Hz at the rear`,
      why: 'in no box that was tried could both ports be built',
    });
  }
  return {
    best,
    curve: { frequenciesHz: [...band.sweep.frequenciesHz], splDb: [...band.sweep.curves.splDb] },
    solved,
    seed: question.seed,
  };
}

/** Litres, share of the rear, rear tuning, front over rear; each from 0 to 1 of its range. */
type Place = readonly number[];

function bestPlace(score: (place: Place) => number, seed: number): Place {
  const starts = [...practiceStarts(), ...seededStarts(seed)]
    .map((place, order) => ({ place, order, score: score(place) }))
    .sort((a, b) => compare(a.score, b.score) || a.order - b.order)
    .slice(0, DESCENTS);
  const first = starts
    .map(({ place }) => descend(score, { start: place, ...FIRST }))
    .reduce((best, next) => (next.score < best.score ? next : best));
  return descend(score, { start: first.place, ...LAST }).place;
}

/** Infinities are alike: their difference is no number. */
function compare(a: number, b: number): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

const TWICE = Math.log(2 / FRONT_OVER_REAR.least) / Math.log(FRONT_OVER_REAR.most / FRONT_OVER_REAR.least);

function practiceStarts(): Place[] {
  return [0.4, 0.8].flatMap((litres) => [0.35, 0.65].map((rearTuning) => [litres, 0.6, rearTuning, TWICE]));
}

function seededStarts(seed: number): Place[] {
  const { even } = seededDraws(seed);
  return Array.from({ length: SEEDED_STARTS }, () => [even(), even(), even(), even()]);
}

function designAt(
  question: DualTunedSearchQuestion,
  enclosure: DualTuned,
  band: BandSweep,
  [litresAt = 0, rearAt = 0, tuningAt = 0, ratioAt = 0]: Place,
): DualTunedDesign | null {
  const { litres, rearTuning, levelWeight, mostPortMm } = question;
  const total = litres.leastLitres * (litres.mostLitres / litres.leastLitres) ** litresAt;
  const rearLitres = total * (REAR_SHARE.least + (REAR_SHARE.most - REAR_SHARE.least) * rearAt);
  const frontLitres = total - rearLitres;
  const rearTuningHz = rearTuning.leastHz * (rearTuning.mostHz / rearTuning.leastHz) ** tuningAt;
  const frontTuningHz =
    rearTuningHz * FRONT_OVER_REAR.least * (FRONT_OVER_REAR.most / FRONT_OVER_REAR.least) ** ratioAt;
  const sized: DualTuned = {
    ...enclosure,
    rear: { ...enclosure.rear, netLitres: rearLitres },
    rearPort: { ...enclosure.rearPort, sizing: { by: 'tuning', tuningHz: rearTuningHz } },
    front: { ...enclosure.front, netLitres: frontLitres },
    frontPort: { ...enclosure.frontPort, sizing: { by: 'tuning', tuningHz: frontTuningHz } },
  };
  const compiled = compileSystem(withFrequencies({ ...question.system, enclosure: sized }));
  if (isRefusal(compiled)) return null;
  const [front, rear] = compiled.built.ports.map(({ figures }) => figures);
  if (front === undefined || rear === undefined) return null;
  if (!(isBuildable(front, mostPortMm) && isBuildable(rear, mostPortMm))) return null;
  const figures = bandFigures(band, compiled);
  const mean = meanDb(band.sweep.curves.splDb, band.bandStart);
  return {
    rearLitres,
    frontLitres,
    rearTuningHz,
    frontTuningHz,
    rearPortLengthMm: rear.lengthMm,
    frontPortLengthMm: front.lengthMm,
    ...figures,
    meanDb: mean,
    score: figures.deviationDb - levelWeight * mean,
    enclosure: sized,
  };
}
