import { driverDataSheetSchema } from '@gusset/contracts/acoustics';
import type { DriverFromSweeps } from '@gusset/contracts/measurement';
import { describe, expect, it } from 'vitest';
import { driverHeadline, figureRows } from './driver-figures.ts';

const answer: DriverFromSweeps = {
  fit: {
    fsHz: { value: 33.1, plusMinus: 0.05 },
    qms: { value: 4.4, plusMinus: 0.04 },
    qes: { value: 0.55, plusMinus: 0.004 },
    reOhm: { value: 7.2, plusMinus: 0 },
    reHeld: true,
    leMh: { value: 4.4, plusMinus: 0.1 },
    l2Mh: null,
    r2Ohm: null,
    residualPercent: 0.4,
    curve: { frequenciesHz: [10, 20], ohm: [8, 9] },
  },
  peak: null,
  agreement: [],
  moving: null,
  figures: {
    fsHz: 33.1,
    qms: 4.4,
    qes: 0.55,
    vasLitres: null,
    reOhm: 3.6,
    sdCm2: 340,
    leMh: 1.1,
    l2Mh: null,
    r2Ohm: null,
  },
  cautions: [],
};
const stated = driverDataSheetSchema.parse({ fsHz: 29.5, qms: 4.6, qes: 0.44, vasLitres: 48, reOhm: 3.6 });
const row = (key: string) => figureRows(stated, answer).find((each) => each.key === key);

describe('figureRows', () => {
  it('sets measured beside stated with the percent between them', () => {
    expect(row('fsHz')).toEqual({
      key: 'fsHz',
      label: 'Fs',
      stated: '29.5 Hz',
      measured: '33.10 ± 0.05 Hz',
      percent: '+12 %',
      isFar: false,
    });
  });
  it('marks what lies further apart than samples do', () => {
    expect(row('qes')?.isFar).toBe(true);
  });
  it('says in one line where the driver parts from its sheet', () => {
    expect(driverHeadline(figureRows(stated, answer))).toBe('Beside its sheet: Fs +12 %, Qes +25 %');
  });
  it('doesn’t compare a coil told apart with one that is not', () => {
    const fit = { ...answer.fit, l2Mh: { value: 8, plusMinus: 0.1 }, r2Ohm: { value: 9, plusMinus: 0.2 } };
    const lossy = { ...answer, fit, figures: { ...answer.figures, l2Mh: 2, r2Ohm: 2.25 } };
    const rows = figureRows({ ...stated, leMh: 3 }, lossy);
    expect(rows.find(({ key }) => key === 'le')).toMatchObject({ stated: '3 mH', percent: '', isFar: false });
  });
  it('leaves empty what one side does not say', () => {
    expect(row('vas')).toMatchObject({ stated: '48 L', measured: '', percent: '' });
    expect(row('le')).toMatchObject({ stated: '', percent: '' });
    expect(row('l2')).toBeUndefined();
  });
  it('shows one coil of two', () => {
    expect(row('re')).toMatchObject({ measured: '3.600 Ω', percent: 'the same' });
    expect(row('le')?.measured).toBe('1.100 ± 0.025 mH');
  });
});
