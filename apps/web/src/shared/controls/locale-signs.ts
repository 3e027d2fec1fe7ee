/** True where the locale writes 17,25. */
export function usesDecimalComma(locale: string): boolean {
  const parts = new Intl.NumberFormat(locale).formatToParts(1.5);
  return parts.some(({ type, value }) => type === 'decimal' && value === ',');
}
