// What went wrong, as a screen shows it: a sentence, the fields it belongs to, a reference in grey.

import type { Conflict, FieldProblem, ShopErrorCode, ShopErrorData } from '@gusset/contracts/errors';
import { isTRPCClientError } from '@trpc/client';

export type ShownError = {
  /** `NO_ANSWER`: the server wasn't reached, so nothing is known about it. */
  readonly code: ShopErrorCode | 'UNEXPECTED' | 'NO_ANSWER';
  readonly message: string;
  readonly fields: readonly FieldProblem[];
  readonly conflict: Conflict | null;
  /** For support; null where the server wasn't reached. */
  readonly referenceId: string | null;
};

const NO_ANSWER: ShownError = {
  code: 'NO_ANSWER',
  message: 'The server gave no answer. What you typed is kept; try again in a moment.',
  fields: [],
  conflict: null,
  referenceId: null,
};

const isShopErrorData = (data: unknown): data is ShopErrorData =>
  typeof data === 'object' && data !== null && 'code' in data && 'message' in data && 'fields' in data;

const shopDataOf = (error: unknown): ShopErrorData | null => {
  if (!isTRPCClientError(error)) return null;
  const data: unknown = error.data;
  if (typeof data !== 'object' || data === null || !('shop' in data)) return null;
  return isShopErrorData(data.shop) ? data.shop : null;
};

/** Any failure of a call as something to show; what isn't from the API counts as "no answer". */
export function shownError(error: unknown): ShownError {
  const data = shopDataOf(error);
  if (data === null) return NO_ANSWER;
  const { requestId, ...rest } = data;
  return { ...rest, referenceId: requestId === '' ? null : requestId };
}

/** The message for one field, by its path in the schema; null when it has none. */
export function fieldError(error: ShownError | null, path: string): string | null {
  return error?.fields.find((problem) => problem.path === path)?.message ?? null;
}

/** Worth asking again by itself: the server was not reached or had no room. */
export function isPassing(error: ShownError): boolean {
  return error.code === 'NO_ANSWER' || error.code === 'BUSY' || error.code === 'UNEXPECTED';
}
