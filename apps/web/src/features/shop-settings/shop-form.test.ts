import { describe, expect, it } from 'vitest';
import { shopFormPath } from './shop-form.ts';

describe('shopFormPath', () => {
  it('finds a setting where the form keeps it, and leaves the shop’s own fields', () => {
    expect(shopFormPath('labourRateMinor')).toBe('settings.labourRateMinor');
    expect(shopFormPath('clearances.sideMm')).toBe('settings.clearances.sideMm');
    expect(shopFormPath('name')).toBe('name');
    expect(shopFormPath('settings.paper')).toBe('settings.paper');
  });
});
