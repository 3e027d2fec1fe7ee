// How much of something, as it stands on lists, papers and the customer's page.

/** Singular and plural; units that are signs stay as they are. A unit that is not listed is written as it comes. */
const UNIT_WORDS: Readonly<Record<string, readonly [one: string, many: string]>> = {
  each: ['', ''],
  sheet: ['sheet', 'sheets'],
  m: ['m', 'm'],
  m2: ['m²', 'm²'],
  litre: ['L', 'L'],
  kg: ['kg', 'kg'],
  pack: ['pack', 'packs'],
};

/** `1 sheet`, `0.4 L`, `40`; a lump sum (`lot`) of one says nothing. */
export function quantityWords({
  quantity,
  unit,
}: {
  readonly quantity: number;
  readonly unit: string;
}): string {
  const figure = String(Number(quantity.toFixed(3)));
  if (unit === 'lot') return quantity === 1 ? '' : figure;
  const [one, many] = UNIT_WORDS[unit] ?? [unit, unit];
  return `${figure} ${quantity === 1 ? one : many}`.trim();
}
