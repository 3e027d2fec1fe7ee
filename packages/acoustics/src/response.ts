// Response of a whole system: every curve that a run of the sweep gives, as lists that travel, and the single figures.
import {
  type Drive,
  firstRefusal,
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

/** What every system has. */
function soundCurves(curves: SweepCurves) {
  return {
    splDb: Array.from(curves.splDb),
    splFreeDb: Array.from(curves.splFreeDb),
    phaseRad: Array.from(curves.phaseRad),
    groupDelayMs: Array.from(curves.groupDelayMs),
    impedanceOhm: Array.from(curves.impedanceOhm),
    impedancePhaseRad: Array.from(curves.impedancePhaseRad),
    currentArms: Array.from(curves.currentArms),
    realPowerWatts: Array.from(curves.realPowerWatts),
    apparentPowerVa: Array.from(curves.apparentPowerVa),
  };
}

function travelCurves(curves: SweepCurves, { built, network }: CompiledSystem) {
  const [port, rearPort] = built.ports;
  return {
    excursionMm: Array.from(curves.excursionMm),
    innerExcursionMm: network.motorCount > 1 ? Array.from(curves.innerExcursionMm) : null,
    radiatorExcursionMm: built.radiator === null ? null : Array.from(curves.radiatorExcursionMm),
    portSpeedMps: port === undefined ? null : Array.from(curves.portSpeedMps),
    rearPortSpeedMps: rearPort === undefined ? null : Array.from(curves.rearPortSpeedMps),
  };
}

function loudestCurves(curves: SweepCurves, { voltageLimit, travelLimits, maxCurrentArms }: CompiledSystem) {
  const limits = [voltageLimit, maxCurrentArms, travelLimits.coneMm, travelLimits.radiatorMm];
  if (limits.every((limit) => limit === null)) return { maxSplDb: null, maxSplLimit: null };
  return {
    maxSplDb: Array.from(curves.maxSplDb),
    maxSplLimit: Array.from(curves.maxSplLimit, (code) => LIMIT_CAUSES[code] ?? 'thermal'),
  };
}

/** The level curve at each of the compared drives, dB at `frequenciesHz`. */
export function levelsAtDrives({
  splDb,
  drives,
}: Pick<ResponseResult, 'splDb' | 'drives'>): readonly (Drive & { readonly splDb: readonly number[] })[] {
  return drives.map((drive) => ({ ...drive, splDb: splDb.map((db) => db + drive.aboveDb) }));
}
