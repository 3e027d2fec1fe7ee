import { idempotencyKeySchema } from '@gusset/contracts/common';
import { describe, expect, it } from 'vitest';
import { stepKeyOf } from './step-key.ts';

describe('stepKeyOf', () => {
  it('is the same for the same step of the same form, and a key that the API takes', async () => {
    const key = await stepKeyOf('form', 'customer A');
    expect(await stepKeyOf('form', 'customer A')).toBe(key);
    expect(idempotencyKeySchema.safeParse(key).success).toBe(true);
  });
  it('differs between steps, contents and forms', async () => {
    const keys = await Promise.all([
      stepKeyOf('form', 'customer A'),
      stepKeyOf('form', 'customer B'),
      stepKeyOf('other', 'customer A'),
    ]);
    expect(new Set(keys).size).toBe(3);
  });
});
