import type { PartsLine } from '@gusset/contracts/parts';
import type { PriceFacts, PriceInput, PriceResult } from '@gusset/contracts/price';
import { priceInputSchema } from '@gusset/contracts/price';
import { describe, expect, it } from 'vitest';
import { priceSheet } from './price-sheet.ts';
import { standardJobTasks, withoutTask, withTask } from './standard-job-tasks.ts';

const BOARD = '0192f0a0-0000-7000-8000-000000000001';
const DRIVER = '0192f0a0-0000-7000-8000-000000000002';

const FACTS: PriceFacts = {
  currency: 'EUR',
  partPrices: [
    { partId: BOARD, name: 'Birch ply 18', buyPriceMinor: 6_000, sellPriceMinor: 0 },
    { partId: DRIVER, name: 'Quince Q-10', buyPriceMinor: 14_000, sellPriceMinor: 18_900 },
  ],
  rates: {
    labourRateMinor: 7_500,
    labourRateBySkillMinor: { elec: 8_000 },
    hourlyCostMinor: 3_000,
    hourlyCostBySkillMinor: { elec: 3_600 },
    materialMarkupBasisPoints: 3_500,
    partMarkupBasisPoints: 2_500,
    marginFloorBasisPoints: 2_000,
    suppliesPercentOfLabourBasisPoints: 400,
    suppliesCapMinor: 12_000,
    customerPartFeeMinor: 4_500,
  },
  taxes: {
    codes: [{ code: 'STD', name: 'VAT', rateBasisPoints: 2_000 }],
    codeByKind: {
      material: 'STD',
      part: 'STD',
      labour: 'STD',
      supplies: 'STD',
      subcontract: 'STD',
      other: 'STD',
    },
    pricesIncludeTax: false,
    rounding: 'per-line',
  },
  depositBasisPoints: 4_000,
  validDays: 21,
  terms: 'Work starts after deposit.',
};

const task = (key: string, minutes: number, skill: 'fab' | 'elec' = 'fab') => ({
  key,
  title: `Task ${key}`,
  skill,
  minutes,
  prerequisites: [],
  bayKind: null,
  vehicleOnSite: false,
  breakable: true,
  needsParts: [],
  phase: 'wood' as const,
});

const partsLine = (changes: Partial<PartsLine>): PartsLine => ({
  key: `sheet:${BOARD}`,
  partId: BOARD,
  description: 'Birch ply 18',
  kind: 'material',
  group: 'sheet-goods',
  quantity: 2,
  unit: 'sheet',
  source: 'buy',
  supplierId: null,
  returnDueOn: null,
  note: '',
  because: '2 sheets from the layout',
  workedOutQuantity: null,
  ...changes,
});

