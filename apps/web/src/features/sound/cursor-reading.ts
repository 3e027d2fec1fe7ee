// What the curves say at one frequency: the words of the read-out, for eyes and for a screen reader.
import type { ComparedCurves, SoundResult } from '@gusset/contracts/sound';
import { limitCauseWords } from '@gusset/sheets';

export type CursorFigure = { readonly label: string; readonly value: string };

/** The point of the curves nearest to `hz` on a logarithmic axis. */
export function nearestPoint(frequenciesHz: readonly number[], hz: number): number {
  return frequenciesHz.reduce(
    (best, at, i) =>
      Math.abs(Math.log(at / hz)) < Math.abs(Math.log((frequenciesHz[best] ?? 1) / hz)) ? i : best,
    0,
  );
}

const DEGREES = 180 / Math.PI;
const signed = (value: number, digits: number): string => value.toFixed(digits).replace('-', '−');

/** Every figure of the chosen design at a point of its curves. */
export function readingAt(result: SoundResult, at: number): readonly CursorFigure[] {
  const { curves, parameters } = result;
  const value = (curve: readonly number[]): number => curve[at] ?? 0;
  const figure = (label: string, curve: readonly number[] | null, words: (value: number) => string) =>
    curve === null || curve.length === 0 ? [] : [{ label, value: words(value(curve)) }];
  const cause = curves.maxSplLimit?.[at];
  const allowed = parameters.xmaxMm === null ? '' : ` of ${parameters.xmaxMm}`;
  return [
    ...(result.cabin === 'none' ? [] : figure('In the car', curves.splDb, (db) => `${db.toFixed(1)} dB`)),
    ...figure('Outdoors', curves.splFreeDb, (db) => `${db.toFixed(1)} dB`),
    ...figure('Cone travel', curves.excursionMm, (mm) => `${mm.toFixed(1)}${allowed} mm`),
    ...figure('Inner cone', curves.innerExcursionMm, (mm) => `${mm.toFixed(1)} mm`),
    ...figure('Radiator', curves.radiatorExcursionMm, (mm) => `${mm.toFixed(1)} mm`),
    ...figure(
      curves.rearPortSpeedMps === null ? 'Port air' : 'Front port air',
      curves.portSpeedMps,
      (mps) => `${mps.toFixed(1)} m/s`,
    ),
    ...figure('Rear port air', curves.rearPortSpeedMps, (mps) => `${mps.toFixed(1)} m/s`),
    ...figure('Load', curves.impedanceOhm, (ohm) => `${ohm.toFixed(2)} Ω`),
    ...figure('Load phase', curves.impedancePhaseRad, (rad) => `${signed(rad * DEGREES, 0)}°`),
    ...figure('Current', curves.currentArms, (amps) => `${amps.toFixed(1)} A`),
    ...figure('Real power', curves.realPowerWatts, (watts) => `${watts.toFixed(0)} W`),
    ...figure('Delay', curves.groupDelayMs, (ms) => `${signed(ms, 1)} ms`),
    ...figure(
      cause === undefined ? 'Loudest' : `Loudest, ${limitCauseWords(cause)} stops it`,
      curves.maxSplDb,
      (db) => `${db.toFixed(1)} dB`,
    ),
  ];
}

/** The same for a design that is only compared, in one line. */
export function comparedReading(curves: ComparedCurves, hz: number, isFreeAir: boolean): string {
  const at = nearestPoint(curves.frequenciesHz, hz);
  const level = (isFreeAir ? curves.splFreeDb : curves.splDb)[at] ?? 0;
  const air = curves.portSpeedMps?.[at];
  return [
    `${level.toFixed(1)} dB`,
    `${(curves.excursionMm[at] ?? 0).toFixed(1)} mm`,
    ...(air === undefined ? [] : [`${air.toFixed(1)} m/s`]),
    `${(curves.impedanceOhm[at] ?? 0).toFixed(2)} Ω`,
  ].join(' · ');
}
