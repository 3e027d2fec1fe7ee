// One text for one value: keys sorted, no spaces, so that equal inputs give equal fingerprints on every machine.

export function canonicalJson(value: unknown): string {
  return JSON.stringify(sorted(value));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map((entry) => (entry === undefined ? null : sorted(entry)));
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).filter(([, entry]) => entry !== undefined);
    entries.sort(([a], [b]) => (a < b ? -1 : 1));
    return Object.fromEntries(entries.map(([key, entry]) => [key, sorted(entry)]));
  }
  return value;
}
