// The air of a chamber as a shop says it: how it is filled and how tight it is.
import { z } from 'zod';

export const FILLS = ['none', 'lined', 'half', 'full'] as const;
export const fillSchema = z.enum(FILLS);
export type Fill = z.infer<typeof fillSchema>;
/** Apparent growth of the air and absorption Q, by how the box is filled (guidance after Small). */
export const FILL_EFFECT: Record<Fill, { readonly fillFactor: number; readonly qa: number | null }> = {
  none: { fillFactor: 1, qa: null },
  lined: { fillFactor: 1.04, qa: 50 },
  half: { fillFactor: 1.12, qa: 20 },
  full: { fillFactor: 1.2, qa: 7 },
};
export const FILL_WORDS: Record<Fill, string> = {
  none: 'No lining',
  lined: 'Walls lined',
  half: 'Half filled',
  full: 'Well filled',
};

export const LEAKS = ['tight', 'usual', 'leaky'] as const;
export const leakSchema = z.enum(LEAKS);
export type Leak = z.infer<typeof leakSchema>;
/** Leak Q (Small, "Vented-Box Loudspeaker Systems": 5 to 20, most often near 7; small tight boxes more). */
export const LEAK_Q: Record<Leak, number> = { tight: 15, usual: 7, leaky: 5 };
export const LEAK_WORDS: Record<Leak, string> = {
  tight: 'Glued and sealed',
  usual: 'As most boxes',
  leaky: 'Seams not sealed',
};
