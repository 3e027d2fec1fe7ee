import type { ResponseResult, SoundSystemInput } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { medlar12, medlar12Dual, quince10 } from '../truth/drivers.ts';
import { solveResponse } from './response.ts';

function answered(input: SoundSystemInput): ResponseResult {
  const result = solveResponse(input);
  if (isRefusal(result)) throw new Error(JSON.stringify(result.refusal));
  return result;
}

function refused(input: SoundSystemInput) {
  const result = solveResponse(input);
  return isRefusal(result) ? result.refusal : null;
}

const closed = (netLitres: number) => ({ kind: 'closed', chamber: { netLitres } }) as const;
const roundPort = {
  mouth: { shape: 'round', diameterMm: 100 },
  outerEnd: { kind: 'flanged' },
  innerEnd: { kind: 'free' },
  sizing: { by: 'tuning', tuningHz: 31 },
} as const;
const quinceClosed: SoundSystemInput = {
  frequenciesHz: [25, 40, 80],
  source: { voltageVrms: 10 },
  driver: quince10,
  enclosure: closed(30),
};
const medlarVented: SoundSystemInput = {
  frequenciesHz: [20, 31, 50],
  source: { voltageVrms: 20 },
  driver: medlar12,
  enclosure: { kind: 'vented', chamber: { netLitres: 55, ql: 7 }, port: roundPort },
};

const degrees = (rad: number | undefined) => ((rad ?? Number.NaN) * 180) / Math.PI;

// Worked by hand from the published equations (Small 1972, 1973), reference air, printed to three decimals.
describe('solveResponse, worked examples', () => {
  it.each([
    [0, 89.019, 4.976, 38.36, 4.97, 5.609, 95.92, 'excursion'],
    [1, 95.985, 13.229, 54.14, 4.329, 5.693, 104.09, 'excursion'],
    [2, 100.066, 5.638, -43.61, 1.731, 2.042, 110.4, 'thermal'],
  ] as const)('gives a closed box its printed row %i', (row, spl, ohm, deg, mm, ms, max, limit) => {
    const result = answered(quinceClosed);
    expect(result.splDb[row]).toBeCloseTo(spl, 3);
    expect(result.impedanceOhm[row]).toBeCloseTo(ohm, 3);
    expect(degrees(result.impedancePhaseRad[row])).toBeCloseTo(deg, 2);
    expect(result.excursionMm[row]).toBeCloseTo(mm, 3);
    expect(result.groupDelayMs[row]).toBeCloseTo(ms, 3);
    expect(result.maxSplDb?.[row]).toBeCloseTo(max, 2);
    expect(result.maxSplLimit?.[row]).toBe(limit);
  });

  it.each([
    [0, 93.417, 13.746, -46.14, 12.439, 16.84, 16.387, 94.44],
    [1, 105.743, 4.428, 3.32, 2.153, 18.69, 19.022, 112.03],
    [2, 108.811, 23.396, -28.32, 5.13, 6.34, 6.71, 115.09],
  ] as const)('gives a vented box its printed row %i', (row, spl, ohm, deg, mm, mps, ms, max) => {
    const result = answered(medlarVented);
    expect(result.splDb[row]).toBeCloseTo(spl, 3);
    expect(result.impedanceOhm[row]).toBeCloseTo(ohm, 3);
    expect(degrees(result.impedancePhaseRad[row])).toBeCloseTo(deg, 2);
    expect(result.excursionMm[row]).toBeCloseTo(mm, 3);
    expect(result.portSpeedMps?.[row]).toBeCloseTo(mps, 2);
    expect(result.groupDelayMs[row]).toBeCloseTo(ms, 3);
    expect(result.maxSplDb?.[row]).toBeCloseTo(max, 2);
  });

  it('gives the printed elements, ratios and port length', () => {
    const { figures } = answered(quinceClosed);
    expect(figures.cmsMmPerN).toBeCloseTo(0.29271, 5);
    expect(figures.mmsGrams).toBeCloseTo(99.439, 3);
    expect(figures.rmsNsPerM).toBeCloseTo(4.0068, 4);
    expect(figures.blTm).toBeCloseTo(11.2961, 4);
    expect(figures.qts).toBeCloseTo(0.46719, 5);
    expect(figures.alpha).toBeCloseTo(1.6, 10);
    expect(figures.fcHz).toBeCloseTo(47.567, 3);
    expect(figures.qtc).toBeCloseTo(0.75332, 5);
    expect(figures.f3Hz).toBeCloseTo(44.83, 2);
    expect(figures.referenceEfficiencyPercent).toBeCloseTo(0.2314, 4);
    const [port] = answered(medlarVented).figures.ports;
    expect(port?.effectiveLengthMm).toBeCloseTo(443.44, 2);
    expect(port?.lengthMm).toBeCloseTo(370.33, 2);
  });
});

