import fc from 'fast-check';
import { describe, it } from 'vitest';
import { bothOpen, brokenEnd, stretchStart, unitCalendar, workedStretches } from './unit-calendar.ts';

const HORIZON = 60;
const intervals = fc
  .uniqueArray(fc.nat(HORIZON), { maxLength: 12 })
  .map((cuts) => cuts.toSorted((a, b) => a - b))
  .map((cuts) =>
    cuts.flatMap((from, k): [number, number][] =>
      k % 2 === 0 && k + 1 < cuts.length ? [[from, cuts[k + 1] ?? from]] : [],
    ),
  );
const isOpen = (list: readonly (readonly [number, number])[], unit: number) =>
  list.some(([from, to]) => from <= unit && unit < to);

describe('unitCalendar', () => {
  it('finds the first long enough stretch, as looking at every unit does', () => {
    fc.assert(
      fc.property(intervals, fc.nat(HORIZON), fc.integer({ min: 1, max: 8 }), (list, from, duration) => {
        let slow = HORIZON;
        for (let start = HORIZON - duration; start >= from; start--) {
          const units = Array.from({ length: duration }, (_, k) => start + k);
          if (units.every((unit) => isOpen(list, unit))) slow = start;
        }
        return stretchStart(unitCalendar(list, HORIZON), from, duration) === slow;
      }),
    );
  });

  it('ends broken work after as many open units as it lasts', () => {
    fc.assert(
      fc.property(intervals, fc.nat(HORIZON), fc.integer({ min: 1, max: 20 }), (list, from, duration) => {
        const calendar = unitCalendar(list, HORIZON);
        const start = stretchStart(calendar, from, 1);
        const end = brokenEnd(calendar, start, duration);
        if (start >= HORIZON || end > HORIZON) return true;
        const stretches = workedStretches(calendar, start, end);
        const worked = stretches.reduce((sum, [a, b]) => sum + b - a, 0);
        return (
          worked === duration && stretches.every(([a, b]) => a < b && isOpen(list, a) && isOpen(list, b - 1))
        );
      }),
    );
  });

  it('is open where both are', () => {
    fc.assert(
      fc.property(intervals, intervals, fc.nat(HORIZON), (a, b, unit) => {
        return isOpen(bothOpen(a, b), unit) === (isOpen(a, unit) && isOpen(b, unit));
      }),
    );
  });
});
