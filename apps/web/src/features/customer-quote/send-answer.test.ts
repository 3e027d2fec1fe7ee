import { describe, expect, it } from 'vitest';
import { refusalOf } from './send-answer.ts';

describe('an answer that was refused', () => {
  it('is told in the shop’s sentence, at its field', () => {
    const body = {
      error: {
        data: { shop: { message: 'Type a name.', fields: [{ path: 'name', message: 'Type a name.' }] } },
      },
    };
    expect(refusalOf(body)).toEqual({ isTaken: false, message: 'Type a name.', field: 'name' });
  });

  it('is told kindly where a proxy or nothing answered', () => {
    for (const body of [null, 'busy', {}, { error: { data: {} } }]) {
      const refusal = refusalOf(body);
      expect(refusal.isTaken).toBe(false);
      expect(refusal).toMatchObject({ field: null });
      expect(JSON.stringify(refusal)).toContain('not reached');
    }
  });
});
