// What stands out in a response, as codes with their numbers, worst reading in the band that the shop looks at.
// Air speeds are guidance and not a limit of the model (Small's design limit is 17 m/s, 5 % of c; plain edges are quiet
// to about 10, strong noise above about 25 to 30). A lumped box holds to a sixth of a wavelength, a port to an eighth.
import {
  firstRefusal,
  type ResponseResult,
  type SoundFinding,
  type SoundSystem,
  type SoundSystemInput,
  soundSystemSchema,
  type VerdictSetting,
  type VerdictSettingInput,
  verdictSettingSchema,
} from '@gusset/contracts/acoustics';
import type { Refusal } from '@gusset/units';
import { airAt } from './air.ts';
import { arrayResistanceOhm } from './circuit-q.ts';
import { magnitude } from './complex.ts';
import { filterTransfer } from './filters.ts';

const BAND_EDGE_DB = 3; // below the highest level: the usual edge of a band
const NEAR_LIMIT = 0.85; // share of a limit from which it is worth a caution

/** Findings on `result`, which `solveResponse` made of `system`. */
export function soundVerdict(
  system: SoundSystemInput,
  result: ResponseResult,
  setting: VerdictSettingInput = {},
): readonly SoundFinding[] | Refusal {
  const parsed = soundSystemSchema.safeParse(system);
  if (!parsed.success) return firstRefusal(parsed.error, system);
  const lines = verdictSettingSchema.safeParse(setting);
  if (!lines.success) return firstRefusal(lines.error, setting);
  const view: View = { system: parsed.data, result, setting: lines.data };
  return [
    ...damping(view),
    ...band(view),
    ...travel(view),
    ...travelLimitedPower(view),
    ...heat(view),
    ...amplifier(view),
    ...lowestLoad(view),
    ...portAir(view),
    ...portsBuildable(view),
    ...modelLimits(view),
    ...radiatorAir(view),
    ...loudest(view),
  ];
}

type View = {
  readonly system: SoundSystem;
  readonly result: ResponseResult;
  readonly setting: VerdictSetting;
};

type Reading = { readonly index: number; readonly frequencyHz: number; readonly value: number };

/** The reading in the band that `isWorse` than all others; null where the band holds none. */
function worst(
  { result, setting }: View,
  curve: readonly number[],
  isWorse: (a: number, b: number) => boolean,
): Reading | null {
  let found: Reading | null = null;
  for (const [index, frequencyHz] of result.frequenciesHz.entries()) {
    const value = curve[index];
    if (value === undefined || frequencyHz < setting.lowHz || frequencyHz > setting.highHz) continue;
    if (found === null || isWorse(value, found.value)) found = { index, frequencyHz, value };
  }
  return found;
}

const higher = (a: number, b: number): boolean => a > b;
const lower = (a: number, b: number): boolean => a < b;

function againstLimit(value: number, limit: number): SoundFinding['severity'] {
  if (value > limit) return 'over';
  return value > NEAR_LIMIT * limit ? 'caution' : 'note';
}

function damping({ system, result }: View): SoundFinding[] {
  const { qtc, qtcWithLosses, peakDb } = result.figures;
  if (system.enclosure.kind === 'single-tuned-bandpass') return [];
  if (qtc === null || qtcWithLosses === null || peakDb === null) return [];
  const character = dampingCharacter(qtc);
  const severity = character === 'peaky' ? 'caution' : 'note';
  return [{ code: 'damping', severity, character, qtc, qtcWithLosses, peakDb }];
}

/** Names for Q: 0.5 critical, 0.577 flattest delay, 0.707 flattest level, 1 rises 1.25 dB, 1.2 rises 2.4 dB. */
function dampingCharacter(qtc: number): 'overdamped' | 'tight' | 'flat' | 'lifted' | 'peaky' {
  if (qtc < 0.5) return 'overdamped';
  if (qtc < 0.65) return 'tight';
  if (qtc < 0.8) return 'flat';
  return qtc < 1.2 ? 'lifted' : 'peaky';
}

