// A zod error as the refusal that a person sees: the first field that is wrong, what it may be, what came.
import { type Refusal, refuse } from '@gusset/units';
import type { z } from 'zod';

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** `['panels', 3, 'widthMm']` as `panels[3].widthMm`. */
function spellPath(path: Path): string {
  return path.reduce<string>((spelt, key) => {
    if (typeof key === 'number') return `${spelt}[${key}]`;
    return spelt === '' ? String(key) : `${spelt}.${String(key)}`;
  }, '');
}

function valueAt(input: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? Reflect.get(value, key)
        : undefined,
    input,
  );
}

const TEXT_LIMIT = 80; // characters of a wrong value that a refusal repeats

function shown(value: unknown): number | string | null {
  if (value === undefined || value === null) return null;
  if (typeof value === 'number') return value;
  if (typeof value === 'string') return value.slice(0, TEXT_LIMIT);
  if (typeof value === 'boolean') return String(value);
  return Array.isArray(value) ? `a list of ${value.length}` : 'an object';
}

/** In a union, the branch that got furthest is the one that was meant. */
function deepest(issue: Issue): { readonly issue: Issue; readonly path: Path } {
  const unknownKey = issue.code === 'unrecognized_keys' ? issue.keys.slice(0, 1) : [];
  if (issue.code !== 'invalid_union') return { issue, path: [...issue.path, ...unknownKey] };
  const found = issue.errors
    .flatMap((branch) => branch.slice(0, 1))
    .map((branchIssue) => deepest(branchIssue))
    .sort((a, b) => rank(a.issue) - rank(b.issue) || b.path.length - a.path.length)[0];
  return found === undefined
    ? { issue, path: issue.path }
    : { ...found, path: [...issue.path, ...found.path] };
}

/** A branch that only misses a field was hardly meant: its complaint comes last. */
function rank(issue: Issue): number {
  if (issue.code === 'unrecognized_keys') return 1;
  return issue.code === 'invalid_type' && issue.path.length === 1 ? 2 : 0;
}

const KINDS: Readonly<Record<string, string>> = {
  array: 'a list',
  boolean: 'true or false',
  int: 'a whole number',
  number: 'a number',
  object: 'an object',
  string: 'a text',
};

const COUNTED: Readonly<Record<string, string>> = { array: ' entries', string: ' characters' };

/** A schema that words its own error is quoted; zod's stock messages are put in our words. */
function allowed(issue: Issue): string {
  if (issue.code === 'unrecognized_keys') return 'only the fields of the schema';
  if (issue.code === 'invalid_union' && 'options' in issue && issue.options !== undefined) {
    return issue.options.map(String).join(', ');
  }
  if (!/^(Invalid|Too (small|big):)/.test(issue.message)) return issue.message;
  switch (issue.code) {
    case 'invalid_value':
      return issue.values.map(String).join(', ');
    case 'invalid_type':
      return KINDS[issue.expected] ?? issue.expected;
    case 'too_small':
      return `${issue.inclusive === false ? 'above' : 'at least'} ${issue.minimum}${COUNTED[issue.origin] ?? ''}`;
    case 'too_big':
      return `${issue.inclusive === false ? 'below' : 'at most'} ${issue.maximum}${COUNTED[issue.origin] ?? ''}`;
    default:
      return issue.message;
  }
}

function reason(issue: Issue, got: unknown): string {
  if (issue.code === 'unrecognized_keys') return 'there is no such field here';
  if (issue.code === 'custom') {
    const why: unknown = issue.params?.why; // given where a schema has more to say
    return typeof why === 'string' ? why : 'it does not agree with the fields beside it';
  }
  if (got === undefined) return 'nothing came for a field that is needed';
  if (issue.code === 'too_small') return issue.origin === 'array' ? 'there are too few' : 'it is too small';
  if (issue.code === 'too_big') return issue.origin === 'array' ? 'there are too many' : 'it is too large';
  return issue.code === 'invalid_type' ? 'it is not that kind of value' : 'it is none of the known values';
}

/** The first thing wrong with `input`, as a refusal that names the field. */
export function firstRefusal(error: z.ZodError, input: unknown): Refusal {
  const first = error.issues[0];
  if (first === undefined) {
    return refuse('', { allowed: 'a document of the schema', got: null, why: 'it was not accepted' });
  }
  const { issue, path } = deepest(first);
  const got = valueAt(input, path);
  return refuse(spellPath(path), { allowed: allowed(issue), got: shown(got), why: reason(issue, got) });
}
