// Step and impulse response, from the same circuit: sampled evenly over frequency and transformed back.
//
// A lumped system answers a step with an edge that no finite band holds, and the model ends at some hundred hertz
// anyway. So the response is kept whole up to `flatToHz` and faded out by a raised cosine over the octave above. The
// window has no phase and is flat where the system has its say, so the curves are true a few milliseconds from the
// edge; around it they ring as the band does, before it too. A record that ends before the system has settled folds
// its rest back to the start, so the record grows until it has.
import {
  firstRefusal,
  type SoundSystemInput,
  soundSystemSchema,
  type TimeResponse,
  type TimeSetting,
  type TimeSettingInput,
  timeSettingSchema,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal } from '@gusset/units';
import FFT from 'fft.js';
import { type CompiledSystem, compileSystem } from './compiled-system.ts';
import { at } from './linear-solve.ts';
import { openSweep, runSweep } from './sweep.ts';

const REFERENCE_PRESSURE_PA = 20e-6;
const SAMPLES_PER_PERIOD = 4; // of the highest frequency left: a line through the samples is smooth
const LEAD_PERIODS = 5; // of `flatToHz`, shown before the step: the ringing of the window
const SHORTEST_RECORD = 2; // times what is shown
const LONGEST_RECORD = 2 ** 16; // samples
const GROWTH = 4; // of a record that has not settled
const TAIL_SHARE = 1 / 16; // of the record, before it comes round to the lead
const SETTLED = 1e-4; // of the largest value: what may be left in the tail

/** `system` over time; its frequencies have no say. Refused where the input can't be. */
export function solveTimeResponse(
  input: SoundSystemInput,
  setting: TimeSettingInput = {},
): TimeResponse | Refusal {
  const parsed = soundSystemSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const asked = timeSettingSchema.safeParse(setting);
  if (!asked.success) return firstRefusal(asked.error, setting);
  const compiled = compileSystem(parsed.data);
  if (isRefusal(compiled)) return compiled;
  return settledResponse(compiled, asked.data);
}

type TimeRecord = {
  readonly step: Float64Array;
  readonly impulse: Float64Array;
};

function settledResponse(system: CompiledSystem, { durationMs, flatToHz }: TimeSetting): TimeResponse {
  const goneByHz = 2 * flatToHz;
  const rateHz = SAMPLES_PER_PERIOD * goneByHz;
  const lead = Math.ceil((LEAD_PERIODS * rateHz) / flatToHz);
  const shown = Math.ceil((durationMs * rateHz) / 1e3) + 1;
  let length = 2 ** Math.ceil(Math.log2(SHORTEST_RECORD * (lead + shown)));
  let record = recordOf(system, length, rateHz, flatToHz);
  while (!isSettled(record.step, lead) && length < LONGEST_RECORD) {
    length = Math.min(GROWTH * length, LONGEST_RECORD);
    record = recordOf(system, length, rateHz, flatToHz);
  }
  const places = Array.from({ length: lead + shown }, (_, i) => i - lead);
  const cut = (samples: Float64Array) => places.map((n) => at(samples, (n + length) % length));
  return {
    timesMs: places.map((n) => (n * 1e3) / rateHz),
    sampleMs: 1e3 / rateHz,
    stepPa: cut(record.step),
    impulsePaPerS: cut(record.impulse),
    flatToHz,
    goneByHz,
    recordMs: (length * 1e3) / rateHz,
    isSettled: isSettled(record.step, lead),
  };
}

/** Samples of both responses; sample 0 stands at the step, the last ones before it. */
function recordOf(system: CompiledSystem, length: number, rateHz: number, flatToHz: number): TimeRecord {
  const spacingHz = rateHz / length;
  const count = Math.floor((2 * flatToHz) / spacingHz);
  const sweep = openSweep(
    Array.from({ length: count }, (_, k) => (k + 1) * spacingHz),
    ['level', 'phase'],
  );
  runSweep(sweep, system);
  const transform = new FFT(length);
  const step = new Float64Array(2 * length);
  const impulse = new Float64Array(2 * length);
  for (let k = 1; k <= count; k++) {
    const frequencyHz = at(sweep.frequenciesHz, k - 1);
    const level = at(sweep.curves.splDb, k - 1);
    const pressurePa = REFERENCE_PRESSURE_PA * 10 ** (level / 20) * fade(frequencyHz, flatToHz);
    const phase = at(sweep.curves.phaseRad, k - 1);
    const re = pressurePa * Math.cos(phase) * rateHz;
    const im = pressurePa * Math.sin(phase) * rateHz;
    const omega = 2 * Math.PI * frequencyHz;
    place(impulse, length, k, re, im);
    place(step, length, k, im / omega, -re / omega); // over j w
  }
  // Nothing stands at 0 Hz: no air moves, and the step's sum is that of a pressure that falls with the square of w.
  return { step: backFrom(transform, step), impulse: backFrom(transform, impulse) };
}

/** 1 up to `flatToHz`, 0 an octave above, a raised cosine between. */
function fade(frequencyHz: number, flatToHz: number): number {
  return frequencyHz <= flatToHz ? 1 : (1 + Math.cos(Math.PI * (frequencyHz / flatToHz - 1))) / 2;
}

/** A frequency and its mirror image, so that the samples come out real. */
function place(spectrum: Float64Array, length: number, k: number, re: number, im: number): void {
  spectrum[2 * k] = re;
  spectrum[2 * k + 1] = im;
  spectrum[2 * (length - k)] = re;
  spectrum[2 * (length - k) + 1] = -im;
}

function backFrom(transform: FFT, spectrum: Float64Array): Float64Array {
  const samples = new Float64Array(spectrum.length);
  transform.inverseTransform(samples, spectrum);
  return samples.filter((_, i) => i % 2 === 0);
}

/** What is left at the end of the record, before it comes round to the lead, beside the largest value. */
function isSettled(samples: Float64Array, lead: number): boolean {
  const end = samples.length - lead;
  const start = Math.floor(end * (1 - TAIL_SHARE));
  let [largest, tail] = [0, 0];
  for (let i = 0; i < samples.length; i++) {
    const size = Math.abs(at(samples, i));
    if (size > largest) largest = size;
    if (i >= start && i < end && size > tail) tail = size;
  }
  return tail <= SETTLED * largest;
}
