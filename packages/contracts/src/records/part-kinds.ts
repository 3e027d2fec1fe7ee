// The kinds of part. No schema here: the search of every page lists them, and need not send the validator for that.
export const PART_KINDS = [
  'driver',
  'amplifier',
  'processor',
  'source',
  'sheet',
  'finish',
  'hardware',
  'supply',
] as const;
export type PartKind = (typeof PART_KINDS)[number];
