// Orders that don't depend on who listed what first: amounts are split in these, so that totals don't either.

/** By code units, the same on every machine. */
export function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

export function byKey(a: { readonly key: string }, b: { readonly key: string }): number {
  return compareText(a.key, b.key);
}

export function sumOf<T>(items: readonly T[], minorOf: (item: T) => number): number {
  return items.reduce((sum, item) => sum + minorOf(item), 0);
}
