/** A value and everything in it, for reading only: callers may hand over constants, engines change nothing. */
export type DeepReadonly<T> = T extends object ? { readonly [Key in keyof T]: DeepReadonly<T[Key]> } : T;
