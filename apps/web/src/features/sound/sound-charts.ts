// The curves of the sound sheet as scenes: the same on screen, on paper and in a PDF.
import type { SoundResult } from '@gusset/contracts/sound';
import { type CurvePoint, type ResponseCurve, responseChart, type Scene } from '@gusset/drawings';

const RANGE = { fromHz: 10, toHz: 500 };
const SIZE = { widthPt: 720, heightPt: 330 };
const SMALL = { widthPt: 420, heightPt: 240 };
const DEGREES = 180 / Math.PI;

function points(result: SoundResult, values: readonly number[]): readonly CurvePoint[] {
  return result.curves.frequenciesHz.map((hz, i) => [hz, values[i] ?? 0] as const);
}

function curve(
  name: string,
  dash: ResponseCurve['dash'],
  tone: ResponseCurve['tone'],
  at: readonly CurvePoint[],
): ResponseCurve {
  return { name, dash, tone, points: at };
}

/** Level at this power: in the car and outdoors, and the loudest it can go. */
export function levelScene(result: SoundResult, compared: SoundResult | null): Scene {
  const { curves } = result;
  const inCar = result.cabinLongestM !== null;
  const list = [
    curve(inCar ? 'in this car' : 'outdoors', 'solid', 'mark', points(result, curves.splDb)),
    ...(inCar ? [curve('outdoors', 'long', 'ink', points(result, curves.splFreeDb))] : []),
    ...(curves.maxSplDb === null
      ? []
      : [curve('loudest', 'dots', 'pencil', points(result, curves.maxSplDb))]),
    ...(compared === null
      ? []
      : [curve('as issued', 'short', 'brass', points(compared, compared.curves.splDb))]),
  ];
  return responseChart(
    {
      ...RANGE,
      title: `Level at ${Math.round(result.driveWatts)} W`,
      description: `Level in decibels from 10 to 500 hertz. Corner ${result.f3Hz.toFixed(1)} Hz, system Q ${result.qtc.toFixed(2)}.`,
      unit: 'dB',
      quantity: 'Level at 1 m, half space',
      axis: null,
      curves: list,
      band: null,
      limits: [],
      marks: [{ frequencyHz: result.f3Hz, text: `corner ${result.f3Hz.toFixed(1)} Hz` }],
      assumptions: assumptions(result),
    },
    SIZE,
  );
}

export function travelScene(result: SoundResult): Scene {
  const { xmaxMm } = result.parameters;
  return responseChart(
    {
      ...RANGE,
      title: 'Cone travel',
      description: 'Peak travel of the cone, one way, in millimetres.',
      unit: 'mm',
      quantity: 'Travel, one way',
      axis: null,
      curves: [curve('travel', 'solid', 'mark', points(result, result.curves.excursionMm))],
      band: null,
      limits:
        xmaxMm === null
          ? []
          : [{ value: xmaxMm, text: `maker allows ${xmaxMm} mm`, failing: result.travelBelowHz !== null }],
      marks: [],
      assumptions: '',
    },
    SMALL,
  );
}

export function impedanceScene(result: SoundResult): Scene {
  return responseChart(
    {
      ...RANGE,
      title: 'Load',
      description: 'Magnitude of the load that the amplifier sees, in ohms.',
      unit: 'Ω',
      quantity: 'Load, magnitude',
      axis: null,
      curves: [curve('load', 'solid', 'mark', points(result, result.curves.impedanceOhm))],
      band: null,
      limits: [],
      marks: [{ frequencyHz: result.fcHz, text: `resonance ${result.fcHz.toFixed(1)} Hz` }],
      assumptions: '',
    },
    SMALL,
  );
}

export function phaseScene(result: SoundResult): Scene {
  const degrees = result.curves.impedancePhaseRad.map((phase) => phase * DEGREES);
  return responseChart(
    {
      ...RANGE,
      title: 'Load, phase',
      description: 'Phase of the load in degrees; inductive is positive.',
      unit: '°',
      quantity: 'Phase of the load',
      axis: null,
      curves: [curve('phase', 'solid', 'mark', points(result, degrees))],
      band: null,
      limits: [],
      marks: [],
      assumptions: '',
    },
    SMALL,
  );
}

export function delayScene(result: SoundResult): Scene {
  return responseChart(
    {
      ...RANGE,
      title: 'Group delay',
      description: 'Group delay in milliseconds.',
      unit: 'ms',
      quantity: 'Group delay',
      axis: null,
      curves: [curve('delay', 'solid', 'mark', points(result, result.curves.groupDelayMs))],
      band: null,
      limits: [],
      marks: [],
      assumptions: '',
    },
    SMALL,
  );
}

function assumptions(result: SoundResult): string {
  const cabin =
    result.cabinLongestM === null
      ? 'no cabin'
      : `cabin estimated from ${result.cabinLongestM} m inside length, real cars differ by 5 to 10 dB`;
  return `Small signal, ${result.driveVolts.toFixed(1)} V, 20 °C, sea level, leak Q 15; ${cabin}.`;
}
