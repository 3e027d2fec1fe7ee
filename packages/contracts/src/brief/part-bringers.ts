// No schema here: the screen that lists them need not send the validator.

/** Who brings a part into the job. */
export const PART_BRINGERS = ['shop', 'customer', 'sponsor'] as const;
