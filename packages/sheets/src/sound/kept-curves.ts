// What of the curves is kept with an issued sheet: enough figures for any ear, meter or cursor, and no more bytes.
import type { ResponseResult } from '@gusset/contracts/acoustics';
import type { ComparedCurves } from '@gusset/contracts/sound';

/** Six figures: more than any ear or meter resolves, and a third of the bytes. */
const KEPT_FIGURES = 6;
/** A line that only lies beside another is read to a tenth of a decibel. */
const COMPARED_FIGURES = 5;

type Curve = readonly number[];

const rounding = (figures: number) => ({
  of: (values: Curve): Curve => values.map((value) => Number(value.toPrecision(figures))),
  ofAny: (values: Curve | null): Curve | null =>
    values === null ? null : values.map((value) => Number(value.toPrecision(figures))),
});

export function keptCurves(curves: ResponseResult): ResponseResult {
  const round = rounding(KEPT_FIGURES);
  return {
    ...curves,
    frequenciesHz: round.of(curves.frequenciesHz),
    splDb: round.of(curves.splDb),
    splFreeDb: round.of(curves.splFreeDb),
    phaseRad: round.of(curves.phaseRad),
    impedanceOhm: round.of(curves.impedanceOhm),
    impedancePhaseRad: round.of(curves.impedancePhaseRad),
    currentArms: round.of(curves.currentArms),
    realPowerWatts: round.of(curves.realPowerWatts),
    apparentPowerVa: round.of(curves.apparentPowerVa),
    excursionMm: round.of(curves.excursionMm),
    innerExcursionMm: round.ofAny(curves.innerExcursionMm),
    radiatorExcursionMm: round.ofAny(curves.radiatorExcursionMm),
    portSpeedMps: round.ofAny(curves.portSpeedMps),
    rearPortSpeedMps: round.ofAny(curves.rearPortSpeedMps),
    groupDelayMs: round.of(curves.groupDelayMs),
    maxSplDb: round.ofAny(curves.maxSplDb),
  };
}

export function comparedCurves(curves: ResponseResult): ComparedCurves {
  const round = rounding(COMPARED_FIGURES);
  return {
    frequenciesHz: round.of(curves.frequenciesHz),
    splDb: round.of(curves.splDb),
    splFreeDb: round.of(curves.splFreeDb),
    excursionMm: round.of(curves.excursionMm),
    impedanceOhm: round.of(curves.impedanceOhm),
    groupDelayMs: round.of(curves.groupDelayMs),
    portSpeedMps: round.ofAny(curves.portSpeedMps),
    maxSplDb: round.ofAny(curves.maxSplDb),
  };
}
