// What stands in the router. No schema here: screens read the usual figures without loading any.

export type RouterTools = {
  readonly bitDiaMm: number;
  /** Outside of the guide bush; null = without one. */
  readonly bushDiaMm: number | null;
  /** Deepest pass. */
  readonly passMm: number;
};

/** A half-inch bit in passes of a few millimetres, a common bush; every figure is the shop's to change. */
export const DEFAULT_ROUTER_TOOLS: RouterTools = { bitDiaMm: 12.7, bushDiaMm: 30, passMm: 6 };
