import type { CarTransferView, SweepView, TransferCurve } from '@gusset/contracts/measurement';
import { describe, expect, it } from 'vitest';
import { besideWords, gainAt, lettered, placeName, transferVerdict } from './car-words.ts';

const curve: TransferCurve = {
  points: [
    { frequencyHz: 20, gainDb: 17, spreadDb: 0 },
    { frequencyHz: 30, gainDb: 13.6, spreadDb: 0 },
    { frequencyHz: 50, gainDb: -1.8, spreadDb: 0 },
    { frequencyHz: 200, gainDb: 0, spreadDb: 0 },
  ],
  validLowHz: 20,
  validHighHz: 200,
  smoothing: 6,
  level: { by: 'near-cone', offsetDb: 20 },
  worstSnrDb: 23.4,
};
const kept: CarTransferView = {
  id: 'a',
  revision: 2,
  place: 'boot, left',
  direction: 'rearward',
  reason: 'loudest',
  curve,
  sweepIds: [],
  keptBy: 'Tomas',
  keptAt: '2026-11-24T10:00:00Z',
};

describe('transferVerdict', () => {
  it('says what the kept car adds and takes', () => {
    expect(transferVerdict(null, kept)).toEqual({
      tone: 'pass',
      words: 'This car adds 14 dB at 30 Hz, takes 2 dB at 50 Hz',
      detail: 'Level by a sweep near the cone. At least 23 dB above the noise.',
    });
  });
  it('says that a new one is not kept yet', () => {
    expect(transferVerdict(curve, kept).words).toContain('not kept yet');
  });
  it('says that jobs use an estimate where nobody has measured', () => {
    expect(transferVerdict(null, null)).toMatchObject({
      tone: 'note',
      words: 'Not measured: jobs use an estimate',
    });
  });
});

describe('gainAt', () => {
  it('answers nothing outside the valid band', () => {
    expect(gainAt(curve, 15)).toBeNull();
    expect(gainAt(curve, 28)).toBe(13.6);
  });
});

describe('lettered', () => {
  const sweep = (id: string): SweepView => ({
    id,
    use: 'in-car',
    kind: 'response',
    columns: { frequenciesHz: [20, 40], values: [80, 81], phaseRad: null },
    conditions: { addedMass: null, knownBox: null, trial: null },
    place: id,
    direction: 'up',
    notes: '',
    fileName: '',
    takenOn: null,
    takenBy: 'Tomas',
    importedAt: '2026-11-24T10:00:00Z',
    archived: false,
  });
  it('letters the oldest first and rejected ones last', () => {
    const noisy = { code: 'noisy', snrDb: 2, atHz: 20, leastDb: 10 } as const;
    const answer = { sweeps: [{ id: 'first', levelDb: [], worstSnrDb: 2, rejection: noisy }] };
    const order = lettered([sweep('third'), sweep('second'), sweep('first')], answer);
    expect(order.map(({ letter, sweep: { id } }) => `${letter} ${id}`)).toEqual([
      'A second',
      'B third',
      'C first',
    ]);
  });
});

describe('the other words', () => {
  it('name a place with its direction', () => {
    expect(placeName({ place: 'boot', direction: 'up' })).toBe('boot, firing up');
    expect(placeName({ place: '', direction: null })).toBe('place not said');
  });
  it('say what stands beside the sweeps and what does not', () => {
    expect(besideWords({ nearConeId: 'a', noiseId: null, calibrationId: null })).toBe(
      'Beside them: a sweep near the cone; no noise sweep, so nothing is rejected for noise; no microphone calibration.',
    );
  });
});