describe('solveResponse, limits', () => {
  it('has no loudest level where the maker states neither power nor travel', () => {
    const { maxSplDb, maxSplLimit } = answered({
      ...quinceClosed,
      driver: { ...quince10, xmaxMm: null, peWatts: null },
    });
    expect(maxSplDb).toBeNull();
    expect(maxSplLimit).toBeNull();
  });

  it('counts one coil of two as half the motor', () => {
    const { figures } = answered({
      ...quinceClosed,
      driver: medlar12Dual,
      array: { count: 1, seriesPerString: 1, parallelStrings: 1, coilWiring: 'single' },
    });
    const { qms, qes } = medlar12Dual;
    expect(figures.qtsInCircuit).toBeCloseTo((qms * 2 * qes) / (qms + 2 * qes), 12);
  });

  it('warns of a port that no length brings to its tuning, and still answers', () => {
    const sizing = { by: 'tuning', tuningHz: 31 } as const;
    const tiny = { ...roundPort, mouth: { shape: 'round', diameterMm: 20 }, sizing } as const;
    const { figures, splDb } = answered({
      ...medlarVented,
      enclosure: { kind: 'vented', chamber: { netLitres: 200 }, port: tiny },
    });
    expect(figures.ports[0]?.lengthMm).toBeLessThan(0);
    expect(figures.ports[0]?.buildable).toBe(false);
    expect(splDb.every(Number.isFinite)).toBe(true);
  });
});

describe('solveResponse, refusals', () => {
  it.each([
    ['driver.qes', { driver: { ...quince10, qes: 0 } }],
    ['driver.vasLitres', { driver: { ...quince10, vasLitres: 0 } }],
    ['driver.reOhm', { driver: { ...quince10, reOhm: Number.NaN } }],
    ['driver.r2Ohm', { driver: { ...quince10, l2Mh: 1 } }],
    ['source.voltageVrms', { source: { voltageVrms: 0 } }],
    ['enclosure.chamber.netLitres', { enclosure: closed(-3) }],
    ['frequenciesHz', { frequenciesHz: [] }],
    ['array.count', { array: { count: 3, seriesPerString: 2, parallelStrings: 1 } }],
  ] as const)('names %s', (field, change) => {
    const refusal = refused({ ...quinceClosed, frequenciesHz: [40], ...change } as SoundSystemInput); // wrong on purpose
    expect(refusal?.field).toBe(field);
    expect(refusal?.allowed).not.toBe('');
  });

  it('refuses a cabin that levels out above its own corner', () => {
    const cabin = { kind: 'shelf', longestM: 2, upperQ: 0.7, lowerHz: 90, lowerQ: 0.7 } as const;
    expect(refused({ ...quinceClosed, frequenciesHz: [40], cabin })).toMatchObject({
      field: 'cabin.lowerHz',
      got: 90,
    });
  });

  it('refuses flares on a slot and flares longer than their port', () => {
    const flared = { kind: 'flanged', flareRadiusMm: 60 } as const;
    const vented = (port: object) =>
      refused({
        ...medlarVented,
        frequenciesHz: [40],
        enclosure: {
          kind: 'vented',
          chamber: { netLitres: 55 },
          port: { ...roundPort, outerEnd: flared, ...port },
        },
      });
    expect(vented({ mouth: { shape: 'rectangular', widthMm: 300, heightMm: 40 } })?.field).toBe(
      'enclosure.port.mouth.shape',
    );
    expect(vented({ sizing: { by: 'length', lengthMm: 50 } })?.field).toBe('enclosure.port.sizing.lengthMm');
  });
});
