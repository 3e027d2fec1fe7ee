// Laws of the whole answer, whatever the system.
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

const grid = Array.from({ length: 40 }, (_, i) => 8 * 60 ** (i / 39));

/** Widest difference of two curves. */
const apart = (a: readonly number[] | null, b: readonly number[] | null): number =>
  Math.max(...(a ?? [Number.NaN]).map((value, i) => Math.abs(value - (b?.[i] ?? Number.NaN))));

describe('solveResponse', () => {
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

  it('slows the air of a port by its area, all else alike at the same tuning', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 300, noNaN: true }),
        fc.integer({ min: 1, max: 6 }),
        (mm, count) => {
          const of = (diameterMm: number, ports: number) =>
            answered({
              ...medlarVented,
              frequenciesHz: grid,
              enclosure: {
                kind: 'vented',
                chamber: { netLitres: 55, ql: 7 },
                port: { ...roundPort, mouth: { shape: 'round', diameterMm }, count: ports },
              },
            });
          const [one, other] = [of(mm, count), of(100, 1)];
          const area = (count * mm ** 2) / 100 ** 2;
          expect(apart(one.splDb, other.splDb)).toBeLessThan(1e-9);
          for (const [i, mps] of (one.portSpeedMps ?? []).entries()) {
            expect((mps * area) / (other.portSpeedMps?.[i] ?? Number.NaN)).toBeCloseTo(1, 9);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('loses level at its tuning with every leak, and with every rise of the port losses', () => {
    const lossQ = fc.double({ min: 2, max: 200, noNaN: true });
    fc.assert(
      fc.property(lossQ, lossQ, (ql, qp) => {
        const at = (leakQ: number, flowQ: number) =>
          answered({
            ...medlarVented,
            frequenciesHz: [31],
            enclosure: {
              kind: 'vented',
              chamber: { netLitres: 55, ql: leakQ },
              port: { ...roundPort, qp: flowQ },
            },
          }).splDb[0] ?? Number.NaN;
        expect(at(ql * 1.1, qp)).toBeGreaterThan(at(ql, qp));
        expect(at(ql, qp * 1.1)).toBeGreaterThan(at(ql, qp));
      }),
      { numRuns: 60 },
    );
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