/** Edges outward from the highest level, between points straight in dB over the logarithm of frequency. */
function band({ result }: View): SoundFinding[] {
  const points = result.frequenciesHz
    .map((frequencyHz, i) => ({ frequencyHz, db: result.splDb[i] ?? 0 }))
    .sort((a, b) => a.frequencyHz - b.frequencyHz);
  const top = points.reduce((best, { db }, i) => (db > (points[best]?.db ?? 0) ? i : best), 0);
  const edgeDb = (points[top]?.db ?? 0) - BAND_EDGE_DB;
  const lowHz = edgeHz(points.slice(0, top + 1).reverse(), edgeDb);
  const highHz = edgeHz(points.slice(top), edgeDb);
  return [{ code: 'band', severity: 'note', belowDb: BAND_EDGE_DB, lowHz, highHz }];
}

function edgeHz(outward: readonly { frequencyHz: number; db: number }[], edgeDb: number): number | null {
  const at = outward.findIndex(({ db }) => db < edgeDb);
  const [inside, outside] = [outward[at - 1], outward[at]];
  if (inside === undefined || outside === undefined) return null;
  const share = (inside.db - edgeDb) / (inside.db - outside.db);
  return inside.frequencyHz * (outside.frequencyHz / inside.frequencyHz) ** share;
}

function travel(view: View): SoundFinding[] {
  const { system, result } = view;
  const radiatorMm = system.enclosure.kind === 'passive-radiator' ? system.enclosure.radiator.xmaxMm : null;
  const parts = [
    { part: 'cone', curve: result.excursionMm, limitMm: system.driver.xmaxMm },
    { part: 'inner-cone', curve: result.innerExcursionMm, limitMm: system.driver.xmaxMm },
    { part: 'radiator', curve: result.radiatorExcursionMm, limitMm: radiatorMm },
  ] as const;
  return parts.flatMap(({ part, curve, limitMm }) => {
    const far = curve === null ? null : worst(view, curve, higher);
    if (far === null || limitMm === null) return [];
    const severity = againstLimit(far.value, limitMm);
    return [{ code: 'travel', severity, part, travelMm: far.value, limitMm, frequencyHz: far.frequencyHz }];
  });
}

/** (|V| Xmax/x)²/Rdc at its least in the band: more than this only moves the cone beyond its limit. */
function travelLimitedPower(view: View): SoundFinding[] {
  const { system, result } = view;
  const { xmaxMm } = system.driver;
  if (xmaxMm === null) return [];
  const watts = drivenVolts(view).map((volts, i) => {
    const fullVolts = (volts * xmaxMm) / Math.max(result.excursionMm[i] ?? 0, LEAST_MM);
    return fullVolts ** 2 / arrayResistanceOhm(system.driver, system.array);
  });
  const least = worst(view, watts, lower);
  if (least === null) return [];
  return [
    { code: 'travel-limited-power', severity: 'note', watts: least.value, frequencyHz: least.frequencyHz },
  ];
}

/** What the filters leave of the source's voltage, or make of it, by frequency. */
function drivenVolts({ system, result }: View): number[] {
  const filters = system.filters.map(filterTransfer);
  return result.frequenciesHz.map((frequencyHz) =>
    filters.reduce((volts, transfer) => volts * magnitude(transfer(frequencyHz)), system.source.voltageVrms),
  );
}

const LEAST_MM = 1e-30; // so that a cone that steep filters hold still has a finite power

function heat({ system }: View): SoundFinding[] {
  const { peWatts } = system.driver;
  if (peWatts === null) return [];
  const { voltageVrms } = system.source;
  const limitVrms = Math.sqrt(system.array.count * peWatts * arrayResistanceOhm(system.driver, system.array));
  return [{ code: 'heat', severity: againstLimit(voltageVrms, limitVrms), voltageVrms, limitVrms }];
}

function amplifier(view: View): SoundFinding[] {
  const { maxVoltageVrms, maxCurrentArms } = view.system.source;
  const findings: SoundFinding[] = [];
  const volts = maxVoltageVrms === null ? null : worst(view, drivenVolts(view), higher);
  if (volts !== null && maxVoltageVrms !== null) {
    const { value: voltageVrms, frequencyHz } = volts;
    const severity = againstLimit(voltageVrms, maxVoltageVrms);
    findings.push({
      code: 'amplifier-voltage',
      severity,
      voltageVrms,
      limitVrms: maxVoltageVrms,
      frequencyHz,
    });
  }
  const amps = maxCurrentArms === null ? null : worst(view, view.result.currentArms, higher);
  if (amps !== null && maxCurrentArms !== null) {
    const { value: currentArms, frequencyHz } = amps;
    const severity = againstLimit(currentArms, maxCurrentArms);
    findings.push({
      code: 'amplifier-current',
      severity,
      currentArms,
      limitArms: maxCurrentArms,
      frequencyHz,
    });
  }
  return findings;
}

