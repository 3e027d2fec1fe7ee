import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { medlar12, quince10 } from '../../truth/drivers.ts';
import { driverElements } from '../driver-elements.ts';
import { solveResponse } from '../response.ts';
import { scaledDriver } from './scaled-system.ts';
import { sensitivities } from './sensitivity.ts';
import { toleranceBand } from './tolerance-band.ts';

const closed = {
  source: { voltageVrms: 10 },
  driver: quince10,
  enclosure: { kind: 'closed', chamber: { netLitres: 30, ql: 10 } },
} as const;
const vented = {
  source: { voltageVrms: 10 },
  driver: medlar12,
  enclosure: {
    kind: 'vented',
    chamber: { netLitres: 55, ql: 7 },
    port: {
      mouth: { shape: 'round', diameterMm: 100 },
      outerEnd: { kind: 'flanged' },
      innerEnd: { kind: 'free' },
      sizing: { by: 'tuning', tuningHz: 31 },
    },
  },
} as const;
const STILL = {
  cmsPercent: 0,
  blPercent: 0,
  mmsPercent: 0,
  rePercent: 0,
  netLitresPercent: 0,
  portLengthMm: 0,
  ql: null,
  sheet: null,
} as const;

function band(...args: Parameters<typeof toleranceBand>) {
  const found = toleranceBand(...args);
  if (isRefusal(found)) throw new Error(JSON.stringify(found.refusal));
  return found;
}

describe('scaledDriver', () => {
  it('is the driver whose elements are off by those factors, Rms and Sd held', () => {
    const factors = { cms: 1.15, bl: 0.96, mms: 1.04, re: 1.03 };
    const [before, after] = [driverElements(medlar12), driverElements(scaledDriver(medlar12, factors))];
    expect(after.cmsMPerN / before.cmsMPerN).toBeCloseTo(1.15, 12);
    expect(after.blTm / before.blTm).toBeCloseTo(0.96, 12);
    expect(after.mmsKg / before.mmsKg).toBeCloseTo(1.04, 12);
    expect(after.rmsNsPerM).toBeCloseTo(before.rmsNsPerM, 12);
  });
});

