import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPort } from './port-room.ts';

const room = { straightMm: 400, acrossMm: 600, bendsAllowed: 2 as const, clearMm: 100 };
const port = { thickMm: 110, mouthMm: 100 };

describe('fitPort', () => {
  it.each([
    [300, 'straight'],
    [301, 'one-bend'],
    [400 + 600 - 110 - 100, 'one-bend'],
    [791, 'two-bends'],
    [2 * 400 + 600 - 220 - 100, 'two-bends'],
    [1_081, 'no'],
  ])('puts %d mm in as: %s', (insideMm, fit) => {
    expect(fitPort({ ...port, insideMm, room }).fit).toBe(fit);
  });

  it('keeps the smaller side of the mouth free unless told otherwise', () => {
    const straight = { ...room, bendsAllowed: 0 as const, clearMm: null };
    expect(fitPort({ ...port, insideMm: 300, room: straight })).toEqual({ fit: 'straight', longestMm: 300 });
    expect(fitPort({ ...port, mouthMm: 50, insideMm: 350, room: straight }).fit).toBe('straight');
  });

  it('bends nothing that it may not, or that it knows no room for', () => {
    expect(fitPort({ ...port, insideMm: 350, room: { ...room, bendsAllowed: 0 } }).fit).toBe('no');
    expect(fitPort({ ...port, insideMm: 350, room: { ...room, acrossMm: null } }).fit).toBe('no');
    expect(fitPort({ ...port, insideMm: 350, room: null })).toEqual({ fit: 'not-known', longestMm: null });
  });

  it('never fits a longer port with fewer bends', () => {
    const order = ['straight', 'one-bend', 'two-bends', 'no'];
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2_000 }), fc.integer({ min: 0, max: 500 }), (insideMm, more) => {
        const one = order.indexOf(fitPort({ ...port, insideMm, room }).fit);
        const other = order.indexOf(fitPort({ ...port, insideMm: insideMm + more, room }).fit);
        expect(other).toBeGreaterThanOrEqual(one);
      }),
    );
  });
});