function lowestLoad(view: View): SoundFinding[] {
  const least = worst(view, view.result.impedanceOhm, lower);
  if (least === null) return [];
  return [{ code: 'lowest-load', severity: 'note', ohm: least.value, frequencyHz: least.frequencyHz }];
}

function portAir(view: View): SoundFinding[] {
  const { result, setting } = view;
  const curves = [result.portSpeedMps, result.rearPortSpeedMps];
  return result.figures.ports.flatMap(({ role }, i) => {
    const curve = curves[i];
    const fast = curve === undefined || curve === null ? null : worst(view, curve, higher);
    if (fast === null) return [];
    return [{ ...airCode(fast.value, setting), role, speedMps: fast.value, frequencyHz: fast.frequencyHz }];
  });
}

function airCode(speedMps: number, { quietMps, roundedMps, flaredMps }: VerdictSetting) {
  if (speedMps <= quietMps) return { code: 'port-quiet', severity: 'note' } as const;
  if (speedMps <= roundedMps) return { code: 'port-needs-rounding', severity: 'note' } as const;
  if (speedMps <= flaredMps) return { code: 'port-needs-flares', severity: 'caution' } as const;
  return { code: 'port-chuffs', severity: 'over' } as const;
}

function portsBuildable({ result }: View): SoundFinding[] {
  return result.figures.ports
    .filter(({ buildable }) => !buildable)
    .map(({ role, lengthMm, tuningHz }) => ({
      code: 'port-unbuildable',
      severity: 'over',
      role,
      lengthMm,
      tuningHz,
    }));
}

/** Only limits that fall inside the band are worth a word. */
function modelLimits({ system, result, setting }: View): SoundFinding[] {
  const { soundSpeedMps } = airAt(system.air);
  const findings: SoundFinding[] = [];
  for (const { role, effectiveLengthMm } of result.figures.ports) {
    const lengthM = effectiveLengthMm / 1e3;
    const modelHoldsToHz = soundSpeedMps / (8 * lengthM);
    if (modelHoldsToHz > setting.highHz) continue;
    const frequencyHz = soundSpeedMps / (2 * lengthM);
    findings.push({ code: 'pipe-resonance', severity: 'note', role, modelHoldsToHz, frequencyHz });
  }
  if (setting.longestInsideMm !== null) {
    const lengthM = setting.longestInsideMm / 1e3;
    const modelHoldsToHz = soundSpeedMps / (6 * lengthM);
    if (modelHoldsToHz <= setting.highHz) {
      const frequencyHz = soundSpeedMps / (2 * lengthM);
      findings.push({ code: 'box-mode', severity: 'note', modelHoldsToHz, frequencyHz });
    }
  }
  const radiusM = Math.sqrt(system.driver.sdCm2 / 1e4 / Math.PI);
  const frequencyHz = soundSpeedMps / (2 * Math.PI * radiusM);
  if (frequencyHz <= setting.highHz) findings.push({ code: 'cone-directive', severity: 'note', frequencyHz });
  return findings;
}

/** Radiators should move at least twice the air of the drivers (rule of thumb). */
function radiatorAir({ system }: View): SoundFinding[] {
  const { enclosure, driver, array } = system;
  if (enclosure.kind !== 'passive-radiator' || driver.xmaxMm === null) return [];
  const { radiator } = enclosure;
  if (radiator.xmaxMm === null) return [];
  const front = array.isobaric === null ? array.count : 1;
  const radiatorCm3 = (radiator.count * radiator.sdCm2 * radiator.xmaxMm) / 10;
  const wantedCm3 = (2 * front * driver.sdCm2 * driver.xmaxMm) / 10;
  const severity = radiatorCm3 < wantedCm3 ? 'caution' : 'note';
  return [{ code: 'radiator-air', severity, radiatorCm3, wantedCm3 }];
}

function loudest(view: View): SoundFinding[] {
  const { maxSplDb, maxSplLimit } = view.result;
  const least = maxSplDb === null ? null : worst(view, maxSplDb, lower);
  const limit = least === null ? undefined : maxSplLimit?.[least.index];
  if (least === null || limit === undefined) return [];
  return [{ code: 'loudest', severity: 'note', splDb: least.value, limit, frequencyHz: least.frequencyHz }];
}
