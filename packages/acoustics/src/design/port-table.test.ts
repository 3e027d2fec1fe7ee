import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { medlar12 } from '../../truth/drivers.ts';
import { portTable } from './port-table.ts';

const anyPort = {
  mouth: { shape: 'round', diameterMm: 100 },
  outerEnd: { kind: 'flanged' },
  innerEnd: { kind: 'free' },
  sizing: { by: 'tuning', tuningHz: 31 },
} as const;
const system = {
  source: { voltageVrms: 20 },
  driver: medlar12,
  enclosure: { kind: 'vented', chamber: { netLitres: 55, ql: 7 }, port: anyPort },
} as const;
const round = (diameterMm: number, count = 1) => ({ shape: 'round', diameterMm, count }) as const;
const base = { system, tuningHz: 31, air: { by: 'net', litres: 55 } } as const;

function table(...args: Parameters<typeof portTable>) {
  const found = portTable(...args);
  if (isRefusal(found)) throw new Error(JSON.stringify(found.refusal));
  return found;
}

describe('portTable', () => {
  // Worked example: 20 V on 55 L tuned to 31 Hz by 100 mm: 18.69 m/s at the tuning.
  it('has the length and the air speed of the worked example', () => {
    const row = table({ ...base, mouths: [round(100)], lines: { lowHz: 20, highHz: 80 } }).rows[0];
    expect(row?.built).toMatchObject({
      lengthMm: expect.closeTo(370.33, 2),
      pipeResonanceHz: expect.closeTo(343_236.8 / (2 * 443.44), 1),
      fit: 'not-known',
    });
    expect(row?.built?.peakSpeedMps).toBeGreaterThan(18.69);
    expect(row?.built?.peakSpeedMps).toBeLessThan(20.5);
    expect(row?.findings).toContainEqual(
      expect.objectContaining({ code: 'port-needs-flares', role: 'port' }),
    );
  });

  it('asks for the area at which the air keeps to the line, exactly', () => {
    const { leastArea } = table({ ...base, mouths: [round(100)], mostMps: 12 });
    for (const { count, diameterMm } of leastArea.diametersMm) {
      const { rows } = table({ ...base, mouths: [round(diameterMm, count)] });
      expect(rows[0]?.built?.peakSpeedMps).toBeCloseTo(12, 6);
    }
    expect(leastArea.bySmallCm2).toBeCloseTo(0.8 * 31 * 0.05 * 0.014 * 1e4, 6);
  });

  it('slows the air and lengthens the pipe with every larger mouth', () => {
    const { rows } = table({ ...base, mouths: [round(75), round(100), round(150)] });
    const [small, middle, large] = rows.map(({ built }) => built);
    expect(small?.lengthMm).toBeLessThan(middle?.lengthMm ?? 0);
    expect(middle?.lengthMm).toBeLessThan(large?.lengthMm ?? 0);
    expect(small?.peakSpeedMps).toBeGreaterThan(middle?.peakSpeedMps ?? 0);
    expect(middle?.peakSpeedMps).toBeGreaterThan(large?.peakSpeedMps ?? 0);
  });

  it('says how a port goes in, and why another does not', () => {
    const { rows } = table({
      ...base,
      air: { by: 'before-port', litres: 60 },
      mouths: [round(75), round(130), round(160), round(160, 2), round(20)],
      tuningHz: 40,
      room: { straightMm: 330, acrossMm: 450, bendsAllowed: 1 },
    });
    expect(rows.map(({ built }) => built?.fit ?? null)).toEqual(['straight', 'one-bend', 'no', null, null]);
    expect(rows[2]?.findings).toContainEqual(expect.objectContaining({ code: 'too-long' }));
    expect(rows[1]?.findings).toContainEqual({ code: 'needs-bends', severity: 'caution', bends: 1 });
    expect(rows[3]?.findings).toMatchObject([{ code: 'port-takes-the-air' }]);
    expect(rows[4]?.findings).toEqual([
      { code: 'mouth-too-small', severity: 'over', highestTuningHz: expect.any(Number) },
    ]);
  });

  it('sizes each port of a bandpass box by its own chamber', () => {
    const dual = {
      ...system,
      enclosure: {
        kind: 'dual-tuned-bandpass',
        rear: { netLitres: 60, ql: 10 },
        rearPort: anyPort,
        front: { netLitres: 30, ql: 10 },
        frontPort: { ...anyPort, sizing: { by: 'tuning', tuningHz: 62 } },
      },
    } as const;
    const rear = table({ ...base, system: dual, role: 'rear-port', mouths: [round(100)] });
    const front = table({ ...base, system: dual, role: 'front-port', tuningHz: 62, mouths: [round(100)] });
    expect(rear.rows[0]?.built?.lengthMm).toBeCloseTo(370.33, 2);
    expect(front.rows[0]?.built?.lengthMm).toBeLessThan(100);
    expect(rear.rows[0]?.findings[0]).toMatchObject({ role: 'rear-port' });
  });

  it('refuses a port that the box does not have, and flares on nothing', () => {
    const none = portTable({ ...base, role: 'rear-port', mouths: [round(100)] });
    expect(isRefusal(none) && none.refusal).toMatchObject({ field: 'role', got: 'rear-port' });
    const many = portTable({ ...base, mouths: [] });
    expect(isRefusal(many) && many.refusal.field).toBe('mouths');
  });
});
