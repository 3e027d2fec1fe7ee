import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, type Complex, complex, magnitude, multiply, ZERO } from './complex.ts';
import { complexList, emptySystem, factorise, substitute } from './linear-solve.ts';

function solve(rows: readonly (readonly Complex[])[], ...rights: readonly (readonly Complex[])[]) {
  const system = emptySystem(rows.length);
  rows.flat().forEach(({ re, im }, cell) => {
    system.re[cell] = re;
    system.im[cell] = im;
  });
  if (!factorise(system)) return null;
  return rights.map((right) => {
    const unknowns = complexList(rows.length);
    const given = {
      re: Float64Array.from(right, ({ re }) => re),
      im: Float64Array.from(right, ({ im }) => im),
    };
    substitute(system, given, unknowns);
    return right.map((_, i) => complex(unknowns.re[i] ?? Number.NaN, unknowns.im[i]));
  });
}

const part = fc.double({ min: -1, max: 1, noNaN: true });
const value = fc.record({ re: part, im: part });

describe('factorise and substitute', () => {
  it('solves two equations worked by hand', () => {
    // x + i y = 1, i x + y = 0 -> x = 1/2, y = -i/2
    const answer = solve(
      [
        [complex(1), complex(0, 1)],
        [complex(0, 1), complex(1)],
      ],
      [complex(1), ZERO],
    );
    expect(answer).toEqual([
      [
        { re: expect.closeTo(0.5, 12), im: expect.closeTo(0, 12) },
        { re: expect.closeTo(0, 12), im: expect.closeTo(-0.5, 12) },
      ],
    ]);
  });

  it('changes rows where the first pivot is nothing', () => {
    const answer = solve(
      [
        [ZERO, complex(2)],
        [complex(4), ZERO],
      ],
      [complex(6), complex(8)],
    );
    expect(answer).toEqual([[complex(2), complex(3)]]);
  });

  it('has no answer for a singular system', () => {
    expect(
      solve(
        [
          [complex(1), complex(2)],
          [complex(2), complex(4)],
        ],
        [complex(1), complex(1)],
      ),
    ).toBeNull();
    expect(solve([[ZERO]], [complex(1)])).toBeNull();
  });

  it('finds unknowns that satisfy every row, up to five of them, for more than one right-hand side', () => {
    const question = fc.integer({ min: 1, max: 5 }).chain((size) =>
      fc.tuple(
        fc.array(fc.array(value, { minLength: size, maxLength: size }), {
          minLength: size,
          maxLength: size,
        }),
        fc.array(value, { minLength: size, maxLength: size }),
        fc.array(value, { minLength: size, maxLength: size }),
      ),
    );
    fc.assert(
      fc.property(question, ([random, first, second]) => {
        // A heavy diagonal, so that no draw is near singular.
        const rows = random.map((row, r) => row.map((cell, c) => (r === c ? add(cell, complex(12)) : cell)));
        const answers = solve(rows, first, second);
        for (const [a, right] of [first, second].entries()) {
          for (const [r, row] of rows.entries()) {
            const unknown = (c: number) => answers?.[a]?.[c] ?? complex(Number.NaN);
            const left = row.reduce((sum, cell, c) => add(sum, multiply(cell, unknown(c))), ZERO);
            const wanted = right[r] ?? ZERO;
            expect(magnitude({ re: left.re - wanted.re, im: left.im - wanted.im })).toBeLessThan(1e-12);
          }
        }
      }),
    );
  });
});
