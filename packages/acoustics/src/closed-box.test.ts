import type { DriverParameters } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quince10 } from '../truth/drivers.ts';
import { pressureAtAltitudePa } from './air.ts';
import { closedBoxSummary, closedBoxVolumeForQ } from './closed-box.ts';
import { solveResponse } from './response.ts';
import { cornerF3Hz, peakDb, peakHz } from './second-order.ts';

function summary(...args: Parameters<typeof closedBoxSummary>) {
  const found = closedBoxSummary(...args);
  if (isRefusal(found)) throw new Error(JSON.stringify(found.refusal));
  return found;
}

/** Size of s²/(s² + s/Q + 1), dB. */
const secondOrderDb = (x: number, q: number) => -10 * Math.log10((1 - 1 / x ** 2) ** 2 + 1 / (q * x) ** 2);

describe('second-order figures', () => {
  it('peaks as the Chebyshev table says: +1.25 dB at Q 1, +2.4 dB at 1.2', () => {
    expect(peakDb(1)).toBeCloseTo(1.25, 2);
    expect(peakDb(1.2)).toBeCloseTo(2.4, 1);
    expect(peakDb(Math.SQRT1_2)).toBe(0);
    expect(peakHz(40, 0.6)).toBeNull();
  });

  it('has -3 dB at f3 and its peak at the peak, for any Q', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 20, noNaN: true }), (q) => {
        expect(secondOrderDb(cornerF3Hz(1, q), q)).toBeCloseTo(-10 * Math.log10(2), 6);
        const at = peakHz(1, q);
        if (at === null) return;
        expect(secondOrderDb(at, q)).toBeCloseTo(peakDb(q), 6);
        expect(secondOrderDb(at * 1.01, q)).toBeLessThan(peakDb(q));
      }),
    );
  });

  it('stands at the resonance with f3 when it is flattest', () => {
    expect(cornerF3Hz(40, Math.SQRT1_2)).toBeCloseTo(40, 9);
  });
});

describe('closedBoxSummary', () => {
  it('gives the worked example: alpha 1.6, 47.567 Hz, Q 0.75332, -3 dB at 44.83 Hz', () => {
    const found = summary(quince10, 30);
    expect(found.alpha).toBeCloseTo(1.6, 10);
    expect(found.fcHz).toBeCloseTo(47.567, 3);
    expect(found.qtc).toBeCloseTo(0.75332, 5);
    expect(found.f3Hz).toBeCloseTo(44.83, 2);
    expect(found.peakDb).toBeCloseTo(peakDb(0.75332), 4);
  });

  it('is √2 × Qts when the box equals Vas', () => {
    const { qtc } = summary(quince10, quince10.vasLitres);
    expect(qtc).toBeCloseTo((4.6 * 0.52 * Math.SQRT2) / (4.6 + 0.52), 12);
  });

  it('rises in Q and resonance as the box shrinks', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 300, noNaN: true }), (netLitres) => {
        const [small, large] = [summary(quince10, netLitres), summary(quince10, netLitres * 1.1)];
        expect(small.qtc).toBeGreaterThan(large.qtc);
        expect(small.fcHz).toBeGreaterThan(large.fcHz);
      }),
    );
  });

  // Published log derivatives at alpha 1.6: Vas +10 % moves Q and resonance +3.0 %; Qes +10 % moves Q +8.9 %.
  it('moves with Vas and Qes as the sensitivity table says', () => {
    const base = summary(quince10, 30);
    const moreVas = summary({ ...quince10, vasLitres: quince10.vasLitres * 1.1 }, 30);
    const moreQes = summary({ ...quince10, qes: quince10.qes * 1.1 }, 30);
    expect(moreVas.qtc / base.qtc - 1).toBeCloseTo(0.03, 3);
    expect(moreVas.fcHz / base.fcHz - 1).toBeCloseTo(0.03, 3);
    expect(moreQes.qtc / base.qtc - 1).toBeCloseTo(0.089, 3);
  });

  it('softens with altitude by the pressure alone', () => {
    const pressurePa = pressureAtAltitudePa(1_600);
    expect(pressurePa / 1e3).toBeCloseTo(83.5, 1);
    const high = summary(quince10, 30, { air: { temperatureC: 35, pressurePa } });
    expect(high.alpha / 1.6).toBeCloseTo(pressurePa / 101_325, 12);
  });

  it('knows the Q with losses that the circuit shows at resonance', () => {
    const chamber = { netLitres: 30, ql: 30, qa: 60 };
    const { fcHz, qtcWithLosses, qtc } = summary(quince10, 30, { ql: 30, qa: 60 });
    const level = (enclosure: Parameters<typeof solveResponse>[0]['enclosure'], frequencyHz: number) => {
      const result = solveResponse({
        frequenciesHz: [frequencyHz],
        source: { voltageVrms: 1 },
        driver: quince10,
        enclosure,
      });
      return isRefusal(result) ? Number.NaN : (result.splDb[0] ?? Number.NaN);
    };
    // Far above resonance all losses are gone: the flat part. At resonance a second-order system stands at Q.
    const measured =
      10 ** ((level({ kind: 'closed', chamber }, fcHz) - level({ kind: 'closed', chamber }, 9_000)) / 20);
    expect(measured / qtcWithLosses).toBeCloseTo(1, 2);
    expect(qtcWithLosses).toBeLessThan(qtc);
  });

  it('counts amplifier and cable resistance into Q', () => {
    const damped = summary(quince10, 30, { seriesOhm: 0.36 });
    const qes = 0.52 * 1.1;
    expect(damped.qtc).toBeCloseTo(((4.6 * qes) / (4.6 + qes)) * Math.sqrt(2.6), 12);
  });

  it.each([
    ['netLitres', 0],
    ['netLitres', Number.NaN],
  ])('refuses %s of %d', (field, value) => {
    const found = closedBoxSummary(quince10, value);
    expect(isRefusal(found) && found.refusal.field).toBe(field);
  });
});

describe('closedBoxVolumeForQ', () => {
  it('finds the box back from its Q, for any box, fill, air and number of drivers', () => {
    const question = fc.record({
      litres: fc.double({ min: 5, max: 200, noNaN: true }),
      fillFactor: fc.double({ min: 1, max: 1.4, noNaN: true }),
      pressurePa: fc.double({ min: 70_000, max: 101_325, noNaN: true }),
      strings: fc.integer({ min: 1, max: 4 }),
    });
    fc.assert(
      fc.property(question, ({ litres, fillFactor, pressurePa, strings }) => {
        const array = {
          count: strings,
          seriesPerString: 1,
          parallelStrings: strings,
          coilWiring: 'single' as const,
          isobaric: null,
        };
        const setting = { fillFactor, air: { temperatureC: 20, pressurePa }, array };
        const found = closedBoxVolumeForQ(quince10, summary(quince10, litres, setting).qtc, setting);
        expect(isRefusal(found) ? null : found.netLitres).toBeCloseTo(litres, 6);
      }),
    );
  });

  it('refuses a Q that only an endless box could have', () => {
    const driver: DriverParameters = quince10;
    const found = closedBoxVolumeForQ(driver, 0.4);
    expect(isRefusal(found) && found.refusal).toMatchObject({
      field: 'qtc',
      allowed: 'above 0.467',
      got: 0.4,
    });
  });
});
