import { describe, expect, it } from 'vitest';
import { noteWords, warningWords } from './price-words.ts';

const money = (minor: number) => `€${(minor / 100).toFixed(2)}`;
const nameOf = (key: string) => `<${key}>`;

describe('the price sheet in words', () => {
  it('names the line that sells below cost, with both figures', () => {
    expect(
      warningWords({ code: 'price-below-cost', lineKey: 'a', netMinor: 100, costMinor: 200 }, nameOf, money),
    ).toBe('<a> sells for €1.00 and costs €2.00');
  });

  it('says where a missing price is typed', () => {
    expect(noteWords({ code: 'no-price', lineKey: 'x', description: 'Grille cloth' }, nameOf)).toContain(
      'Grille cloth has no price',
    );
  });
});
