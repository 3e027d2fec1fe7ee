// No schema here: the screen that lists them need not send the validator.

/** What a line of a quote stands for. */
export const LINE_KINDS = ['material', 'part', 'labour', 'supplies', 'subcontract', 'other'] as const;
export type LineKind = (typeof LINE_KINDS)[number];
