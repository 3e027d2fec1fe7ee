import { PART_KINDS } from '@gusset/contracts/records';
import { describe, expect, it } from 'vitest';
import { capital, kindSlug, partKindOf } from './catalogue-kinds.ts';

describe('kinds in addresses', () => {
  it('lead back to the kind, in both spellings', () => {
    for (const kind of PART_KINDS) {
      expect(partKindOf(kindSlug(kind))).toBe(kind);
      expect(partKindOf(kind)).toBe(kind);
    }
    expect(partKindOf('boats')).toBeNull();
    expect(capital('drivers')).toBe('Drivers');
  });
});
