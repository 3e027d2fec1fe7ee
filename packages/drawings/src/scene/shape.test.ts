import { describe, expect, it } from 'vitest';
import { arcCommands, circleCommands, placeShape, ringCommands } from './shape.ts';
import { spot } from './spot.ts';

/** Point of a cubic from (x0, y0) at share t. */
function cubicAt(start: readonly [number, number], c: readonly number[], t: number): [number, number] {
  const [x1 = 0, y1 = 0, x2 = 0, y2 = 0, x3 = 0, y3 = 0] = c;
  const mix = (a: number, b: number, d: number, e: number): number =>
    (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t ** 2 * d + t ** 3 * e;
  return [mix(start[0], x1, x2, x3), mix(start[1], y1, y2, y3)];
}

describe('arcCommands', () => {
  it('stays within 5 millionths of the radius all the way round: a 300 mm circle prints right to a micrometre', () => {
    const [move, ...curves] = arcCommands(spot(0, 0), 100, 0, 2 * Math.PI);
    expect(curves).toHaveLength(8);
    let start: [number, number] = [Number(move?.[1]), Number(move?.[2])];
    for (const [letter, ...numbers] of curves) {
      expect(letter).toBe('C');
      const handles = numbers.map(Number);
      for (let t = 0; t <= 1; t += 0.05) {
        expect(Math.abs(Math.hypot(...cubicAt(start, handles, t)) - 100)).toBeLessThan(0.0005);
      }
      start = [handles[4] ?? 0, handles[5] ?? 0];
    }
    expect(start[0]).toBeCloseTo(100, 9);
    expect(start[1]).toBeCloseTo(0, 9);
  });

  it('goes clockwise on paper: a quarter from the right ends below', () => {
    const curve = arcCommands(spot(10, 10), 5, 0, Math.PI / 2).at(-1);
    expect(Number(curve?.[5])).toBeCloseTo(10, 9);
    expect(Number(curve?.[6])).toBeCloseTo(15, 9);
  });

  it('closes a circle', () => {
    expect(circleCommands(spot(0, 0), 3).at(-1)).toEqual(['Z']);
  });
});

describe('placeShape', () => {
  it('enlarges places, letters, widths and dashes alike', () => {
    const path = {
      kind: 'path',
      commands: [...ringCommands([spot(1, 2), spot(3, 4)], true), ['C', 1, 1, 2, 2, 3, 3]],
      pen: { ink: 'ink', widthPt: 1, dashPt: [4, 2] },
      fill: null,
    } as const;
    expect(placeShape(path, 2, spot(10, 20))).toEqual({
      ...path,
      commands: [['M', 12, 24], ['L', 16, 28], ['Z'], ['C', 12, 22, 14, 24, 16, 26]],
      pen: { ink: 'ink', widthPt: 2, dashPt: [8, 4] },
    });
    const words = {
      kind: 'text',
      at: spot(1, 1),
      text: 'A',
      sizePt: 8,
      face: 'mono',
      anchor: 'start',
      ink: 'ink',
      turnRad: 0,
    } as const;
    expect(placeShape(words, 0.5, spot(0, 0))).toEqual({ ...words, at: spot(0.5, 0.5), sizePt: 4 });
  });
});
