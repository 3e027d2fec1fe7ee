// Every error that a person can meet, and how it travels. The screens turn codes into sentences.

export const SHOP_ERRORS = {
  /** Also: exists, but not yours. */
  NOT_FOUND: 'NOT_FOUND',
  NOT_ALLOWED: 'FORBIDDEN',
  SIGN_IN_FIRST: 'UNAUTHORIZED',
  /** Someone else saved in between; `conflict` holds both values. */
  CHANGED_MEANWHILE: 'CONFLICT',
  /** A field that the server cannot accept; `fields` says which and why. */
  NOT_ACCEPTED: 'BAD_REQUEST',
  /** An engine refused; `fields` carries its refusal. */
  REFUSED_BY_ENGINE: 'BAD_REQUEST',
  /** The sheet lacks something; `fields` names it. */
  SHEET_INCOMPLETE: 'PRECONDITION_FAILED',
  /** A sheet that this one reads is not issued yet. */
  UPSTREAM_NOT_ISSUED: 'PRECONDITION_FAILED',
  NAME_TAKEN: 'CONFLICT',
  IN_USE: 'CONFLICT',
  QUOTE_CLOSED: 'CONFLICT',
  QUOTE_EXPIRED: 'PRECONDITION_FAILED',
  LINK_ENDED: 'NOT_FOUND',
  TASK_NOT_READY: 'PRECONDITION_FAILED',
  SAME_KEY_OTHER_REQUEST: 'UNPROCESSABLE_CONTENT',
  STILL_RUNNING: 'CONFLICT',
  TOO_MANY: 'TOO_MANY_REQUESTS',
  FILE_REFUSED: 'BAD_REQUEST',
  LAST_OWNER: 'CONFLICT',
  BUSY: 'SERVICE_UNAVAILABLE',
} as const;
export type ShopErrorCode = keyof typeof SHOP_ERRORS;

/** One field that was not accepted. `path` as the schema spells it. */
export type FieldProblem = { readonly path: string; readonly message: string };

/** Two people changed the same thing: what you sent, what stands now, who saved it and when. */
export type Conflict = {
  readonly currentVersion: number;
  readonly savedBy: string | null;
  readonly savedAt: string | null;
  readonly differences: readonly {
    readonly field: string;
    readonly yours: unknown;
    readonly theirs: unknown;
  }[];
};

/** What an error answer carries beside its code. */
export type ShopErrorData = {
  readonly code: ShopErrorCode | 'UNEXPECTED';
  readonly message: string;
  readonly fields: readonly FieldProblem[];
  readonly conflict: Conflict | null;
  /** Reference for support, shown in grey. */
  readonly requestId: string;
};
