// What an engine answers to input that cannot be: the field, what would be accepted, what came, and why.
// A refusal is data, never an exception: it crosses workers and the API, and lands at the field on the screen.

export type RefusalDetail = {
  /** Path of the field in the input, as the schema spells it: `driver.vasLitres`, `panels[3].widthMm`. */
  readonly field: string;
  /** What would be accepted, in words and units: `above 0 mm and at most 3000 mm`. */
  readonly allowed: string;
  /** What came, as a finite number or a short text; null where nothing came. */
  readonly got: number | string | null;
  /** The reason in the shop's words: `walls of 18 mm leave no air in a box 30 mm deep`. */
  readonly why: string;
};

export type Refusal = { readonly refusal: RefusalDetail };

/** Makes a refusal. Numbers that JSON cannot carry (NaN, infinities) are written as text. */
export function refuse(
  field: string,
  detail: { readonly allowed: string; readonly got: number | string | null; readonly why: string },
): Refusal {
  const got =
    typeof detail.got === 'number' && !Number.isFinite(detail.got) ? String(detail.got) : detail.got;
  return { refusal: { field, allowed: detail.allowed, got, why: detail.why } };
}

/** Tells a refusal from an answer. */
export function isRefusal(value: unknown): value is Refusal {
  return typeof value === 'object' && value !== null && 'refusal' in value;
}
