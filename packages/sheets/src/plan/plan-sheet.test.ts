import type { JobTaskSpec } from '@gusset/contracts/price';
import { describe, expect, it } from 'vitest';
import { planSheet } from './plan-sheet.ts';

const task = (key: string, after: readonly string[] = []): JobTaskSpec => ({
  key,
  title: key,
  skill: 'fab',
  minutes: 90,
  prerequisites: after.map((taskKey) => ({
    taskKey,
    kind: 'finish-start',
    waitMinutes: 0,
    reason: null,
    keepsBayMinutes: 0,
    byAnotherPerson: false,
  })),
  bayKind: 'bench',
  vehicleOnSite: false,
  breakable: true,
  needsParts: [],
  phase: 'wood',
});
const facts = { names: [] };

describe('the plan sheet', () => {
  it('puts pins on the priced tasks', () => {
    const pin = {
      taskKey: 'glue',
      personId: '00000000-0000-7000-8000-000000000001',
      bayId: null,
      earliestOn: '2026-12-01',
    };
    const outcome = planSheet.compute({ pins: [pin], rank: 2 }, facts, {
      price: { tasks: [task('cut'), task('glue', ['cut'])] },
    });
    expect(outcome).toMatchObject({
      state: 'ready',
      result: {
        minutes: 180,
        rank: 2,
        tasks: [
          { key: 'cut', personId: null },
          { key: 'glue', earliestOn: '2026-12-01' },
        ],
      },
    });
  });
  it('asks for the tasks of the price sheet', () => {
    expect(planSheet.compute(planSheet.emptyInput(), facts, {})).toMatchObject({ state: 'incomplete' });
  });
  it('refuses a task that waits for one that is gone', () => {
    const outcome = planSheet.compute(planSheet.emptyInput(), facts, {
      price: { tasks: [task('glue', ['cut'])] },
    });
    expect(outcome).toMatchObject({ state: 'refused', refusals: [{ got: 'cut' }] });
  });
});
