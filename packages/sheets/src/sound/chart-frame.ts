// What every chart of the sheet has in common: its frequencies and the marks at tunings.
import type { SoundResult } from '@gusset/contracts/sound';
import type { ResponseChartInput } from '@gusset/drawings';
import { CURVES } from './sound-band.ts';

/** A chart over the frequencies of the sheet with nothing on it yet. */
export function plain(
  title: string,
  quantity: string,
  unit: string,
  description: string,
): ResponseChartInput {
  return {
    title,
    description,
    fromHz: CURVES.lowHz,
    toHz: CURVES.highHz,
    unit,
    quantity,
    axis: null,
    curves: [],
    band: null,
    limits: [],
    zones: [],
    marks: [],
    assumptions: '',
  };
}

export const mark = (frequencyHz: number, what: string) => ({
  frequencyHz,
  text: `${what} ${frequencyHz.toFixed(1)} Hz`,
});

export function tuningMarks({ tuningHz, rearTuningHz }: SoundResult): ResponseChartInput['marks'] {
  const both = tuningHz !== null && rearTuningHz !== null;
  return [
    ...(tuningHz === null ? [] : [mark(tuningHz, both ? 'front tuned' : 'tuned')]),
    ...(rearTuningHz === null ? [] : [mark(rearTuningHz, 'rear tuned')]),
  ];
}
