// One entry of the record of what happened, as lines of what was and what is. Pure.

export type ChangeLine = { readonly path: string; readonly before: string; readonly after: string };

type Tree = Readonly<Record<string, unknown>>;

const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const TEXT_LIMIT = 160;

function words(value: unknown): string {
  if (value === null || value === undefined || value === '') return '–';
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > TEXT_LIMIT ? `${text.slice(0, TEXT_LIMIT)}…` : text;
}

/** Fields that differ, deepest first named; where only one side is there, all of it. */
export function changeLines(before: unknown, after: unknown): readonly ChangeLine[] {
  return compare('', before ?? null, after ?? null);
}

function compare(path: string, before: unknown, after: unknown): readonly ChangeLine[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  if (isTree(before) || isTree(after)) {
    const old = isTree(before) ? before : {};
    const now = isTree(after) ? after : {};
    const keys = [...new Set([...Object.keys(old), ...Object.keys(now)])].toSorted();
    return keys.flatMap((key) =>
      compare(path === '' ? key : `${path}.${key}`, old[key] ?? null, now[key] ?? null),
    );
  }
  return [{ path, before: words(before), after: words(after) }];
}

/** `customer.role-changed` → `Customer role changed` */
export function actWords(act: string): string {
  const plain = act.replaceAll(/[.-]/gu, ' ');
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}
