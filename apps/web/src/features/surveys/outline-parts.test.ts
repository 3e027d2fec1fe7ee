import { describe, expect, it } from 'vitest';
import { boxSidesOf, cornersOfBox, newBox, withCorner } from './outline-parts.ts';

describe('boxSidesOf', () => {
  it('finds the sides of a box and gives the same corners back', () => {
    const corners = newBox(60, 120);
    const sides = boxSidesOf(corners);
    expect([sides?.far.mm, sides?.high.mm]).toEqual([60, 120]);
    expect(sides === null ? null : cornersOfBox(sides)).toEqual(corners);
  });
  it('is null for any other outline', () => {
    expect(boxSidesOf(newBox(60, 120).slice(0, 3))).toBeNull();
    expect(boxSidesOf(withCorner(newBox(60, 120)))).toBeNull();
    const [a, ...others] = newBox(60, 120);
    if (a === undefined) throw new Error('no corner');
    expect(boxSidesOf([{ ...a, x: { mm: 5, typed: '5', unit: 'mm' } }, ...others])).toBeNull();
  });
});
