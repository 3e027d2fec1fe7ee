// A built box from its impedance: the whole curve is fitted, and what comes out is laid beside the drawing.
//
// A suspension drifts by 20 % and more, moving mass hardly does. So the fit holds Mms and Sd and lets the rest find
// itself. Vented: two peaks and the dip between them give the driver's resonance, the air and the tuning apart
// (R. H. Small, "Vented-Box Loudspeaker Systems", J. Audio Eng. Soc. 21, 1973). Closed: one peak can't tell soft
// suspension from large box, so the driver's resonance is held too, and the answer says what its drift would do.
import {
  type DriverParameters,
  firstRefusal,
  type SoundSystem,
  type SoundSystemInput,
  soundSystemSchema,
} from '@gusset/contracts/acoustics';
import type { BuiltBoxFit, SweepColumns, ThreePeaks } from '@gusset/contracts/measurement';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { magnitude } from '../complex.ts';
import { frequencyGrid } from '../frequency-grid.ts';
import { boxImpedance, type OneChamberBox } from './box-impedance.ts';
import { builtDifferences, type FoundBox } from './built-differences.ts';
import { type LeastSquares, leastSquares, type Unknown } from './least-squares.ts';
import { modelled, pointsOf, upTo } from './motor-fit.ts';
import { dipBetween, type Extreme, resonancePeaks } from './resonance-peaks.ts';

/** Fitted up to here times the highest peak. */
const FIT_TO_RATIO = 8;
const FIT_TO_AT_LEAST_HZ = 250;
/** A doubt wider than this in net volume or tuning says that the sweep can't tell. */
const WIDEST_DOUBT = { netLitres: 0.2, tuning: 0.08 };
/** Of the driver's figures against its data sheet: wider than any sample or drift. */
const ROOM = { resonance: 1.6, q: 4, resistance: 1.5, volume: 4, tuning: 1.8 };
/** The coil's own: data sheets state it at one kilohertz if at all, so the sweep has the word. mH and ohm. */
const COIL = {
  le: { start: 0.5, low: 0.001, high: 60 },
  l2: { start: 1, low: 0.01, high: 100 },
  r2: { start: 5, low: 0.05, high: 1_000 },
};
/** A lossy coil is taken where it leaves this much less of the residual. */
const LOSSY_GAIN = 0.8;
const LEAK_Q = { start: 10, low: 1, high: 400 };
const CURVE_POINTS = 200;

/**
 * `drawn`: the system as designed, one chamber, closed or vented; `sweep` at the amplifier's end of the cable.
 * `blocked`: the same with the port shut, for the three-peak check. Refused with `sweep`, `blocked` or `drawn.…`.
 */
export function fitBuiltBox(
  drawn: SoundSystemInput,
  sweep: SweepColumns,
  blocked: SweepColumns | null,
): BuiltBoxFit | Refusal {
  const parsed = soundSystemSchema.safeParse(drawn);
  if (!parsed.success) return firstRefusal(parsed.error, drawn);
  const box = oneChamber(parsed.data);
  if (isRefusal(box)) return box;
  const peaks = resonancePeaks(sweep);
  const wanted = box.port === null ? 1 : 2;
  if (peaks.length < wanted) return refusePeaks(peaks, wanted, sweep);
  const found = fitted(box, sweep, peaks.slice(0, wanted));
  if (isRefusal(found)) return found;
  const threePeaks =
    blocked === null ? null : threePeaksOf(sweep, blocked, peaks, found.tuningHz?.value ?? null);
  if (isRefusal(threePeaks)) return threePeaks;
  return {
    kind: box.port === null ? 'closed' : 'vented',
    differences: builtDifferences(box, found),
    residualPercent: found.residualPercent,
    curves: curvesOf(box, found, sweep),
    litresPerResonancePercent: box.port === null ? closedDrift(box, sweep, peaks, found) : null,
    threePeaks,
  };
}

function oneChamber({ driver, array, enclosure, source, air }: SoundSystem): OneChamberBox | Refusal {
  if (enclosure.kind !== 'closed' && enclosure.kind !== 'vented') {
    return refuse('drawn.enclosure.kind', {
      allowed: 'closed or vented',
      got: enclosure.kind,
      why: 'only boxes of one chamber, closed or vented, can be told from their impedance',
    });
  }
  if (array.isobaric !== null) {
    return refuse('drawn.array.isobaric', {
      allowed: 'drivers side by side',
      got: array.count,
      why: 'two drivers one behind the other move as one, and the sweep can’t tell their air apart',
    });
  }
  const port = enclosure.kind === 'vented' ? enclosure.port : null;
  return { driver, array, chamber: enclosure.chamber, port, source, air };
}

/** The figures of a fit by name; a closed box holds resonance and leak and has no tuning. */
type Figures = {
  readonly qms: number;
  readonly qes: number;
  readonly reOhm: number;
  readonly leMh: number;
  readonly netLitres: number;
  readonly resonance: number;
  readonly tuningHz: number;
  readonly ql: number | null;
  readonly lossy: { readonly l2Mh: number; readonly r2Ohm: number } | null;
};

