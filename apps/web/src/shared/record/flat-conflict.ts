// A conflict as the person sees it: one line for each value that differs, also inside figures. Pure.
import type { Conflict } from '@gusset/contracts/errors';

export type FlatDifference = {
  /** Path in the form: `figures.cutoutDiaMm`. */
  readonly path: string;
  readonly yours: unknown;
  readonly theirs: unknown;
};

type Tree = Readonly<Record<string, unknown>>;

const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a ?? null) === JSON.stringify(b ?? null);

export function flatDifferences(conflict: Conflict): readonly FlatDifference[] {
  return conflict.differences.flatMap(({ field, yours, theirs }) => difference(field, yours, theirs));
}

function difference(path: string, yours: unknown, theirs: unknown): readonly FlatDifference[] {
  if (same(yours, theirs)) return [];
  if (!isTree(yours) || !isTree(theirs)) return [{ path, yours, theirs }];
  const keys = [...new Set([...Object.keys(yours), ...Object.keys(theirs)])].toSorted();
  return keys.flatMap((key) => difference(`${path}.${key}`, yours[key] ?? null, theirs[key] ?? null));
}

/** A stored value in plain words, where no better form is known. */
export function plainWords(value: unknown): string {
  if (value === null || value === undefined || value === '') return 'nothing';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return String(Number(value.toPrecision(9)));
  if (Array.isArray(value)) return value.length === 0 ? 'nothing' : value.map(plainWords).join(', ');
  if (!isTree(value)) return '';
  return Object.entries(value)
    .map(([key, inside]) => `${key} ${plainWords(inside)}`)
    .join(', ');
}

/** `figures.cutoutDiaMm` → `Cutout dia mm`, for fields without a label of their own. */
export function pathWords(path: string): string {
  const last = path.split('.').at(-1) ?? path;
  const words = last.replace(/([a-z0-9])([A-Z])/gu, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}
