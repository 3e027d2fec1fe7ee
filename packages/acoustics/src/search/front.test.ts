import type { FoundDesign } from '@gusset/contracts/acoustics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeFront } from './front.ts';

function design(
  key: string,
  [lowCornerHz, outputDb, netLitres, costMinor]: readonly (number | null)[],
): FoundDesign {
  return {
    key,
    driverId: key,
    kind: 'closed',
    count: 1,
    seriesPerString: 1,
    coilWiring: 'single',
    loadOhm: 4,
    watts: 100,
    enclosure: { kind: 'infinite-baffle' },
    netLitres: netLitres ?? 0,
    costMinor: costMinor ?? null,
    tuningHz: null,
    port: null,
    lowCornerHz: lowCornerHz ?? 0,
    outputDb: outputDb ?? 0,
    deviationDb: 0,
  };
}

const keysOf = (designs: readonly FoundDesign[]) => designs.map(({ key }) => key);

function frontOf(designs: readonly FoundDesign[]): string[] {
  const front = makeFront();
  for (const one of designs) front.offer(one);
  return keysOf(front.points());
}

describe('makeFront', () => {
  it('keeps what is better in one thing and drops what is better in none', () => {
    const deep = design('deep', [25, 110, 40, 100]);
    const loud = design('loud', [35, 116, 40, 100]);
    const beaten = design('beaten', [35, 109, 41, 100]);
    expect(frontOf([beaten, loud, deep])).toEqual(['deep', 'loud']);
  });
  it('keeps the lower key of two that are alike', () => {
    expect(frontOf([design('b', [30, 110, 40, 100]), design('a', [30, 110, 40, 100])])).toEqual(['a']);
  });
  it('takes an unknown cost for the highest, and two unknown ones for alike', () => {
    expect(frontOf([design('known', [30, 110, 40, 100]), design('unknown', [30, 110, 40, null])])).toEqual([
      'known',
    ]);
    expect(frontOf([design('a', [30, 110, 40, null]), design('b', [31, 110, 40, null])])).toEqual(['a']);
  });
  it('rules out a best case only where something stands that is strictly better in one thing', () => {
    const front = makeFront();
    front.offer(design('a', [30, 110, 40, 100]));
    expect(front.rulesOut({ lowCornerHz: 30, outputDb: 110, netLitres: 40, costMinor: 100 })).toBe(false);
    expect(front.rulesOut({ lowCornerHz: 30, outputDb: 110, netLitres: 41, costMinor: 100 })).toBe(true);
    expect(front.rulesOut({ lowCornerHz: 10, outputDb: 110, netLitres: 41, costMinor: 100 })).toBe(false);
  });
  it('does not depend on the order, and holds exactly those that nothing beats', () => {
    const figures = fc.tuple(
      fc.integer({ min: 1, max: 4 }),
      fc.integer({ min: 1, max: 4 }),
      fc.integer({ min: 1, max: 4 }),
    );
    fc.assert(
      fc.property(fc.array(figures, { maxLength: 30 }), (list) => {
        const designs = list.map(([corner, output, litres], i) =>
          design(String(i).padStart(2, '0'), [corner, output, litres, 100]),
        );
        const standing = frontOf(designs);
        expect(frontOf([...designs].reverse())).toEqual(standing);
        for (const one of designs) {
          const beaten = designs.some(
            (other) =>
              other.lowCornerHz <= one.lowCornerHz &&
              other.outputDb >= one.outputDb &&
              other.netLitres <= one.netLitres &&
              (other.key < one.key ||
                other.lowCornerHz < one.lowCornerHz ||
                other.outputDb > one.outputDb ||
                other.netLitres < one.netLitres),
          );
          expect(standing.includes(one.key)).toBe(!beaten);
        }
      }),
    );
  });
});
