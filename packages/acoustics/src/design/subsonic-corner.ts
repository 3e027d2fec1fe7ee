// The high-pass that keeps cones and radiators within their travel where the box no longer holds them: below the tuning
// of a vented box or of radiators, below its resonance in a closed one. Small signal: travel grows with voltage.
import {
  type DesignSystem,
  type Filter,
  firstRefusal,
  type SubsonicCorner,
  type SubsonicInput,
  type SubsonicQuestion,
  subsonicSchema,
  type TravelPart,
  type WorstTravel,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type CompiledSystem, compileSystem } from '../compiled-system.ts';
import { magnitude } from '../complex.ts';
import { filterTransfer } from '../filters.ts';
import { frequencyGrid } from '../frequency-grid.ts';
import { bisect } from '../real-roots.ts';
import { openSweep, runSweep } from '../sweep.ts';
import { bandFigures, openBandSweep } from './band-figures.ts';
import { inSystem, withFrequencies } from './design-system.ts';

const LOOKED_AT = frequencyGrid({ lowHz: 3, highHz: 300, count: 240 });
const LOWEST_CORNER_HZ = 1; // as the schema of a filter
const HEARD_BAND = { lowHz: 30, highHz: 80 };

/** How far over its limit the worst part is at a frequency. */
type Load = WorstTravel & { readonly share: number };

/** Refused where no travel is stated; `not-needed` and `turn-down` are answers. */
export function subsonicCorner(input: SubsonicInput): SubsonicCorner | Refusal {
  const parsed = subsonicSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const question = parsed.data;
  const { system } = question;
  const compiled = compileSystem(withFrequencies(system));
  if (isRefusal(compiled)) return inSystem(compiled);
  const loads = loadsOf(compiled, question);
  const worst = worstOf(loads);
  if (worst === null) {
    return refuse('system.driver.xmaxMm', {
      allowed: 'the travel that the maker states',
      got: null,
      why: 'without a stated travel there is nothing to keep within',
    });
  }
  if (worst.share <= 1) return { code: 'not-needed', worst: plain(worst) };
  const run = lowestRun(loads, lowestTuningHz(system, compiled));
  const cornerHz = run === null ? null : leastCornerHz(question, run);
  if (run === null || cornerHz === null) {
    return { code: 'turn-down', worst: plain(worst), mostVrms: mostVrms(system, worst) };
  }
  return suggestion(question, compiled, { loads, run, worst, cornerHz });
}

/** At which the part just keeps within its limit, filters as they are. */
function mostVrms({ source }: DesignSystem, { share }: Load): number {
  return source.voltageVrms / share;
}

/** Lowest corner that keeps the whole stretch within its limits; null = none up to the highest allowed. */
function leastCornerHz(question: SubsonicQuestion, { loads }: Run): number | null {
  const isEnough = (cornerHz: number) => {
    const gain = gainOf(filterAt(question, cornerHz));
    return loads.every((load) => load.share * gain(load.frequencyHz) <= 1);
  };
  const { highestCornerHz } = question;
  if (!isEnough(highestCornerHz)) return null;
  return bisect((corner) => !isEnough(corner), LOWEST_CORNER_HZ, highestCornerHz);
}

type Overrun = {
  readonly loads: readonly Load[];
  readonly run: Run;
  readonly worst: Load;
  readonly cornerHz: number;
};

function suggestion(
  question: SubsonicQuestion,
  compiled: CompiledSystem,
  { loads, run, worst, cornerHz }: Overrun,
): SubsonicCorner {
  const { system, heardHz } = question;
  const filter = filterAt(question, cornerHz);
  const gain = gainOf(filter);
  const left = loads
    .filter(({ frequencyHz }) => frequencyHz > run.endHz)
    .map((load) => ({ ...load, share: load.share * gain(load.frequencyHz) }));
  const over = worstOf(left);
  const heard = openBandSweep(HEARD_BAND);
  const after = compileSystem(withFrequencies({ ...system, filters: [...system.filters, filter] }));
  return {
    code: 'suggested',
    filter,
    cornerHz,
    runsOutBelowHz: run.endHz,
    worst: plain(worst),
    costs: heardHz.map((frequencyHz) => ({ frequencyHz, db: 20 * Math.log10(gain(frequencyHz)) })),
    lowCornerBeforeHz: bandFigures(heard, compiled).lowCornerHz,
    lowCornerAfterHz: bandFigures(heard, isRefusal(after) ? compiled : after).lowCornerHz,
    stillOver:
      over === null || over.share <= 1
        ? null
        : { ...plain(over), travelMm: over.share * over.limitMm, mostVrms: mostVrms(system, over) },
  };
}

