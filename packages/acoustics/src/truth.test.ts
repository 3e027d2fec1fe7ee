// Golden cases: every driver, coil, port and radiator as parts of its own in ngspice (truth/netlist.ts), asked once
// by truth/make-truth.ts. The fixture holds the system and its answers; the tests need no ngspice.
import { readFileSync } from 'node:fs';
import {
  type ResponseResult,
  responseResultSchema,
  type SoundSystemInput,
} from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { solveResponse } from './response.ts';

type CurveName =
  | 'splDb'
  | 'impedanceOhm'
  | 'impedancePhaseRad'
  | 'excursionMm'
  | 'innerExcursionMm'
  | 'radiatorExcursionMm'
  | 'portSpeedMps'
  | 'rearPortSpeedMps'
  | 'groupDelayMs';

type Answers = { readonly [Name in CurveName]: readonly number[] | null };
type Fixture = { readonly answers: readonly (Answers & { id: string; input: SoundSystemInput })[] };

const fixture: Fixture = JSON.parse(readFileSync(new URL('../truth/ngspice.json', import.meta.url), 'utf8'));

/**
 * Widest difference allowed. What is left is the rounding of the fixture, and where Bessel sections are in play the
 * four digits of their printed table.
 */
const TOLERANCE: Readonly<Record<CurveName, { readonly absolute: number; readonly relative: number }>> = {
  splDb: { absolute: 0.05, relative: 0 }, // dB
  impedanceOhm: { absolute: 0, relative: 0.002 },
  impedancePhaseRad: { absolute: 0.002, relative: 0 }, // as small beside one as the magnitude's share
  excursionMm: { absolute: 0, relative: 0.005 },
  innerExcursionMm: { absolute: 0, relative: 0.005 },
  radiatorExcursionMm: { absolute: 0, relative: 0.005 },
  portSpeedMps: { absolute: 0, relative: 0.005 },
  rearPortSpeedMps: { absolute: 0, relative: 0.005 },
  groupDelayMs: { absolute: 0.05, relative: 0.01 },
};
const CURVES = Object.keys(TOLERANCE) as CurveName[]; // keys of a record typed by CurveName

function answered(input: SoundSystemInput): ResponseResult {
  const result = solveResponse(input);
  if (isRefusal(result)) throw new Error(JSON.stringify(result.refusal));
  return result;
}

const EXPECTED_CASES = 18; // so that none goes missing quietly
let compared = 0;

describe('solveResponse against ngspice', () => {
  it('has every case of the fixture', () => {
    expect(fixture.answers.map(({ id }) => id)).toHaveLength(EXPECTED_CASES);
  });

  it.each(fixture.answers)('agrees with a part-by-part circuit: $id', ({ input, ...truth }) => {
    const result = answered(input);
    expect(responseResultSchema.safeParse(result).error).toBeUndefined();
    for (const name of CURVES) {
      const expected = truth[name];
      const got = result[name];
      if (expected === null) {
        expect(got, name).toBeNull();
        continue;
      }
      expect(got, name).toHaveLength(input.frequenciesHz.length);
      for (const [i, value] of expected.entries()) {
        const { absolute, relative } = TOLERANCE[name];
        const error = Math.abs((got?.[i] ?? Number.NaN) - value);
        const allowed = Math.max(absolute, relative * Math.abs(value));
        expect(
          error,
          `${name} at ${input.frequenciesHz[i]} Hz, ${got?.[i]} for ${value}`,
        ).toBeLessThanOrEqual(allowed);
        compared++;
      }
    }
  });

  it('compared every value of the fixture', () => {
    const values = fixture.answers.flatMap((truth) => CURVES.flatMap((name) => truth[name] ?? []));
    expect(compared).toBe(values.length);
  });
});