describe('toleranceBand', () => {
  it('has the curve of the solver as drawn', () => {
    const found = band({ system: vented });
    const result = solveResponse({ ...vented, frequenciesHz: [...found.frequenciesHz] });
    if (isRefusal(result)) throw new Error(result.refusal.why);
    found.asDrawnDb.forEach((db, i) => {
      expect(db).toBeCloseTo(result.splDb[i] ?? 0, 6);
    });
  });

  it('collapses onto it when nothing may spread', () => {
    const found = band({ system: vented, spread: STILL });
    found.asDrawnDb.forEach((db, i) => {
      expect(found.p5Db[i]).toBeCloseTo(db, 9);
      expect(found.p95Db[i]).toBeCloseTo(db, 9);
    });
    expect(found.matters.lowCorner).toEqual([]);
  });

  it('holds the curve as drawn between its edges, which stand in order', () => {
    const found = band({ system: vented });
    found.p50Db.forEach((db, i) => {
      expect(found.p5Db[i]).toBeLessThan(db);
      expect(found.p95Db[i]).toBeGreaterThan(db);
    });
    expect(found.lowCornerHz.p5).toBeLessThan(found.lowCornerHz.asDrawn);
    expect(found.lowCornerHz.p95).toBeGreaterThan(found.lowCornerHz.asDrawn);
  });

  it('repeats itself for a seed, to the last digit', () => {
    expect(band({ system: vented, seed: 42 })).toEqual(band({ system: vented, seed: 42 }));
    expect(band({ system: vented, seed: 43 }).p5Db).not.toEqual(band({ system: vented, seed: 42 }).p5Db);
  });

  // Mass-controlled level goes as BL/(Re Mms) at a given voltage. Each ± is two standard deviations, so of ± 5 % in BL alone
  // nine draws in ten lie within 1.645 x 2.5 %: 20 log10(1.0411) = 0.350 dB to either side.
  it('is as wide as theory says where one thing spreads by a known law', () => {
    const found = band({
      system: { ...closed, driver: { ...quince10, reOhm: 400 / 2.5, qes: 90, qms: 5 } },
      spread: { ...STILL, blPercent: 5 },
      shown: { lowHz: 200, highHz: 400 },
      band: { lowHz: 200, highHz: 400 },
      draws: 2_000,
    });
    const width = ((found.p95Db.at(-1) ?? 0) - (found.p5Db.at(-1) ?? 0)) / 2;
    expect(width).toBeGreaterThan(0.33);
    expect(width).toBeLessThan(0.37);
    expect(found.matters.output[0]).toMatchObject({ parameter: 'bl', share: expect.closeTo(1, 2) });
  });

  // A second way to the same number: slopes by the solver, squared and added (all draws are independent).
  it('spreads the resonance of a closed box as far as its slopes say', () => {
    const spread = { ...STILL, cmsPercent: 10, mmsPercent: 6, netLitresPercent: 8 };
    const system = { ...closed, driver: { ...quince10, leMh: 0 } } as const;
    const slopes = sensitivities({ system });
    if (isRefusal(slopes)) throw new Error(slopes.refusal.why);
    const f3Slope = (name: string) => slopes.find(({ parameter }) => parameter === name)?.f3 ?? 0;
    const half = { cms: 0.05, mms: 0.03, 'net-litres': 0.04 }; // one standard deviation
    const expected = Math.hypot(
      ...Object.entries(half).map(([name, deviation]) => f3Slope(name) * deviation),
    );
    // The mean over a band far above stands still beside the corner, so what moves is f3 itself.
    const { lowCornerHz } = band({
      system,
      spread,
      shown: { lowHz: 20, highHz: 900 },
      band: { lowHz: 400, highHz: 900 },
      points: 200,
      draws: 1_000,
    });
    const found = Math.log(lowCornerHz.p95 / lowCornerHz.p5) / (2 * 1.645);
    expect(found / expected).toBeGreaterThan(0.93);
    expect(found / expected).toBeLessThan(1.07);
  });

  it('gives the corner of a closed box to the suspension only as far as alpha lets it', () => {
    // d ln fc / d ln Cms = d ln Qtc / d ln Cms = -1/(2 (1 + alpha)): stiff air hides the suspension.
    const widthWith = (netLitres: number) => {
      const { lowCornerHz } = band({
        system: {
          ...closed,
          driver: { ...quince10, leMh: 0 },
          enclosure: { kind: 'closed', chamber: { netLitres } },
        },
        spread: { ...STILL, cmsPercent: 15 },
        shown: { lowHz: 20, highHz: 900 },
        band: { lowHz: 400, highHz: 900 },
        points: 100,
      });
      return (lowCornerHz.p95 - lowCornerHz.p5) / lowCornerHz.p50;
    };
    expect(widthWith(15)).toBeLessThan(0.6 * widthWith(150));
  });

  it('counts the draws that meet a target', () => {
    const sure = band({ system: closed, target: { cornerBelowHz: 200 } });
    expect(sure.chance).toMatchObject({ met: 200, draws: 200, share: 1 });
    expect(sure.chance?.leastShare).toBeCloseTo(0.981, 3);
    const never = band({ system: closed, target: { cornerBelowHz: 11, peakBelowDb: 6 } });
    expect(never.chance).toMatchObject({ met: 0, leastShare: 0 });
    const median = band({ system: closed, target: { cornerBelowHz: sure.lowCornerHz.p50 } });
    expect(median.chance?.share).toBeCloseTo(0.5, 1);
    expect(band({ system: closed }).chance).toBeNull();
  });

  it('turns the tolerance of the sheet into litres', () => {
    const sheet = { litresPerMm: 1.4, toleranceMm: 0.4 };
    const found = band({ system: closed, spread: { ...STILL, sheet } });
    expect(found.sheetLitres).toEqual({ least: expect.closeTo(29.44, 9), most: expect.closeTo(30.56, 9) });
    expect(found.matters.lowCorner[0]).toMatchObject({
      parameter: 'sheet-thickness',
      share: expect.closeTo(1, 1),
    });
    const silly = toleranceBand({ system: closed, spread: { sheet: { litresPerMm: 40, toleranceMm: 5 } } });
    expect(isRefusal(silly) && silly.refusal.field).toBe('spread.sheet');
  });

  it('ranks the port in a vented box and has none in a closed one', () => {
    const names = (system: typeof closed | typeof vented) =>
      band({ system }).matters.lowCorner.map(({ parameter }) => parameter);
    expect(names(vented)).toContain('port-length');
    expect(names(closed)).not.toContain('port-length');
  });

  it('refuses a band outside what is shown, and tolerances beyond reason', () => {
    const outside = toleranceBand({ system: closed, shown: { lowHz: 100, highHz: 200 } });
    expect(isRefusal(outside) && outside.refusal.field).toBe('band.lowHz');
    const wild = toleranceBand({ system: closed, spread: { cmsPercent: 200 } });
    expect(isRefusal(wild) && wild.refusal.field).toBe('spread.cmsPercent');
  });

  it('stays finite for any driver and the widest spread', () => {
    const driver = fc.record({
      fsHz: fc.double({ min: 5, max: 2_000, noNaN: true }),
      qms: fc.double({ min: 0.1, max: 200, noNaN: true }),
      qes: fc.double({ min: 0.02, max: 100, noNaN: true }),
      vasLitres: fc.double({ min: 0.01, max: 5_000, noNaN: true }),
    });
    const spread = {
      cmsPercent: 50,
      blPercent: 30,
      mmsPercent: 30,
      rePercent: 50,
      netLitresPercent: 30,
      portLengthMm: 50,
    };
    fc.assert(
      fc.property(driver, fc.constantFrom(closed, vented), (parts, system) => {
        const found = band({
          system: { ...system, driver: { ...medlar12, ...parts } },
          spread,
          draws: 20,
          points: 20,
        });
        const figures = [found.lowCornerHz, found.peakDb, found.outputDb].flatMap((it) => Object.values(it));
        for (const value of [...found.p5Db, ...found.p50Db, ...found.p95Db, ...figures]) {
          expect(Number.isFinite(value)).toBe(true);
        }
      }),
      { numRuns: 60, seed: 11 },
    );
  });
});
