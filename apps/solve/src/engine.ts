// What stands behind the door: one engine by its name, its two schemas and its one function.
import type { Refusal } from '@gusset/units';
import type { z } from 'zod';

export type SolveOptions = {
  /** Budget for one document. An engine that searches stops by then; one that computes takes what it needs. */
  readonly seconds: number;
  /** Same document, same seed, same answer. */
  readonly seed: number;
};

/**
 * `solve` gets what `inputSchema` made of a document. It is written as a method, whose parameters TypeScript compares
 * both ways: a registry of engines of different inputs is a list of `SolveEngine`, and the door parses with an
 * engine's own schema before it calls it.
 */
export type SolveEngine<Input = unknown, Answer = unknown> = {
  readonly name: string;
  readonly inputSchema: z.ZodType<Input>;
  readonly outputSchema: z.ZodType<Answer>;
  solve(input: Input, options: SolveOptions): Answer | Refusal | Promise<Answer | Refusal>;
};
