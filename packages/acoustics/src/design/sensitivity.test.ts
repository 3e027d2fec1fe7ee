import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { medlar12, quince10 } from '../../truth/drivers.ts';
import { closedBoxSummary } from '../closed-box.ts';
import { scaledDriver } from './scaled-system.ts';
import { sensitivities } from './sensitivity.ts';

const closed = {
  source: { voltageVrms: 10 },
  driver: quince10,
  enclosure: { kind: 'closed', chamber: { netLitres: 30 } },
} as const;
const port = {
  mouth: { shape: 'round', diameterMm: 100 },
  outerEnd: { kind: 'flanged' },
  innerEnd: { kind: 'free' },
  sizing: { by: 'tuning', tuningHz: 31 },
} as const;
const vented = {
  source: { voltageVrms: 10 },
  driver: medlar12,
  enclosure: { kind: 'vented', chamber: { netLitres: 55, ql: 7 }, port },
} as const;

function rowsOf(...args: Parameters<typeof sensitivities>) {
  const rows = sensitivities(...args);
  if (isRefusal(rows)) throw new Error(JSON.stringify(rows.refusal));
  return new Map(rows.map((row) => [row.parameter, row]));
}

describe('sensitivities of a closed box', () => {
  const rows = rowsOf({ system: closed });
  const g = 1.6 / (2 * 2.6); // alpha/(2 (1 + alpha)) at alpha 1.6
  const qts = (4.6 * 0.52) / (4.6 + 0.52);

  // Small 1972: Qtc = Qts sqrt(1 + alpha), fc = fs sqrt(1 + alpha), differentiated.
  it.each([
    ['fs', 1, 0],
    ['qes', 0, qts / 0.52],
    ['qms', 0, qts / 4.6],
    ['vas', g, g],
    ['net-litres', -g, -g],
    ['cms', -1 / (2 * 2.6), -1 / (2 * 2.6)],
  ] as const)('move with %s as the closed forms do', (parameter, fc, qtc) => {
    expect(rows.get(parameter)?.fc).toBeCloseTo(fc, 6);
    expect(rows.get(parameter)?.qtc).toBeCloseTo(qtc, 6);
  });

  it('have 30.8 % of Vas in fc, 89.8 % of Qes in Qtc', () => {
    expect(rows.get('vas')?.fc).toBeCloseTo(0.308, 3);
    expect(rows.get('qes')?.qtc).toBeCloseTo(0.898, 3);
  });

  it('have the motor in Qtc twice over and inverse: Qes goes with 1/BL²', () => {
    expect(rows.get('bl')?.qtc).toBeCloseTo((-2 * qts) / 0.52, 6);
    expect(rows.get('re')?.qtc).toBeCloseTo(qts / 0.52, 6);
    expect(rows.get('bl')?.fc).toBeCloseTo(0, 9);
  });

  it('have no tuning, and nothing of a port', () => {
    expect(rows.get('fs')?.tuning).toBeNull();
    expect(rows.get('port-length')?.fc).toBeCloseTo(0, 9);
  });
});

// The worked check: alpha 1.6, Vas +10 % moves Qtc and fc by +3.0 %, Cms +20 % by -3.3 %.
describe('a whole change', () => {
  function figures(driver: Parameters<typeof closedBoxSummary>[0]) {
    const found = closedBoxSummary(driver, 30);
    if (isRefusal(found)) throw new Error(found.refusal.why);
    return found;
  }
  const before = figures(quince10);

  it('of Vas by 10 % is 3.0 % in both', () => {
    const after = figures({ ...quince10, vasLitres: 52.8 });
    expect(after.qtc / before.qtc).toBeCloseTo(1.0304, 3);
    expect(after.fcHz / before.fcHz).toBeCloseTo(1.0304, 3);
  });

  it('of Cms by 20 % is 3.3 % down in both, far from what its three figures apart would give', () => {
    const after = figures(scaledDriver(quince10, { cms: 1.2, bl: 1, mms: 1, re: 1 }));
    expect(after.qtc / before.qtc).toBeCloseTo(0.967, 3);
    expect(after.fcHz / before.fcHz).toBeCloseTo(0.967, 3);
  });
});

describe('sensitivities of a vented box', () => {
  const rows = rowsOf({ system: vented });
  const [lengthMm, effectiveMm] = [370.33, 443.44]; // worked example

  it.each([
    ['net-litres', -1 / 2],
    ['port-length', -lengthMm / (2 * effectiveMm)],
    ['port-bore', 1 - (effectiveMm - lengthMm) / (2 * effectiveMm)],
    ['air-temperature', 1 / 2],
    ['vas', 0],
  ] as const)('have the tuning move with %s by %f', (parameter, tuning) => {
    expect(rows.get(parameter)?.tuning).toBeCloseTo(tuning, 4);
  });

  it('have a corner that falls as the box grows', () => {
    expect(rows.get('net-litres')?.f3).toBeLessThan(0);
    expect(rows.get('net-litres')?.fc).toBeNull();
  });

  it('refuse a port that cannot be built', () => {
    const straw = { ...port, mouth: { shape: 'round', diameterMm: 10 } } as const;
    const rowsOrNot = sensitivities({
      system: { ...vented, enclosure: { ...vented.enclosure, port: straw } },
    });
    expect(isRefusal(rowsOrNot) && rowsOrNot.refusal.field).toBe('system.enclosure');
  });
});
