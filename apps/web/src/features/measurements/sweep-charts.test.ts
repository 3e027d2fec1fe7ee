import type { TransferAnswer, TransferCurve } from '@gusset/contracts/measurement';
import { describe, expect, it } from 'vitest';
import { driverChart, overlayChart, transferChart } from './sweep-charts.ts';

const frequenciesHz = [20, 60, 200];
const sweep = (
  id: string,
  levelDb: readonly number[],
  isRejected = false,
): TransferAnswer['sweeps'][number] => ({
  id,
  levelDb,
  worstSnrDb: 20,
  rejection: isRejected ? { code: 'noisy', snrDb: 2, atHz: 20, leastDb: 10 } : null,
});
const answer: TransferAnswer = {
  frequenciesHz,
  predictedDb: [74, 88, 90],
  sweeps: [sweep('quiet', [50, 51, 52], true), sweep('left', [90, 92, 90]), sweep('up', [89, 86, 90])],
  transfer: null,
};
const curve: TransferCurve = {
  points: [
    { frequencyHz: 20, gainDb: 16, spreadDb: 2 },
    { frequencyHz: 200, gainDb: 0, spreadDb: 0 },
  ],
  validLowHz: 20,
  validHighHz: 200,
  smoothing: 6,
  level: { by: 'band', offsetDb: 3 },
  worstSnrDb: null,
};

describe('overlayChart', () => {
  const chart = overlayChart(answer, (id) => id);
  it('names a rejected sweep as one and draws it in another tone', () => {
    expect(chart.curves.map(({ name, tone }) => [name, tone])).toEqual([
      ['left', 'ink'],
      ['up', 'ink'],
      ['quiet, rejected', 'pencil'],
      ['in the open', 'mark'],
    ]);
  });
  it('is scaled by the sweeps that count', () => {
    expect(chart.axis?.from).toBeGreaterThan(60);
    expect(chart.axis?.to).toBeGreaterThanOrEqual(92);
  });
  it('tells the lines apart without colour', () => {
    expect(new Set(chart.curves.slice(0, 3).map(({ dash }) => dash)).size).toBe(3);
  });
});

describe('transferChart', () => {
  it('shades the spread between places and marks where it is valid', () => {
    const chart = transferChart(curve, null);
    expect(chart.band?.upper[0]).toEqual([20, 17]);
    expect(chart.band?.lower[0]).toEqual([20, 15]);
    expect(chart.marks.map(({ frequencyHz }) => frequencyHz)).toEqual([20, 200]);
  });
  it('draws nothing where nothing is known', () => {
    expect(transferChart(null, null).curves).toEqual([]);
  });
});

describe('driverChart', () => {
  it('goes no further than the file', () => {
    const chart = driverChart(
      { frequenciesHz: [12, 50, 300], values: [4, 20, 5], phaseRad: null },
      null,
      null,
    );
    expect([chart.fromHz, chart.toHz]).toEqual([12, 300]);
  });
});
