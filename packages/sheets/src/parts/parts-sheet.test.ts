import type { BriefResult } from '@gusset/contracts/brief';
import type { PartFact, PartsFacts } from '@gusset/contracts/parts';
import { describe, expect, it } from 'vitest';
import { boxResult, soundResult } from '../box/box-fixture.ts';
import { briefSheet } from '../brief/brief-sheet.ts';
import type { EnclosureUpstream } from '../sheet-definition.ts';
import { partsSheet } from './parts-sheet.ts';

const board: PartFact = {
  id: '00000000-0000-7000-8000-0000000000b1',
  kind: 'sheet',
  name: 'MDF 18',
  unit: 'sheet',
  stockQuantity: 2,
  supplierId: null,
  supplierName: null,
  use: null,
  finish: null,
};
const facts: PartsFacts = { parts: [board], usual: [] };
const cutting = { sheetsUsed: [{ partId: board.id, name: 'MDF 18', count: 3 }] };
const brief: BriefResult = {
  ...briefSheet.emptyInput(),
  wish: 'Deep',
  aim: 'deep',
  broughtParts: [
    { key: 'amp', description: 'Amplifier from the old car', bringer: 'customer', note: 'test it first' },
    { key: 'wire', description: 'Cable', bringer: 'shop', note: '' },
  ],
};

function linesOf(
  changes: Partial<ReturnType<typeof partsSheet.emptyInput>> = {},
  upstream = { cutting, brief },
) {
  const outcome = partsSheet.compute({ ...partsSheet.emptyInput(), ...changes }, facts, upstream);
  if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
  return outcome.result.lines;
}

const unchanged = {
  quantity: null,
  reason: '',
  partId: null,
  source: null,
  supplierId: null,
  returnDueOn: null,
  leftOut: false,
};

describe('the parts sheet', () => {
  it('buys what the shelf does not hold', () => {
    expect(linesOf()[0]).toMatchObject({
      key: `sheet:${board.id}`,
      quantity: 3,
      unit: 'sheet',
      source: 'buy',
    });
    const two = { sheetsUsed: [{ partId: board.id, name: 'MDF 18', count: 2 }] };
    expect(linesOf({}, { cutting: two, brief })[0]?.source).toBe('stock');
  });
  it('takes up what the customer brings, and leaves out what the shop gets anyway', () => {
    const brought = linesOf().filter((line) => line.key.startsWith('brief:'));
    expect(brought).toMatchObject([{ key: 'brief:amp', source: 'customer', note: 'test it first' }]);
    expect(linesOf({ settledBriefKeys: ['amp'] }).some((line) => line.key === 'brief:amp')).toBe(false);
  });
  it('keeps the worked-out quantity and the reason beside a changed one', () => {
    const lines = linesOf({
      overrides: [{ ...unchanged, key: `sheet:${board.id}`, quantity: 4, reason: 'one spare' }],
    });
    expect(lines[0]).toMatchObject({ quantity: 4, workedOutQuantity: 3, because: 'one spare' });
  });
  it('leaves a line out when told so', () => {
    const lines = linesOf({ overrides: [{ ...unchanged, key: `sheet:${board.id}`, leftOut: true }] });
    expect(lines.some((line) => line.key.startsWith('sheet:'))).toBe(false);
  });
  it('stands without a line: a job can be labour only', () => {
    expect(partsSheet.compute(partsSheet.emptyInput(), facts, {})).toEqual({
      state: 'ready',
      result: { lines: [] },
    });
  });
});

describe('several enclosures', () => {
  const one = { id: 'a', number: 1, name: 'Bass box', copies: 1, sound: soundResult(), box: boxResult() };
  const partsOf = (enclosures: readonly EnclosureUpstream[] | undefined) => {
    const outcome = partsSheet.compute(partsSheet.emptyInput(), facts, {
      sound: one.sound,
      box: one.box,
      ...(enclosures === undefined ? {} : { enclosures }),
    });
    if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
    return new Map(outcome.result.lines.map((line) => [line.key, line]));
  };
  const single = partsOf(undefined);

  it('asks for one box alike as for the job’s only one, and for three boxes three times that', () => {
    const pair = partsOf([one, { ...one, id: 'b', number: 2, name: 'Rear box', copies: 2 }]);
    expect([...partsOf([one]).keys()]).toEqual([...single.keys()]);
    expect([...pair.keys()]).toEqual([...single.keys()]);
    const driver = [...single.keys()].find((key) => key.startsWith('driver:')) ?? '';
    expect(pair.get(driver)?.quantity).toBe(3 * (single.get(driver)?.quantity ?? Number.NaN));
    expect(pair.get(driver)?.because).toBe('for Bass box, 2 × Rear box');
    const screws = single.get('supply:joint-screws')?.quantity ?? Number.NaN;
    expect(pair.get('supply:joint-screws')?.quantity).toBe(3 * screws);
  });

  it('leaves out a box that says nothing yet', () => {
    const empty = { id: 'b', number: 2, name: 'Rear box', copies: 4, sound: null, box: null };
    const lines = partsOf([one, empty]);
    for (const [key, line] of single) expect(lines.get(key)?.quantity).toBe(line.quantity);
  });
});
