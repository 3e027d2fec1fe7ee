/**
 * The value as a JSON column gives it back: -0, which geometry is full of, comes back as 0. Everything else of a result
 * is plain already, so the shape stays and the cast is sound.
 */
export function storable<T>(value: T): T {
  return withoutMinusZero(value) as T;
}

function withoutMinusZero(value: unknown): unknown {
  if (typeof value === 'number') return value === 0 ? 0 : value;
  if (Array.isArray(value)) return value.map(withoutMinusZero);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, withoutMinusZero(entry)]));
}