function priced(changes: Partial<PriceInput>, lines: readonly PartsLine[] = [], facts = FACTS): PriceResult {
  const input = { ...priceSheet.emptyInput(), tasks: [task('cut', 60)], scope: 'A box.', ...changes };
  const outcome = priceSheet.compute(input, facts, { parts: { lines } });
  if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

const lineOf = ({ quote }: PriceResult, key: string) => quote.lines.find((line) => line.key === key);

describe('the price of a job', () => {
  it('asks for the tasks before it says anything', () => {
    expect(priceSheet.compute(priceSheet.emptyInput(), FACTS, {})).toMatchObject({
      state: 'incomplete',
      missing: [{ field: 'tasks' }],
    });
  });

  it('takes an empty draft as it stands', () => {
    expect(priceInputSchema.safeParse(priceSheet.emptyInput()).success).toBe(true);
  });

  it('charges each task at the rate of its skill, cost beside it', () => {
    const result = priced({ tasks: [task('cut', 90), task('wire', 30, 'elec')] });
    expect(lineOf(result, 'cut')).toMatchObject({ listMinor: 11_250, costMinor: 4_500 }); // 1.5 h x 75.00, 30.00
    expect(lineOf(result, 'wire')).toMatchObject({ listMinor: 4_000, costMinor: 1_800 }); // 0.5 h x 80.00, 36.00
    expect(result.labourMinutes).toBe(120);
  });

  it('adds up by hand: labour, supplies, board with markup, driver at its price, tax', () => {
    const result = priced({}, [
      partsLine({}),
      partsLine({
        key: `driver:${DRIVER}`,
        partId: DRIVER,
        description: 'Quince Q-10',
        kind: 'part',
        group: 'driver',
        quantity: 1,
        unit: 'each',
      }),
    ]);
    // 75.00 labour + 3.00 supplies (4 %) + 2 x 60.00 x 1.35 = 162.00 + 189.00 = 429.00; tax 20 % = 85.80
    expect(result.quote.totals).toMatchObject({ netMinor: 42_900, taxMinor: 8_580, grandMinor: 51_480 });
    expect(result.quote.totals.depositMinor).toBe(20_592); // 40 %
  });

  it('lists what the customer brings at nothing, with one fee for each', () => {
    const result = priced({}, [
      partsLine({ key: 'hand:a', kind: 'part', source: 'customer', quantity: 1, partId: DRIVER }),
      partsLine({ key: 'hand:b', kind: 'part', source: 'sponsor', quantity: 1, partId: DRIVER }),
    ]);
    expect(lineOf(result, 'hand:a')).toMatchObject({ grossMinor: 0, suppliedValueMinor: 14_000 });
    expect(lineOf(result, 'customer-parts')).toMatchObject({ quantity: 1, listMinor: 4_500 });
    expect(result.quote.totals.purchasesMinor).toBe(0);
  });

  it('takes a typed price over the catalogue, and an hourly rate for a task', () => {
    const result = priced(
      {
        priceOverrides: [
          { lineKey: `sheet:${BOARD}`, unitPriceMinor: 7_000, reason: 'agreed' },
          { lineKey: 'cut', unitPriceMinor: 5_000, reason: 'regular' },
        ],
      },
      [partsLine({})],
    );
    expect(lineOf(result, `sheet:${BOARD}`)?.listMinor).toBe(14_000);
    expect(lineOf(result, 'cut')?.listMinor).toBe(5_000);
  });

  it('says which lines have no price, and which prices have no line', () => {
    const result = priced({ priceOverrides: [{ lineKey: 'gone', unitPriceMinor: 1, reason: '' }] }, [
      partsLine({ key: 'hand:x', partId: null, description: 'Grille cloth', quantity: 1 }),
    ]);
    expect(result.notes).toEqual([
      { code: 'no-price', lineKey: 'hand:x', description: 'Grille cloth' },
      { code: 'price-for-nothing', lineKey: 'gone' },
    ]);
  });

  it('leaves worked-out glue and screws to the supplies share, unless they are parts or priced', () => {
    const glue = partsLine({
      key: 'supply:wood-glue',
      partId: null,
      description: 'Wood glue',
      quantity: 0.3,
    });
    expect(lineOf(priced({}, [glue]), 'supply:wood-glue')).toBeUndefined();
    expect(priced({}, [glue]).notes).toEqual([]);
    const typed = { lineKey: 'supply:wood-glue', unitPriceMinor: 1_000, reason: '' };
    expect(lineOf(priced({ priceOverrides: [typed] }, [glue]), 'supply:wood-glue')?.listMinor).toBe(300);
    expect(lineOf(priced({}, [{ ...glue, partId: BOARD }]), 'supply:wood-glue')?.listMinor).toBe(2_430);
  });

  it('takes a typed price of nothing as a price', () => {
    const result = priced({ priceOverrides: [{ lineKey: 'hand:x', unitPriceMinor: 0, reason: 'gift' }] }, [
      partsLine({ key: 'hand:x', partId: null, quantity: 1 }),
    ]);
    expect(result.notes).toEqual([]);
  });

  it('does not tax a kind that this job says is not taxed', () => {
    expect(priced({ taxCodeByKind: { labour: null } }).quote.totals.taxMinor).toBe(60); // supplies 3.00 alone
  });

  it('says that the scope is still to be written', () => {
    expect(priced({ scope: '' }).notes).toEqual([{ code: 'no-scope' }]);
  });

  it('refuses a discount that no line can have, as the engine does', () => {
    const result = priced({ discount: { by: 'amount', amountMinor: 100_000, on: ['labour'] } });
    expect(result.quote.warnings).toContainEqual({
      code: 'discount-cut-back',
      askedMinor: 100_000,
      givenMinor: 7_500,
    });
  });
});

describe('what others get of it', () => {
  it('holds no money at all', () => {
    const result = priced({}, [partsLine({})]);
    const text = JSON.stringify([priceSheet.shared?.result(result), priceSheet.shared?.keyFigures(result)]);
    expect(text).toContain('Task cut');
    expect(text).not.toMatch(/Minor|EUR/);
  });
});

describe('the list of tasks', () => {
  it.each(['carpet', 'coating'] as const)(
    'with %s is one that prices and waits for nothing unknown',
    (finish) => {
      const result = priced({ tasks: standardJobTasks(finish) });
      expect(result.notes).toEqual([]);
      expect(result.tasks.length).toBeGreaterThan(20);
      expect(priceInputSchema.safeParse({ ...priceSheet.emptyInput(), tasks: result.tasks }).success).toBe(
        true,
      );
    },
  );

  it('closes up where a task is taken off', () => {
    const tasks = withoutTask(standardJobTasks('carpet'), 'dry-assemble');
    const glueUp = tasks.find(({ key }) => key === 'glue-up');
    expect(glueUp?.prerequisites.map(({ taskKey }) => taskKey)).toEqual(['rout']);
    expect(priced({ tasks }).notes).toEqual([]);
  });

  it('can lose any task and still hang together', () => {
    for (const { key } of standardJobTasks('coating')) {
      expect(priced({ tasks: withoutTask(standardJobTasks('coating'), key) }).notes).toEqual([]);
    }
  });

  it('puts a task of one’s own at the end of its phase, after the one before it', () => {
    const tasks = withTask(standardJobTasks('carpet'), {
      key: 'own-1',
      title: 'Badge',
      skill: 'fab',
      minutes: 20,
      phase: 'wood',
    });
    const at = tasks.findIndex(({ key }) => key === 'own-1');
    expect(tasks[at - 1]?.key).toBe('test-fit');
    expect(tasks[at]?.prerequisites[0]?.taskKey).toBe('test-fit');
  });

  it('leaves out a wait for a task that is not there, and says so', () => {
    const [first] = standardJobTasks('carpet').filter(({ key }) => key === 'measure');
    const result = priced({ tasks: first === undefined ? [] : [first] });
    expect(result.notes).toEqual([{ code: 'wait-left-out', taskKey: 'measure', missingKey: 'intake' }]);
    expect(result.tasks[0]?.prerequisites).toEqual([]);
  });

  it('refuses two tasks with one key', () => {
    const input = { ...priceSheet.emptyInput(), tasks: [task('a', 1), task('a', 2)] };
    expect(priceSheet.compute(input, FACTS, {})).toMatchObject({ state: 'refused' });
  });
});
