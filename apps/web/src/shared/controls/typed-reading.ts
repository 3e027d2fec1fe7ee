/** What a typed text came to: nothing, a value with what to know about it, or a sentence saying what to type. */
export type TypedReading<Value> =
  | { readonly kind: 'empty' }
  | { readonly kind: 'value'; readonly value: Value; readonly note: string | null }
  | { readonly kind: 'refused'; readonly why: string };
