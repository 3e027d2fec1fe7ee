import type { ShopErrorData } from '@gusset/contracts/errors';
import { TRPCClientError } from '@trpc/client';
import { describe, expect, it } from 'vitest';
import { fieldError, isPassing, shownError } from './shop-error.ts';

const fromApi = (shop: ShopErrorData): TRPCClientError<never> =>
  TRPCClientError.from({ error: { message: shop.message, code: -32000, data: { shop } } });

const REFUSED: ShopErrorData = {
  code: 'NOT_ACCEPTED',
  message: 'A box needs a width.',
  fields: [{ path: 'box.widthMm', message: 'Type a width between 100 and 2000 mm.' }],
  conflict: null,
  requestId: '7f3a',
};

describe('shownError', () => {
  it('keeps what the API said, with its reference', () => {
    expect(shownError(fromApi(REFUSED))).toMatchObject({
      code: 'NOT_ACCEPTED',
      message: 'A box needs a width.',
      referenceId: '7f3a',
    });
  });

  it('says that nobody answered when the call never arrived', () => {
    expect(shownError(new TypeError('Failed to fetch')).code).toBe('NO_ANSWER');
    expect(shownError(TRPCClientError.from(new Error('Unable to transform response'))).code).toBe(
      'NO_ANSWER',
    );
  });
});

describe('fieldError', () => {
  it('finds the message of a field by its path', () => {
    const error = shownError(fromApi(REFUSED));
    expect(fieldError(error, 'box.widthMm')).toContain('100 and 2000');
    expect(fieldError(error, 'box.depthMm')).toBeNull();
    expect(fieldError(null, 'box.widthMm')).toBeNull();
  });
});

describe('isPassing', () => {
  it('holds for what may be better in a moment, not for a refusal', () => {
    expect(isPassing(shownError(new TypeError('Failed to fetch')))).toBe(true);
    expect(isPassing(shownError(fromApi({ ...REFUSED, code: 'BUSY' })))).toBe(true);
    expect(isPassing(shownError(fromApi(REFUSED)))).toBe(false);
  });
});
