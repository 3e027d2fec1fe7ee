// Response of a whole system: every curve that a run of the sweep gives, as lists that travel, and the single figures.
import {
  type Drive,
  firstRefusal,
  type LimitCause,
  type ResponseResult,
  type SoundSystem,
  type SoundSystemInput,
  soundSystemSchema,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal } from '@gusset/units';
import { type CompiledSystem, compileSystem } from './compiled-system.ts';
import { drivesOf } from './limits.ts';
import { LIMIT_CAUSES } from './read-curves.ts';
import { soundFigures } from './sound-figures.ts';
import { openSweep, runSweep, type SweepCurves } from './sweep.ts';

/** Everything that `system` does at its `frequenciesHz`, in that order. Refused where the input can't be. */
export function solveResponse(input: SoundSystemInput): ResponseResult | Refusal {
  const parsed = soundSystemSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  return responseOf(parsed.data);
}

/** The same of a system that has been through the schema. */
export function responseOf(system: SoundSystem): ResponseResult | Refusal {
  const compiled = compileSystem(system);
  if (isRefusal(compiled)) return compiled;
  const sweep = openSweep(system.frequenciesHz);
  runSweep(sweep, compiled);
  return {
    frequenciesHz: system.frequenciesHz,
    ...soundCurves(sweep.curves),
    ...travelCurves(sweep.curves, compiled),
    ...loudestCurves(sweep.curves, compiled),
    drives: drivesOf(system),
    figures: soundFigures(system, compiled.built, compiled.air),
  };
}

function causesOf(codes: Uint8Array): LimitCause[] {
  const causes: LimitCause[] = [];
  for (let i = 0; i < codes.length; i++) causes.push(LIMIT_CAUSES[codes[i] ?? 0] ?? 'thermal');
  return causes;
}

/** A list that travels; a loop, because the iterator of `Array.from` takes as long as the circuit itself. */
function listOf(curve: Float64Array): number[] {
  const list: number[] = [];
  for (let i = 0; i < curve.length; i++) list.push(curve[i] ?? 0);
  return list;
}

/** What every system has. */
function soundCurves(curves: SweepCurves) {
  return {
    splDb: listOf(curves.splDb),
    splFreeDb: listOf(curves.splFreeDb),
    phaseRad: listOf(curves.phaseRad),
    groupDelayMs: listOf(curves.groupDelayMs),
    impedanceOhm: listOf(curves.impedanceOhm),
    impedancePhaseRad: listOf(curves.impedancePhaseRad),
    currentArms: listOf(curves.currentArms),
    realPowerWatts: listOf(curves.realPowerWatts),
    apparentPowerVa: listOf(curves.apparentPowerVa),
  };
}

function travelCurves(curves: SweepCurves, { built, network }: CompiledSystem) {
  const [port, rearPort] = built.ports;
  return {
    excursionMm: listOf(curves.excursionMm),
    innerExcursionMm: network.motorCount > 1 ? listOf(curves.innerExcursionMm) : null,
    radiatorExcursionMm: built.radiator === null ? null : listOf(curves.radiatorExcursionMm),
    portSpeedMps: port === undefined ? null : listOf(curves.portSpeedMps),
    rearPortSpeedMps: rearPort === undefined ? null : listOf(curves.rearPortSpeedMps),
  };
}

function loudestCurves(curves: SweepCurves, { voltageLimit, travelLimits, maxCurrentArms }: CompiledSystem) {
  const limits = [voltageLimit, maxCurrentArms, travelLimits.coneMm, travelLimits.radiatorMm];
  if (limits.every((limit) => limit === null)) return { maxSplDb: null, maxSplLimit: null };
  return {
    maxSplDb: listOf(curves.maxSplDb),
    maxSplLimit: causesOf(curves.maxSplLimit),
  };
}

/** The level curve at each of the compared drives, dB at `frequenciesHz`. */
export function levelsAtDrives({
  splDb,
  drives,
}: Pick<ResponseResult, 'splDb' | 'drives'>): readonly (Drive & { readonly splDb: readonly number[] })[] {
  return drives.map((drive) => ({ ...drive, splDb: splDb.map((db) => db + drive.aboveDb) }));
}