function fitted(box: OneChamberBox, sweep: SweepColumns, peaks: readonly Extreme[]): FoundBox | Refusal {
  const top = peaks.at(-1)?.frequencyHz ?? 50;
  const used = upTo(sweep, Math.max(FIT_TO_AT_LEAST_HZ, FIT_TO_RATIO * top));
  const unknowns = box.port === null ? closedUnknowns(box, peaks) : ventedUnknowns(box, sweep, peaks);
  const points = pointsOf(used);
  const solve = (coil: readonly Unknown[]) =>
    leastSquares({
      unknowns: [...unknowns, ...coil],
      ...points,
      model: (values) => modelled(used, boxImpedance(asBuilt(box, toFigures(box, values)))),
    });
  const [plain, lossy] = [solve([]), solve([COIL.l2, COIL.r2])];
  const answer = lossy.meanSquare < LOSSY_GAIN * plain.meanSquare ? lossy : plain;
  const doubtful = unclear(box, answer);
  if (doubtful) {
    return refuse('sweep', {
      allowed:
        'a sweep with rows close together round every peak and dip, at a low level, from below to above all of them',
      got: `${used.frequenciesHz.length} rows from ${used.frequenciesHz[0] ?? 0} Hz`,
      why: 'volume and tuning can’t be told apart from this sweep: other boxes fit it as well',
    });
  }
  return toFound(box, answer);
}

/** One peak: air by the raised resonance, with the driver's own held. */
function closedUnknowns(box: OneChamberBox, [peak]: readonly Extreme[]): Unknown[] {
  const { driver, chamber } = box;
  const raised = ((peak?.frequencyHz ?? driver.fsHz * 1.5) / driver.fsHz) ** 2 - 1;
  const start =
    raised > 0.05 ? (box.array.count * driver.vasLitres) / raised / chamber.fillFactor : chamber.netLitres;
  return [...motorUnknowns(driver), around(start, ROOM.volume)];
}

/** Lossless start: fs² (1 + alpha) + fb² = fL² + fH², fs fb = fL fH, fb near the dip. */
function ventedUnknowns(
  box: OneChamberBox,
  sweep: SweepColumns,
  [lower, upper]: readonly Extreme[],
): Unknown[] {
  const { driver, chamber, array } = box;
  const [lowHz, highHz] = [lower?.frequencyHz ?? 20, upper?.frequencyHz ?? 60];
  const tuningHz = dipBetween(sweep, lowHz, highHz).frequencyHz;
  const resonanceHz = (lowHz * highHz) / tuningHz;
  const alpha = (lowHz ** 2 + highHz ** 2 - tuningHz ** 2) / resonanceHz ** 2 - 1;
  const vasLitres = driver.vasLitres * (driver.fsHz / resonanceHz) ** 2;
  const netLitres = alpha > 0.05 ? (array.count * vasLitres) / alpha / chamber.fillFactor : chamber.netLitres;
  return [
    ...motorUnknowns(driver),
    around(netLitres, ROOM.volume),
    around(resonanceHz / driver.fsHz, ROOM.resonance),
    around(tuningHz, ROOM.tuning),
    LEAK_Q,
  ];
}

function motorUnknowns(driver: DriverParameters): Unknown[] {
  return [
    around(driver.qms, ROOM.q),
    around(driver.qes, ROOM.q),
    around(driver.reOhm, ROOM.resistance),
    driver.leMh > COIL.le.low ? { ...COIL.le, start: driver.leMh } : COIL.le,
  ];
}

function around(start: number, room: number): Unknown {
  return { start, low: start / room, high: start * room };
}

function toFigures({ port, chamber }: OneChamberBox, values: readonly number[]): Figures {
  const [qms = 1, qes = 1, reOhm = 1, leMh = 1, netLitres = 1, ...rest] = values;
  const [resonance = 1, tuningHz = 1, ql = 1] = port === null ? [1, 1, 1] : rest;
  const [l2Mh, r2Ohm] = port === null ? rest : rest.slice(3);
  return {
    qms,
    qes,
    reOhm,
    leMh,
    netLitres,
    resonance,
    tuningHz,
    ql: port === null ? chamber.ql : ql,
    lossy: l2Mh === undefined || r2Ohm === undefined ? null : { l2Mh, r2Ohm },
  };
}

/** Mass and area stay; a softer suspension lowers resonance and raises Vas together. */
function asBuilt(box: OneChamberBox, figures: Figures): OneChamberBox {
  const { driver, chamber, port } = box;
  return {
    ...box,
    driver: {
      ...driver,
      fsHz: driver.fsHz * figures.resonance,
      vasLitres: driver.vasLitres / figures.resonance ** 2,
      qms: figures.qms,
      qes: figures.qes,
      reOhm: figures.reOhm,
      leMh: figures.leMh,
      l2Mh: figures.lossy?.l2Mh ?? null,
      r2Ohm: figures.lossy?.r2Ohm ?? null,
    },
    chamber: { ...chamber, netLitres: figures.netLitres, ql: figures.ql },
    port: port === null ? null : { ...port, sizing: { by: 'tuning', tuningHz: figures.tuningHz } },
  };
}

