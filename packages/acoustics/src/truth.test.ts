// Golden cases: every driver, coil, port and radiator as parts of its own in ngspice (truth/netlist.ts), asked once
// by truth/make-truth.ts. The fixture holds the system and its answers; the tests need no ngspice.
import { responseResultSchema } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { CURVES, differences, readFixture, TOLERANCE } from '../truth/agreement.ts';
import { STEP_TOLERANCE, stepDifferences } from '../truth/step-agreement.ts';
import { solveResponse } from './response.ts';
import { solveTimeResponse } from './time-response.ts';

const fixture = readFixture();
const EXPECTED_CASES = 18; // so that none goes missing quietly
const EXPECTED_STEPS = 3;
let compared = 0;

describe('solveResponse against ngspice', () => {
  it('has every case of the fixture', () => {
    expect(fixture.answers.map(({ id }) => id)).toHaveLength(EXPECTED_CASES);
  });

  it.each(fixture.answers)('agrees with a part-by-part circuit: $id', (answer) => {
    const result = solveResponse(answer.input);
    if (isRefusal(result)) throw new Error(JSON.stringify(result.refusal));
    expect(responseResultSchema.safeParse(result).error).toBeUndefined();
    for (const name of CURVES) {
      const found = differences(name, answer, result);
      if (found === null) continue;
      expect(Math.max(...found), name).toBeLessThanOrEqual(TOLERANCE[name].allowed);
      compared += found.length;
    }
  });

  it('compared every value of the fixture', () => {
    const values = fixture.answers.flatMap((answer) => CURVES.flatMap((name) => answer[name] ?? []));
    expect(compared).toBe(values.length);
  });
});

describe('solveTimeResponse against ngspice', () => {
  it('has every step of the fixture', () => {
    expect(fixture.steps.map(({ id }) => id)).toHaveLength(EXPECTED_STEPS);
  });

  it.each(fixture.steps)('follows a part-by-part circuit in time: $id', (step) => {
    const result = solveTimeResponse(step.input);
    if (isRefusal(result)) throw new Error(JSON.stringify(result.refusal));
    const found = stepDifferences(step, result);
    expect(found.length).toBeGreaterThan(350);
    expect(Math.max(...found)).toBeLessThan(STEP_TOLERANCE);
  });
});
