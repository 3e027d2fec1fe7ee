// The public `response` document, mapped onto the acoustics engine and back.
import { levelsAtDrives, solveResponse } from '@gusset/acoustics';
import {
  type Chamber,
  type Drive,
  type Enclosure,
  type Filter,
  type Port,
  type ResponseResult,
  type SolveResponseAnswer,
  type SolveResponseRequest,
  type SoundFigures,
  type SoundSystem,
  solveResponseAnswerSchema,
  solveResponseRequestSchema,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import type { SolveEngine } from '../engine.ts';
import { answerOnRequest } from './response-on-request.ts';

export const engine: SolveEngine<SolveResponseRequest, SolveResponseAnswer> = {
  name: 'response',
  inputSchema: solveResponseRequestSchema,
  outputSchema: solveResponseAnswerSchema,
  solve(request) {
    const system = toSystem(request);
    const result = solveResponse(system);
    if (isRefusal(result)) return inPublicWords(result);
    const onRequest = answerOnRequest(request, system);
    if (isRefusal(onRequest)) return inPublicWords(onRequest);
    return { ...toAnswer(request.id, result), ...onRequest };
  },
};

function toSystem(request: SolveResponseRequest): SoundSystem {
  const { driver, array, source, air } = request;
  return {
    frequenciesHz: request.frequencies_Hz,
    air: { temperatureC: air.temperature_C, pressurePa: air.pressure_Pa },
    source: {
      voltageVrms: source.voltage_Vrms,
      outputOhm: source.Rg_ohm,
      cableOhm: source.Rcable_ohm,
      maxVoltageVrms: source.max_Vrms,
      maxCurrentArms: source.max_Arms,
    },
    filters: request.filters.map(toFilter),
    driver: {
      fsHz: driver.fs_Hz,
      qms: driver.Qms,
      qes: driver.Qes,
      vasLitres: driver.Vas_L,
      sdCm2: driver.Sd_cm2,
      reOhm: driver.Re_ohm,
      leMh: driver.Le_mH,
      l2Mh: driver.L2_mH,
      r2Ohm: driver.R2_ohm,
      coils: driver.coils,
      xmaxMm: driver.Xmax_mm,
      peWatts: driver.Pe_W,
      displacementLitres: driver.displacement_L,
    },
    array: {
      count: array.count,
      seriesPerString: array.seriesPerString,
      parallelStrings: array.parallelStrings,
      coilWiring: array.coilWiring,
      isobaric: array.isobaric && { couplingLitres: array.isobaric.couplingVolume_L },
    },
    enclosure: toEnclosure(request.enclosure),
    cabin: toCabin(request.cabin),
    distanceM: request.distance_m,
  };
}

type Request<Key extends keyof SolveResponseRequest> = SolveResponseRequest[Key];

function toFilter(filter: Request<'filters'>[number]): Filter {
  if (filter.kind === 'peaking') {
    return { kind: 'peaking', centreHz: filter.f_Hz, gainDb: filter.gain_dB, q: filter.Q };
  }
  const { kind, alignment, order, f_Hz } = filter;
  return { kind, alignment, order, cornerHz: f_Hz };
}

function toCabin(cabin: Request<'cabin'>): SoundSystem['cabin'] {
  if (cabin === null) return null;
  if ('curve' in cabin) {
    return { kind: 'curve', points: cabin.curve.map(([frequencyHz, gainDb]) => ({ frequencyHz, gainDb })) };
  }
  return {
    kind: 'shelf',
    longestM: cabin.Lmax_m,
    upperQ: cabin.Qc,
    lowerHz: cabin.flow_Hz,
    lowerQ: cabin.Qlow,
  };
}

type PublicEnclosure = Request<'enclosure'>;
type PublicChamber = Extract<PublicEnclosure, { type: 'sealed' }>['chamber'];
type PublicPort = Extract<PublicEnclosure, { type: 'vented' }>['port'];

function toEnclosure(box: PublicEnclosure): Enclosure {
  switch (box.type) {
    case 'infinite_baffle':
      return { kind: 'infinite-baffle' };
    case 'sealed':
      return { kind: 'closed', chamber: toChamber(box.chamber) };
    case 'vented':
      return { kind: 'vented', chamber: toChamber(box.chamber), port: toPort(box.port) };
    case 'passive_radiator':
      return {
        kind: 'passive-radiator',
        chamber: toChamber(box.chamber),
        radiator: {
          count: box.pr.count,
          fsHz: box.pr.fs_Hz,
          qms: box.pr.Qms,
          vasLitres: box.pr.Vas_L,
          sdCm2: box.pr.Sd_cm2,
          addedMassGrams: box.pr.addedMass_g,
          xmaxMm: box.pr.Xmax_mm,
        },
      };
    case 'bandpass4':
      return {
        kind: 'single-tuned-bandpass',
        rear: toChamber(box.rear),
        front: toChamber(box.front),
        frontPort: toPort(box.frontPort),
      };
    case 'bandpass6':
      return {
        kind: 'dual-tuned-bandpass',
        rear: toChamber(box.rear),
        rearPort: toPort(box.rearPort),
        front: toChamber(box.front),
        frontPort: toPort(box.frontPort),
      };
  }
}

function toChamber({ volume_L, fillFactor, QL, QA }: PublicChamber): Chamber {
  return { netLitres: volume_L, fillFactor, ql: QL, qa: QA };
}

function toPort(port: PublicPort): Port {
  const [outer, inner] = port.ends;
  return {
    mouth:
      port.shape === 'round'
        ? { shape: 'round', diameterMm: port.diameter_mm }
        : { shape: 'rectangular', widthMm: port.width_mm, heightMm: port.height_mm },
    count: port.count,
    outerEnd: { kind: outer.type, walls: outer.walls, flareRadiusMm: outer.flareRadius_mm },
    innerEnd: { kind: inner.type, walls: inner.walls, flareRadiusMm: inner.flareRadius_mm },
    sizing: toSizing(port),
    qp: port.QP,
  };
}

/** The schema has seen to it that one of the two came; a 0 could only be refused. */
function toSizing({ tuning_Hz, length_mm }: PublicPort): Port['sizing'] {
  return length_mm === undefined
    ? { by: 'tuning', tuningHz: tuning_Hz ?? 0 }
    : { by: 'length', lengthMm: length_mm };
}

function toAnswer(id: SolveResponseAnswer['id'], result: ResponseResult): SolveResponseAnswer {
  const { innerExcursionMm, portSpeedMps, rearPortSpeedMps, radiatorExcursionMm } = result;
  return {
    id,
    frequencies_Hz: result.frequenciesHz,
    spl_dB: result.splDb,
    impedance_ohm: result.impedanceOhm,
    impedance_phase_deg: degrees(result.impedancePhaseRad),
    excursion_mm: result.excursionMm,
    group_delay_ms: result.groupDelayMs,
    max_spl_dB: result.maxSplDb,
    max_spl_limit: result.maxSplLimit,
    ...(innerExcursionMm && { excursion_inner_mm: innerExcursionMm }),
    ...(portSpeedMps && { port_velocity_mps: portSpeedMps }),
    ...(rearPortSpeedMps && { port_rear_velocity_mps: rearPortSpeedMps }),
    ...(radiatorExcursionMm && { pr_excursion_mm: radiatorExcursionMm }),
    phase_deg: degrees(result.phaseRad),
    current_Arms: result.currentArms,
    power_W: result.realPowerWatts,
    apparent_power_VA: result.apparentPowerVa,
    ...levelsAt(result),
    derived: toDerived(result.figures),
  };
}

const degrees = (curve: readonly number[]): number[] => curve.map((rad) => (rad * 180) / Math.PI);

/** The level curve at one watt, and at full power where that is known. */
function levelsAt(result: ResponseResult): Pick<SolveResponseAnswer, 'spl_1W_dB' | 'spl_full_power_dB'> {
  const levels = levelsAtDrives(result);
  const at = (wanted: Drive['drive']) => levels.find(({ drive }) => drive === wanted)?.splDb;
  const [oneWatt, fullPower] = [at('one-watt'), at('full-power')];
  return {
    ...(oneWatt && { spl_1W_dB: oneWatt }),
    ...(fullPower && { spl_full_power_dB: fullPower }),
  };
}

function toDerived(figures: SoundFigures): SolveResponseAnswer['derived'] {
  const [port, rearPort] = figures.ports;
  const unbuildable = figures.ports.filter(({ buildable }) => !buildable).map(({ role }) => role);
  return {
    Mms_g: figures.mmsGrams,
    Cms_mm_per_N: figures.cmsMmPerN,
    Rms: figures.rmsNsPerM,
    BL_per_coil: figures.blTm,
    Qts: figures.qts,
    Qts_in_circuit: figures.qtsInCircuit,
    Rdc_ohm: figures.rdcOhm,
    eta0_percent: figures.referenceEfficiencyPercent,
    ...where('alpha', figures.alpha),
    ...where('fc_Hz', figures.fcHz),
    ...where('Qtc', figures.qtc),
    ...where('Qtc_with_losses', figures.qtcWithLosses),
    ...where('f3_Hz', figures.f3Hz),
    ...where('peak_dB', figures.peakDb),
    ...where('fb_Hz', figures.tuningHz),
    ...where('fb_rear_Hz', figures.rearTuningHz),
    ...where('notch_Hz', figures.radiatorNotchHz),
    ...where('port_length_mm', port?.lengthMm ?? null),
    ...where('port_effective_length_mm', port?.effectiveLengthMm ?? null),
    ...where('port_rear_length_mm', rearPort?.lengthMm ?? null),
    ...where('port_rear_effective_length_mm', rearPort?.effectiveLengthMm ?? null),
    ...(unbuildable.length > 0 && { unbuildable_ports: unbuildable }),
  };
}

/** A figure that doesn't apply is left out. */
function where<Key extends string>(key: Key, value: number | null): { [Name in Key]?: number } {
  const figure: { [Name in Key]?: number } = {};
  if (value !== null) figure[key] = value;
  return figure;
}

/** Refusals that only the engine can make, by the names of the public document. */
const PUBLIC_NAMES: readonly (readonly [engine: string, document: string])[] = [
  ['cabin.lowerHz', 'cabin.flow_Hz'],
  ['.mouth.shape', '.shape'],
  ['.sizing.lengthMm', '.length_mm'],
  ['thermalResistanceKPerW', 'hot_coil.Rth_K_per_W'],
];

function inPublicWords({ refusal }: Refusal): Refusal {
  const field = PUBLIC_NAMES.reduce((name, [from, to]) => name.replace(from, to), refusal.field);
  return refuse(field, { ...refusal, got: refusal.got === 'rectangular' ? 'rect' : refusal.got });
}
