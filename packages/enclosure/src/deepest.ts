// One row of drivers meets one wall many times over: a person needs the worst place only.

/** The worst of each group, in the order in which the groups came up. */
export function deepest<T extends { readonly byMm: number }>(
  findings: readonly T[],
  groupOf: (finding: T) => string,
): T[] {
  const worst = new Map<string, T>();
  for (const finding of findings) {
    const known = worst.get(groupOf(finding));
    if (known === undefined || finding.byMm > known.byMm) worst.set(groupOf(finding), finding);
  }
  return [...worst.values()];
}
