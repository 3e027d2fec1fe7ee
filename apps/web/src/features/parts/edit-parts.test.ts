import type { PartsInput } from '@gusset/contracts/parts';
import { describe, expect, it } from 'vitest';
import { changeLine, removeLine, restoreLine } from './edit-parts.ts';

const hand: PartsInput['handLines'][number] = {
  key: 'hand:1',
  partId: null,
  description: 'Grommets',
  kind: 'part',
  group: 'hardware',
  quantity: 4,
  unit: 'each',
  source: 'buy',
  supplierId: null,
  returnDueOn: null,
  note: '',
};
const input: PartsInput = { handLines: [hand], overrides: [], settledBriefKeys: [] };

describe('changeLine', () => {
  it('changes a hand line itself', () => {
    expect(changeLine(input, 'hand:1', { quantity: 6 }).handLines[0]?.quantity).toBe(6);
  });
  it('keeps a worked-out line and notes what differs', () => {
    const once = { ...input, ...changeLine(input, 'sheet:a', { quantity: 4, reason: 'one spare' }) };
    const twice = changeLine(once, 'sheet:a', { source: 'stock' });
    expect(twice.overrides).toMatchObject([
      { key: 'sheet:a', quantity: 4, reason: 'one spare', source: 'stock' },
    ]);
  });
});

describe('removeLine', () => {
  it('drops a hand line, leaves out a worked-out one, turns down one of the brief', () => {
    expect(removeLine(input, 'hand:1').handLines).toEqual([]);
    expect(removeLine(input, 'sheet:a').overrides).toMatchObject([{ key: 'sheet:a', leftOut: true }]);
    expect(removeLine(input, 'brief:amp').settledBriefKeys).toEqual(['amp']);
  });
});

describe('restoreLine', () => {
  it('goes back to what the design says', () => {
    const left = removeLine(input, 'sheet:a');
    expect(restoreLine(left, 'sheet:a').overrides).toEqual([]);
  });
});
