import { describe, expect, it } from 'vitest';
import { quantityWords } from './quantity-words.ts';

describe('a quantity', () => {
  it('is counted in its unit, one or many', () => {
    const words = (quantity: number, unit: string) => quantityWords({ quantity, unit });
    expect([words(1, 'sheet'), words(2, 'sheet'), words(0, 'pack')]).toEqual([
      '1 sheet',
      '2 sheets',
      '0 packs',
    ]);
    expect([words(1.5, 'm2'), words(0.4, 'litre'), words(40, 'each')]).toEqual(['1.5 m²', '0.4 L', '40']);
  });

  it('drops what floating point left over', () => {
    expect(quantityWords({ quantity: 0.1 + 0.2, unit: 'kg' })).toBe('0.3 kg');
  });

  it('says nothing of one lump sum', () => {
    expect(quantityWords({ quantity: 1, unit: 'lot' })).toBe('');
  });
});