const AT = { netLitres: 4, resonance: 5, tuningHz: 6, ql: 7 } as const; // places among the unknowns

function unclear(box: OneChamberBox, { relativeError, onBound }: LeastSquares): boolean {
  const doubt = (at: number) => relativeError[at] ?? Number.POSITIVE_INFINITY;
  if (!(doubt(AT.netLitres) < WIDEST_DOUBT.netLitres) || onBound[AT.netLitres] === true) return true;
  if (box.port === null) return false;
  return (
    !(doubt(AT.tuningHz) < WIDEST_DOUBT.tuning) ||
    onBound[AT.tuningHz] === true ||
    onBound[AT.resonance] === true
  );
}

function toFound(box: OneChamberBox, answer: LeastSquares): FoundBox {
  const figures = toFigures(box, answer.values);
  const fittedFigure = (at: number) => {
    const value = answer.values[at] ?? 0;
    const doubt = answer.relativeError[at] ?? 0;
    return { value, plusMinus: Number.isFinite(doubt) ? value * doubt : value };
  };
  const isVented = box.port !== null;
  return {
    box: asBuilt(box, figures),
    netLitres: fittedFigure(AT.netLitres),
    freeAirShare: isVented ? fittedFigure(AT.resonance) : null,
    tuningHz: isVented ? fittedFigure(AT.tuningHz) : null,
    ql: isVented ? fittedFigure(AT.ql) : null,
    residualPercent: 100 * Math.sqrt(answer.meanSquare),
  };
}

/** The same sweep read with a driver a percent higher in resonance: how far the litres move. */
function closedDrift(
  box: OneChamberBox,
  sweep: SweepColumns,
  peaks: readonly Extreme[],
  found: FoundBox,
): number | null {
  const { driver } = box;
  const stiffer = { ...driver, fsHz: driver.fsHz * 1.01, vasLitres: driver.vasLitres / 1.01 ** 2 };
  const again = fitted({ ...box, driver: stiffer }, sweep, peaks.slice(0, 1));
  return isRefusal(again) ? null : again.netLitres.value - found.netLitres.value;
}

function threePeaksOf(
  sweep: SweepColumns,
  blocked: SweepColumns,
  [lower, upper]: readonly Extreme[],
  fittedHz: number | null,
): ThreePeaks | Refusal | null {
  const [shut] = resonancePeaks(blocked);
  if (lower === undefined || upper === undefined || fittedHz === null) return null;
  const squared = lower.frequencyHz ** 2 + upper.frequencyHz ** 2 - (shut?.frequencyHz ?? 0) ** 2;
  if (shut === undefined || squared <= 0 || shut.frequencyHz <= lower.frequencyHz) {
    return refuse('blocked', {
      allowed: 'a sweep with one peak between the two of the open box',
      got: shut === undefined ? 'no peak' : `a peak at ${shut.frequencyHz.toFixed(1)} Hz`,
      why: 'with its port shut a box has one resonance, between the two that it has open',
    });
  }
  const tuningHz = Math.sqrt(squared);
  return {
    lowerHz: lower.frequencyHz,
    minimumHz: dipBetween(sweep, lower.frequencyHz, upper.frequencyHz).frequencyHz,
    upperHz: upper.frequencyHz,
    blockedHz: shut.frequencyHz,
    tuningHz,
    percent: (fittedHz / tuningHz - 1) * 100,
  };
}

function curvesOf(drawn: OneChamberBox, found: FoundBox, { frequenciesHz: rows }: SweepColumns) {
  const frequenciesHz = frequencyGrid({
    lowHz: rows[0] ?? 10,
    highHz: rows.at(-1) ?? 500,
    count: CURVE_POINTS,
  });
  const sizes = (box: OneChamberBox) => {
    const impedanceAt = boxImpedance(box);
    return frequenciesHz.map((hz) => magnitude(impedanceAt(hz)));
  };
  return { frequenciesHz, drawnOhm: sizes(drawn), fittedOhm: sizes(found.box) };
}

function refusePeaks(peaks: readonly Extreme[], wanted: number, { frequenciesHz }: SweepColumns): Refusal {
  const seen = peaks.map(({ frequencyHz }) => `${frequencyHz.toFixed(1)} Hz`).join(', ');
  return refuse('sweep', {
    allowed:
      wanted === 2
        ? 'a sweep that shows both peaks of a vented box and the dip between them'
        : 'a sweep that falls clearly on both sides of the box’s resonance',
    got: seen === '' ? 'no peak' : `peaks at ${seen}`,
    why:
      wanted === 2 && peaks.length === 1
        ? `the drawing has a port, but the sweep from ${frequenciesHz[0] ?? 0} Hz shows one peak at ${seen}: the port may be shut, leaking or tuned outside the sweep`
        : `no resonance stands out from ${frequenciesHz[0] ?? 0} Hz up`,
  });
}
