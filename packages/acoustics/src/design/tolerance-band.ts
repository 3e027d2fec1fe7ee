// A design drawn many times with driver and box a little off, each draw solved by the circuit: the band of its curves, the
// chance of meeting a target, and what the spread comes from. Small's parameters are not independent, so what is drawn
// are the parts that are: compliance, motor, mass, coil, volume, port, leak, sheet.
import {
  type DesignSystem,
  firstRefusal,
  type ParameterShare,
  type Spread,
  type SpreadFigure,
  type SpreadParameter,
  type ToleranceBand,
  type ToleranceBandInput,
  type ToleranceBandQuestion,
  toleranceBandSchema,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { compileSystem } from '../compiled-system.ts';
import { frequencyGrid } from '../frequency-grid.ts';
import { openSweep, runSweep, type Sweep } from '../sweep.ts';
import { cornerOf, loudestPlace, meanDb } from './band-figures.ts';
import { inSystem, withFrequencies } from './design-system.ts';
import { percentile, shareInterval, varianceShare } from './draw-statistics.ts';
import { changedEnclosure, scaledDriver, totalLitres, withLengths } from './scaled-system.ts';
import { type SeededDraws, seededDraws } from './seeded-draws.ts';

const PER_TOLERANCE = 1 / 2; // standard deviations: a ± is read as two
const WORST_TOLERANCE = 3 * PER_TOLERANCE; // beyond which nothing is drawn

/** Refused where a port can't be built, or the sheet's tolerance alone could take half of the air. */
export function toleranceBand(input: ToleranceBandInput): ToleranceBand | Refusal {
  const parsed = toleranceBandSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const question = parsed.data;
  const refusal = refuseSheet(question) ?? refuseBand(question);
  if (refusal !== null) return refusal;
  const compiled = compileSystem(withFrequencies(question.system));
  if (isRefusal(compiled)) return inSystem(compiled);
  const system = withLengths(question.system, compiled);
  if (isRefusal(system)) return system;
  const frame = openFrame(question);
  const asDrawn = read(frame, system);
  if (isRefusal(asDrawn)) return inSystem(asDrawn);
  const asDrawnDb = [...frame.sweep.curves.splDb];
  const outcomes: Outcome[] = [];
  const random = seededDraws(question.seed);
  for (let i = 0; i < question.draws; i++) {
    const draw = drawOne(random);
    const figures = read(frame, drawnSystem(system, question.spread, draw));
    if (isRefusal(figures)) return inSystem(figures);
    frame.levels.forEach((atFrequency, k) => {
      atFrequency[i] = frame.sweep.curves.splDb[k] ?? 0;
    });
    outcomes.push({ draw, ...figures });
  }
  return summary(question, frame, { asDrawn, asDrawnDb, outcomes });
}

function refuseSheet({ spread: { sheet }, system }: ToleranceBandQuestion): Refusal | null {
  const litres = totalLitres(system.enclosure);
  if (sheet === null || litres === 0) return null;
  const most = Math.abs(sheet.litresPerMm) * sheet.toleranceMm * WORST_TOLERANCE;
  if (most <= litres / 2) return null;
  return refuse('spread.sheet', {
    allowed: `at most ${(litres / 2 / WORST_TOLERANCE).toFixed(1)} L in all`,
    got: Math.abs(sheet.litresPerMm) * sheet.toleranceMm,
    why: `the sheets alone could change the ${litres} L by more than half`,
  });
}

function refuseBand({ band, shown }: ToleranceBandQuestion): Refusal | null {
  if (band.lowHz >= shown.lowHz && band.lowHz < shown.highHz) return null;
  return refuse('band.lowHz', {
    allowed: `${shown.lowHz} Hz to below ${shown.highHz} Hz`,
    got: band.lowHz,
    why: 'the band lies where nothing is shown',
  });
}

/** Deviations by parameter, in standard ones; `ql` evenly from 0 to 1 over its logarithm. */
type Draw = Readonly<Record<SpreadParameter, number>>;
type Figures = { readonly lowCornerHz: number; readonly peakDb: number; readonly outputDb: number };
type Outcome = Figures & { readonly draw: Draw };

/** Always in this order and always all of them: a tolerance of 0 leaves the other draws as they were. */
function drawOne({ normal, even }: SeededDraws): Draw {
  return {
    cms: normal(),
    bl: normal(),
    mms: normal(),
    re: normal(),
    'net-litres': normal(),
    'port-length': normal(),
    'sheet-thickness': normal(),
    ql: even(),
  };
}

function drawnSystem(system: DesignSystem, spread: Spread, draw: Draw): DesignSystem {
  const factor = (percent: number, deviations: number) => 1 + (percent / 100) * PER_TOLERANCE * deviations;
  const litres = totalLitres(system.enclosure);
  const { sheet, ql } = spread;
  const lostLitres =
    sheet === null ? 0 : sheet.litresPerMm * sheet.toleranceMm * PER_TOLERANCE * draw['sheet-thickness'];
  return {
    ...system,
    driver: scaledDriver(system.driver, {
      cms: factor(spread.cmsPercent, draw.cms),
      bl: factor(spread.blPercent, draw.bl),
      mms: factor(spread.mmsPercent, draw.mms),
      re: factor(spread.rePercent, draw.re),
    }),
    enclosure: changedEnclosure(system.enclosure, {
      volume:
        factor(spread.netLitresPercent, draw['net-litres']) * (litres === 0 ? 1 : 1 - lostLitres / litres),
      ql: ql === null ? null : ql.least * (ql.most / ql.least) ** draw.ql,
      portLengthMm: spread.portLengthMm * PER_TOLERANCE * draw['port-length'],
      bore: 1,
    }),
  };
}

type Frame = {
  readonly sweep: Sweep;
  readonly bandStart: number;
  readonly bandEnd: number;
  /** One list a frequency, one level a draw. */
  readonly levels: readonly Float64Array[];
};

function openFrame({ shown, points, band, draws }: ToleranceBandQuestion): Frame {
  const frequenciesHz = frequencyGrid({ ...shown, count: points });
  const bandStart = frequenciesHz.findIndex((frequencyHz) => frequencyHz >= band.lowHz);
  const beyond = frequenciesHz.findIndex((frequencyHz) => frequencyHz > band.highHz);
  return {
    sweep: openSweep(frequenciesHz, ['level']),
    bandStart,
    bandEnd: Math.max(bandStart + 1, beyond < 0 ? points : beyond),
    levels: frequenciesHz.map(() => new Float64Array(draws)),
  };
}

function read({ sweep, bandStart, bandEnd }: Frame, system: DesignSystem): Figures | Refusal {
  const compiled = compileSystem(withFrequencies(system));
  if (isRefusal(compiled)) return compiled;
  runSweep(sweep, compiled);
  const { splDb } = sweep.curves;
  const outputDb = meanDb(splDb, bandStart, bandEnd);
  const top = loudestPlace(splDb, bandStart, bandEnd);
  return {
    outputDb,
    peakDb: (splDb[top] ?? 0) - outputDb,
    lowCornerHz: cornerOf(sweep.frequenciesHz, splDb, top),
  };
}

type Drawn = {
  readonly asDrawn: Figures;
  readonly asDrawnDb: readonly number[];
  readonly outcomes: readonly Outcome[];
};

function summary(question: ToleranceBandQuestion, frame: Frame, drawn: Drawn): ToleranceBand {
  const { outcomes, asDrawn } = drawn;
  for (const levels of frame.levels) levels.sort();
  const curve = (share: number) => frame.levels.map((levels) => percentile(levels, share));
  const spreadOf = (name: keyof Figures): SpreadFigure => {
    const sorted = Float64Array.from(outcomes, (outcome) => outcome[name]).sort();
    return {
      asDrawn: asDrawn[name],
      p5: percentile(sorted, 0.05),
      p50: percentile(sorted, 0.5),
      p95: percentile(sorted, 0.95),
    };
  };
  const { sheet } = question.spread;
  const litres = totalLitres(question.system.enclosure);
  const sheetLitres = sheet === null ? 0 : Math.abs(sheet.litresPerMm) * sheet.toleranceMm;
  return {
    frequenciesHz: [...frame.sweep.frequenciesHz],
    asDrawnDb: drawn.asDrawnDb,
    p5Db: curve(0.05),
    p50Db: curve(0.5),
    p95Db: curve(0.95),
    lowCornerHz: spreadOf('lowCornerHz'),
    peakDb: spreadOf('peakDb'),
    outputDb: spreadOf('outputDb'),
    chance: chanceOf(question, outcomes),
    matters: {
      lowCorner: sharesOf(question, outcomes, 'lowCornerHz'),
      peak: sharesOf(question, outcomes, 'peakDb'),
      output: sharesOf(question, outcomes, 'outputDb'),
    },
    sheetLitres: sheet === null ? null : { least: litres - sheetLitres, most: litres + sheetLitres },
    seed: question.seed,
  };
}

function chanceOf({ target }: ToleranceBandQuestion, outcomes: readonly Outcome[]): ToleranceBand['chance'] {
  const { cornerBelowHz, peakBelowDb } = target;
  if (cornerBelowHz === null && peakBelowDb === null) return null;
  const met = outcomes.filter(
    ({ lowCornerHz, peakDb }) =>
      (cornerBelowHz === null || lowCornerHz <= cornerBelowHz) &&
      (peakBelowDb === null || peakDb <= peakBelowDb),
  ).length;
  const draws = outcomes.length;
  const { least, most } = shareInterval(met, draws);
  return { met, draws, share: met / draws, leastShare: least, mostShare: most };
}

/** Only parameters that were let move and that the box has. */
function sharesOf(
  { spread, system }: ToleranceBandQuestion,
  outcomes: readonly Outcome[],
  figure: keyof Figures,
): ParameterShare[] {
  const figures = outcomes.map((outcome) => outcome[figure]);
  return movingParameters(spread, system)
    .map((parameter) => ({
      parameter,
      share: varianceShare(
        outcomes.map(({ draw }) => draw[parameter]),
        figures,
      ),
    }))
    .sort((a, b) => b.share - a.share || a.parameter.localeCompare(b.parameter, 'en'));
}

function movingParameters(spread: Spread, { enclosure }: DesignSystem): SpreadParameter[] {
  const hasAir = enclosure.kind !== 'infinite-baffle';
  const hasPort = 'port' in enclosure || 'frontPort' in enclosure;
  const moving: readonly (readonly [SpreadParameter, boolean])[] = [
    ['cms', spread.cmsPercent > 0],
    ['bl', spread.blPercent > 0],
    ['mms', spread.mmsPercent > 0],
    ['re', spread.rePercent > 0],
    ['net-litres', hasAir && spread.netLitresPercent > 0],
    ['port-length', hasPort && spread.portLengthMm > 0],
    ['ql', hasAir && spread.ql !== null && spread.ql.most > spread.ql.least],
    ['sheet-thickness', hasAir && spread.sheet !== null && spread.sheet.toleranceMm > 0],
  ];
  return moving.filter(([, moves]) => moves).map(([parameter]) => parameter);
}
