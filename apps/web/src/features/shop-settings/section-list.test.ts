import { describe, expect, it } from 'vitest';
import { maySeeSection, SHOP_SECTIONS, sectionOf } from './section-list.ts';

const seenBy = (role: 'owner' | 'estimator' | 'technician' | 'office') =>
  SHOP_SECTIONS.filter(({ id }) => maySeeSection(role, id)).map(({ id }) => id);

describe('pages of the shop', () => {
  it('show technicians no money and no record', () => {
    expect(seenBy('technician')).toEqual([
      'details',
      'units',
      'hours',
      'saw',
      'people',
      'bays',
      'leave',
      'account',
    ]);
  });

  it('show the record to owners only', () => {
    expect(seenBy('owner')).toHaveLength(SHOP_SECTIONS.length);
    expect(seenBy('office')).not.toContain('record');
  });

  it('are found by their address', () => {
    expect(sectionOf('rates')).toBe('rates');
    expect(sectionOf('nonsense')).toBeNull();
  });
});