function filterAt({ order, alignment }: SubsonicQuestion, cornerHz: number): Filter {
  return { kind: 'highpass', alignment, order, cornerHz };
}

function gainOf(filter: Filter): (frequencyHz: number) => number {
  const transfer = filterTransfer(filter);
  return (frequencyHz) => magnitude(transfer(frequencyHz));
}

/** The worst part at each frequency; none where no travel is stated. */
function loadsOf(compiled: CompiledSystem, { travelShare }: SubsonicQuestion): Load[] {
  const sweep = openSweep(LOOKED_AT, ['travel']);
  runSweep(sweep, compiled);
  const { coneMm, radiatorMm } = compiled.travelLimits;
  const { excursionMm, innerExcursionMm, radiatorExcursionMm } = sweep.curves;
  const parts: readonly { part: TravelPart; curve: Float64Array; limit: number | null }[] = [
    { part: 'cone', curve: excursionMm, limit: coneMm },
    { part: 'inner-cone', curve: innerExcursionMm, limit: coneMm },
    { part: 'radiator', curve: radiatorExcursionMm, limit: radiatorMm },
  ];
  return LOOKED_AT.flatMap((frequencyHz, i) => {
    const here = parts.flatMap(({ part, curve, limit }) => {
      if (limit === null) return [];
      const limitMm = limit * travelShare;
      const travelMm = curve[i] ?? 0;
      return [{ part, travelMm, limitMm, frequencyHz, share: travelMm / limitMm }];
    });
    const top = worstOf(here);
    return top === null ? [] : [top];
  });
}

function worstOf(loads: readonly Load[]): Load | null {
  return loads.reduce<Load | null>(
    (top, next) => (top === null || next.share > top.share ? next : top),
    null,
  );
}

function plain({ part, travelMm, limitMm, frequencyHz }: Load): WorstTravel {
  return { part, travelMm, limitMm, frequencyHz };
}

/** Where the box lets go of the cone: its lowest tuning; null = no outlet, so it holds all the way down. */
function lowestTuningHz(system: DesignSystem, { built }: CompiledSystem): number | null {
  const radiatorHz =
    built.radiatorTuningRadPerS === null ? [] : [built.radiatorTuningRadPerS / (2 * Math.PI)];
  // The front of a single-tuned bandpass box doesn't hold the cone: its closed rear does.
  const ports = system.enclosure.kind === 'single-tuned-bandpass' ? [] : built.ports;
  const tunings = [...radiatorHz, ...ports.map(({ figures }) => figures.tuningHz)];
  return tunings.length === 0 ? null : Math.min(...tunings);
}

type Run = { readonly loads: readonly Load[]; readonly endHz: number };

/** The lowest stretch of too much travel, up to where it ends; null when it lies above the tuning altogether. */
function lowestRun(loads: readonly Load[], tuningHz: number | null): Run | null {
  const start = loads.findIndex(({ share }) => share > 1);
  const first = loads[start];
  if (first === undefined || (tuningHz !== null && first.frequencyHz > tuningHz)) return null;
  const length = loads.slice(start).findIndex(({ share }) => share <= 1);
  const end = length < 0 ? loads.length : start + length;
  const [inside, outside] = [loads[end - 1] ?? first, loads[end]];
  if (outside === undefined) return { loads: loads.slice(0, end), endHz: inside.frequencyHz };
  const across = Math.log(inside.share) / Math.log(inside.share / outside.share);
  const endHz = inside.frequencyHz * (outside.frequencyHz / inside.frequencyHz) ** across;
  return { loads: loads.slice(0, end), endHz };
}
