import type { ResponseResult, SoundSystemInput } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TRUTH_CASES } from '../truth/cases.ts';
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

const grid = Array.from({ length: 40 }, (_, i) => 8 * 60 ** (i / 39));

/** Widest difference of two curves. */
const apart = (a: readonly number[] | null, b: readonly number[] | null): number =>
  Math.max(...(a ?? [Number.NaN]).map((value, i) => Math.abs(value - (b?.[i] ?? Number.NaN))));

describe('solveResponse, laws', () => {
  it('makes a vanishing vent a closed box', () => {
    const plugged = { ...roundPort, mouth: { shape: 'round', diameterMm: 5 } } as const;
    const sizing = { by: 'length', lengthMm: 5_000 } as const;
    const vented = answered({
      ...medlarVented,
      frequenciesHz: grid,
      enclosure: { kind: 'vented', chamber: { netLitres: 30 }, port: { ...plugged, sizing } },
    });
    const sealed = answered({ ...medlarVented, frequenciesHz: grid, enclosure: closed(30) });
    expect(apart(vented.splDb, sealed.splDb)).toBeLessThan(0.02); // what a 5 mm bore still lets by at 8 Hz
    expect(apart(vented.impedanceOhm, sealed.impedanceOhm)).toBeLessThan(0.03);
  });

  it('gives the amplifier power of one sign, never more than volts times amperes, whatever the system', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...TRUTH_CASES),
        fc.double({ min: 5, max: 800, noNaN: true }),
        ({ input }, hz) => {
          const result = answered({ ...input, frequenciesHz: [hz], filters: [] });
          const [amps, watts, va] = [
            result.currentArms[0],
            result.realPowerWatts[0],
            result.apparentPowerVa[0],
          ];
          const ohm = result.impedanceOhm[0] ?? Number.NaN;
          expect(watts).toBeGreaterThan(0);
          expect(watts).toBeLessThanOrEqual(va ?? Number.NaN);
          expect((va ?? 0) / ((amps ?? 0) ** 2 * ohm)).toBeCloseTo(1, 12);
          // All of it is heat: in the cable and the coils at the least.
          const cable = input.source.cableOhm ?? 0;
          expect(watts).toBeGreaterThanOrEqual((amps ?? 0) ** 2 * cable);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('turns the phase by its delay, between any two frequencies close by', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...TRUTH_CASES),
        fc.double({ min: 8, max: 400, noNaN: true }),
        ({ input }, hz) => {
          const step = 1e-4;
          const { phaseRad, groupDelayMs } = answered({
            ...input,
            frequenciesHz: [hz * (1 - step), hz, hz * (1 + step)],
          });
          const turn = (phaseRad[2] ?? 0) - (phaseRad[0] ?? 0);
          const turned = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
          expect((-turned * 1e3) / (4 * Math.PI * hz * step)).toBeCloseTo(groupDelayMs[1] ?? Number.NaN, 2);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('has no phase left far above resonance, where mass rules', () => {
    const { phaseRad } = answered({ ...quinceClosed, frequenciesHz: [15_000] });
    expect(phaseRad[0]).toBeCloseTo(0, 2); // pressure leads the cone by a quarter turn, the cone lags its force by one
  });

  it('makes a huge closed box a baffle', () => {
    const huge = answered({ ...quinceClosed, frequenciesHz: grid, enclosure: closed(20_000) });
    const baffle = answered({ ...quinceClosed, frequenciesHz: grid, enclosure: { kind: 'infinite-baffle' } });
    expect(apart(huge.splDb, baffle.splDb)).toBeLessThan(0.02);
  });

  it('wires two coils in series to four times the parallel impedance, all else alike, for any driver', () => {
    const motor = fc.record({
      qes: fc.double({ min: 0.1, max: 2, noNaN: true }),
      leMh: fc.double({ min: 0, max: 5, noNaN: true }),
      r2Ohm: fc.double({ min: 0.5, max: 50, noNaN: true }),
    });
    fc.assert(
      fc.property(motor, (some) => {
        const wired = (coilWiring: 'series' | 'parallel', voltageVrms: number) =>
          answered({
            ...medlarVented,
            frequenciesHz: [10, 31, 44, 300],
            source: { voltageVrms },
            driver: { ...medlar12Dual, ...some },
            array: { count: 1, seriesPerString: 1, parallelStrings: 1, coilWiring },
          });
        const [series, parallel] = [wired('series', 20), wired('parallel', 10)];
        const fourfold = parallel.impedanceOhm.map((ohm) => 4 * ohm);
        expect(apart(series.impedanceOhm, fourfold)).toBeLessThan(1e-9);
        expect(apart(series.splDb, parallel.splDb)).toBeLessThan(1e-9);
        expect(apart(series.groupDelayMs, parallel.groupDelayMs)).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it('gives N drivers in N times the air the travel of one and 6.02 dB more for each doubling', () => {
    const array = { count: 4, seriesPerString: 2, parallelStrings: 2 };
    const four = answered({ ...quinceClosed, source: { voltageVrms: 20 }, array, enclosure: closed(120) });
    const one = answered(quinceClosed);
    expect(apart(four.excursionMm, one.excursionMm)).toBeLessThan(1e-9);
    expect(apart(four.impedanceOhm, one.impedanceOhm)).toBeLessThan(1e-9);
    expect(
      apart(
        four.splDb,
        one.splDb.map((db) => db + 20 * Math.log10(4)),
      ),
    ).toBeLessThan(1e-9);
  });

  it('makes a close isobaric pair a driver of twice the mass and stiffness in half the box', () => {
    const tight = answered({
      ...quinceClosed,
      frequenciesHz: grid,
      array: { count: 2, seriesPerString: 1, parallelStrings: 2, isobaric: { couplingLitres: 0.001 } },
      enclosure: closed(15),
    });
    const one = answered({ ...quinceClosed, frequenciesHz: grid });
    expect(apart(tight.splDb, one.splDb)).toBeLessThan(0.01);
    expect(
      apart(
        tight.impedanceOhm,
        one.impedanceOhm.map((ohm) => ohm / 2),
      ),
    ).toBeLessThan(0.01);
    expect(tight.figures.qtc).toBeCloseTo(one.figures.qtc ?? Number.NaN, 10);
  });

  it('filters the level, the travel and the delay, and neither the load nor the loudest level', () => {
    const filters = [{ kind: 'highpass', alignment: 'butterworth', order: 4, cornerHz: 40 }] as const;
    const plain = answered(quinceClosed);
    const filtered = answered({ ...quinceClosed, filters });
    expect((plain.splDb[1] ?? 0) - (filtered.splDb[1] ?? 0)).toBeCloseTo(3.0103, 3);
    expect((filtered.excursionMm[1] ?? 0) / (plain.excursionMm[1] ?? 0)).toBeCloseTo(Math.SQRT1_2, 6);
    expect(filtered.groupDelayMs[1]).toBeGreaterThan(plain.groupDelayMs[1] ?? Number.NaN);
    expect(filtered.impedanceOhm).toEqual(plain.impedanceOhm);
    expect(apart(filtered.maxSplDb, plain.maxSplDb)).toBeLessThan(1e-9);
  });

  it('lets the cabin lift the pressure alone', () => {
    const cabin = {
      kind: 'curve',
      points: [
        { frequencyHz: 20, gainDb: 12 },
        { frequencyHz: 80, gainDb: 0 },
      ],
    } as const;
    const free = answered(quinceClosed);
    const inside = answered({ ...quinceClosed, cabin });
    expect(inside.splFreeDb).toEqual(free.splDb);
    expect((inside.splDb[1] ?? 0) - (free.splDb[1] ?? 0)).toBeCloseTo(6, 6);
    expect((inside.maxSplDb?.[1] ?? 0) - (free.maxSplDb?.[1] ?? 0)).toBeCloseTo(6, 6);
    expect(inside.excursionMm).toEqual(free.excursionMm);
    expect(inside.groupDelayMs).toEqual(free.groupDelayMs);
  });

  it('travels further in a larger box below resonance, for any driver', () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 200, noNaN: true }), (netLitres) => {
        const at = (litres: number) =>
          answered({ ...quinceClosed, frequenciesHz: [12], enclosure: closed(litres) });
        expect(at(netLitres * 1.2).excursionMm[0]).toBeGreaterThan(
          at(netLitres).excursionMm[0] ?? Number.NaN,
        );
      }),
      { numRuns: 50 },
    );
  });

  it('takes the limit where two lossless chambers meet at their own tuning', () => {
    const tuned = { ...roundPort, sizing: { by: 'tuning', tuningHz: 40 } } as const;
    const at = (frequencyHz: number) =>
      answered({
        ...quinceClosed,
        frequenciesHz: [frequencyHz],
        enclosure: {
          kind: 'dual-tuned-bandpass',
          rear: { netLitres: 40 },
          rearPort: tuned,
          front: { netLitres: 20 },
          frontPort: tuned,
        },
      });
    expect(at(40).impedanceOhm[0]).toBeCloseTo(at(40.0001).impedanceOhm[0] ?? Number.NaN, 2);
    expect(at(40).portSpeedMps?.[0]).toBeCloseTo(at(40.0001).portSpeedMps?.[0] ?? Number.NaN, 2);
  });

  it('keeps order and repeats itself', () => {
    const there = answered({ ...medlarVented, frequenciesHz: grid });
    const back = answered({ ...medlarVented, frequenciesHz: grid.toReversed() });
    expect(back.splDb.toReversed()).toEqual(there.splDb);
    expect(answered({ ...medlarVented, frequenciesHz: grid })).toEqual(there);
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
