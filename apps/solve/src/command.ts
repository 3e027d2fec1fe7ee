// The command line: which engine, what to do with it, on what budget.
import { parseArgs } from 'node:util';
import type { SolveOptions } from './engine.ts';

export type Command =
  | { readonly kind: 'solve'; readonly engine: string; readonly options: SolveOptions }
  | { readonly kind: 'schema'; readonly engine: string }
  | { readonly kind: 'misuse'; readonly message: string };

const DEFAULT_SECONDS = '2';
const DEFAULT_SEED = '1';
const LONGEST_SECONDS = 3_600;

export function readCommand(args: readonly string[]): Command {
  try {
    return commandOf(args);
  } catch (error) {
    // parseArgs throws a TypeError with a code for an option it doesn't know; anything else is a bug of ours.
    if (error instanceof TypeError && 'code' in error) return misuse(error.message);
    throw error;
  }
}

function commandOf(args: readonly string[]): Command {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      seconds: { type: 'string', default: DEFAULT_SECONDS },
      seed: { type: 'string', default: DEFAULT_SEED },
      schema: { type: 'boolean', default: false },
    },
  });
  const [engine, ...rest] = positionals;
  if (engine === undefined || rest.length > 0) return misuse('name one engine');
  if (values.schema) return { kind: 'schema', engine };
  const seconds = Number(values.seconds);
  if (!(seconds > 0 && seconds <= LONGEST_SECONDS)) {
    return misuse(`--seconds takes a number above 0 and at most ${LONGEST_SECONDS}, not ${values.seconds}`);
  }
  const seed = Number(values.seed);
  if (values.seed.trim() === '' || !Number.isSafeInteger(seed) || seed < 0) {
    return misuse(`--seed takes a whole number from 0, not ${values.seed}`);
  }
  return { kind: 'solve', engine, options: { seconds, seed } };
}

function misuse(message: string): Command {
  return { kind: 'misuse', message };
}
