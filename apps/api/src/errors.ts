// The error a service throws when a person can do something about it; everything else is a fault and stays inside.
import {
  type Conflict,
  type FieldProblem,
  SHOP_ERRORS,
  type ShopErrorCode,
  type ShopErrorData,
} from '@gusset/contracts/errors';
import type { RefusalDetail } from '@gusset/units';
import { TRPCError } from '@trpc/server';
import { ZodError } from 'zod';

export class ShopError extends Error {
  readonly code: ShopErrorCode;
  readonly fields: readonly FieldProblem[];
  readonly conflict: Conflict | null;

  constructor(
    code: ShopErrorCode,
    message: string,
    detail: { readonly fields?: readonly FieldProblem[]; readonly conflict?: Conflict } = {},
  ) {
    super(message);
    this.name = 'ShopError';
    this.code = code;
    this.fields = detail.fields ?? [];
    this.conflict = detail.conflict ?? null;
  }
}

/** Somebody else's row and a missing row look the same. */
export function notFound(what: string): ShopError {
  return new ShopError('NOT_FOUND', `There is no such ${what}.`);
}

export function notAccepted(path: string, message: string): ShopError {
  return new ShopError('NOT_ACCEPTED', message, { fields: [{ path, message }] });
}

/** An engine's refusals, each at its field. */
export function refusedByEngine(refusals: readonly RefusalDetail[]): ShopError {
  const fields = refusals.map((refusal) => ({
    path: refusal.field,
    message: `${refusal.why} (accepted: ${refusal.allowed})`,
  }));
  return new ShopError('REFUSED_BY_ENGINE', fields[0]?.message ?? 'The figures do not fit together.', {
    fields,
  });
}

/** Wraps a ShopError for tRPC; other errors pass through and become "unexpected". */
export function toTrpcError(error: unknown): TRPCError | null {
  if (!(error instanceof ShopError)) return null;
  return new TRPCError({ code: SHOP_ERRORS[error.code], message: error.message, cause: error });
}

/** What the caller is told. Nothing of an unexpected error leaves the house but its reference. */
export function errorData(error: TRPCError, requestId: string): ShopErrorData {
  const { cause } = error;
  if (cause instanceof ShopError) {
    return {
      code: cause.code,
      message: cause.message,
      fields: cause.fields,
      conflict: cause.conflict,
      requestId,
    };
  }
  if (cause instanceof ZodError) {
    const fields = cause.issues.map((issue) => ({ path: issue.path.join('.'), message: issue.message }));
    return {
      code: 'NOT_ACCEPTED',
      message: fields[0]?.message ?? 'Something was not accepted.',
      fields,
      conflict: null,
      requestId,
    };
  }
  if (error.code === 'UNAUTHORIZED') return plain('SIGN_IN_FIRST', 'Sign in first.', requestId);
  if (error.code === 'FORBIDDEN')
    return plain('NOT_ALLOWED', 'Your role in this shop does not allow that.', requestId);
  if (error.code === 'NOT_FOUND') return plain('NOT_FOUND', 'There is no such thing here.', requestId);
  if (error.code === 'TOO_MANY_REQUESTS')
    return plain('TOO_MANY', 'Too many tries; wait a minute.', requestId);
  if (error.code === 'BAD_REQUEST' || error.code === 'PARSE_ERROR') {
    return plain('NOT_ACCEPTED', 'The request could not be read.', requestId);
  }
  return plain('UNEXPECTED', 'Something went wrong on our side. Nothing was changed; try again.', requestId);
}

function plain(code: ShopErrorData['code'], message: string, requestId: string): ShopErrorData {
  return { code, message, fields: [], conflict: null, requestId };
}
