// The columns of a kind, defined once: the same list writes an export and reads an import.
import type { z } from 'zod';
import type { CsvCell } from './csv-cell.ts';
import { type CsvLine, type CsvProblem, readCsv } from './csv-text.ts';

export type CsvColumn = {
  readonly name: string;
  /** Where the value stands in the input: `figures.cutoutDiaMm`. */
  readonly path: string;
  readonly cell: CsvCell;
  /** True where a row without it makes no sense. */
  readonly isNeeded: boolean;
};

export function column(name: string, path: string, cell: CsvCell, isNeeded = false): CsvColumn {
  return { name, path, cell, isNeeded };
}

/** `Cut-out diameter (mm)`: the unit stands in the header, so a figure alone in its cell is clear. */
export function headerOf({ name, cell }: CsvColumn): string {
  return cell.units[0] === undefined ? name : `${name} (${cell.units[0]})`;
}

export function toCells(columns: readonly CsvColumn[], input: object): string[] {
  return columns.map(({ path, cell }) => cell.write(valueAt(input, path.split('.'))));
}

export type ReadRow<Input> = { readonly row: number; readonly input: Input };
export type ReadList<Input> = {
  readonly rows: readonly ReadRow<Input>[];
  readonly problems: readonly CsvProblem[];
  /** Headers of the file that no column answers to; their cells are left out. */
  readonly ignoredColumns: readonly string[];
};

/** Every row as an input that the contract accepts, or what is wrong with it and where. */
export function readList<Input>(
  typed: string,
  columns: readonly CsvColumn[],
  schema: z.ZodType<Input>,
  fixed: Readonly<Record<string, unknown>> = {},
): ReadList<Input> {
  const { lines, problems } = readCsv(typed);
  const [header, ...body] = lines;
  if (header === undefined) {
    return {
      rows: [],
      problems: [{ row: 1, column: '', why: 'There is nothing in this file.' }],
      ignoredColumns: [],
    };
  }
  const places = header.cells.map((cell) => placeOf(cell, columns));
  const trouble = [...problems, ...headerProblems(header, places, columns)];
  if (trouble.length > 0) return { rows: [], problems: trouble, ignoredColumns: [] };
  const read = body.map((line) => readRow(line, places, columns, schema, fixed));
  const noRows = { row: header.row + 1, column: '', why: 'There are headers but no rows under them.' };
  return {
    rows: read.flatMap((row) => ('input' in row ? [row] : [])),
    problems: body.length === 0 ? [noRows] : read.flatMap((row) => ('problems' in row ? row.problems : [])),
    ignoredColumns: places.flatMap((place) =>
      place.column === null && place.header !== '' ? [place.header] : [],
    ),
  };
}

type Place = { readonly header: string; readonly column: CsvColumn | null; readonly unit: string };

function placeOf(header: string, columns: readonly CsvColumn[]): Place {
  const inBrackets = /^(.*?)\s*\(([^()]*)\)$/u.exec(header);
  const name = (inBrackets?.[1] ?? header).toLowerCase();
  const found = columns.find((candidate) => candidate.name.toLowerCase() === name) ?? null;
  return { header, column: found, unit: inBrackets?.[2] ?? found?.cell.units[0] ?? '' };
}

function headerProblems(
  header: CsvLine,
  places: readonly Place[],
  columns: readonly CsvColumn[],
): CsvProblem[] {
  const present = places.map((place) => place.column);
  const missing = columns
    .filter((candidate) => candidate.isNeeded && !present.includes(candidate))
    .map((candidate) => ({
      row: header.row,
      column: headerOf(candidate),
      why: 'This column is needed and not in the file.',
    }));
  const doubled = places
    .filter((place, index) => place.column !== null && present.indexOf(place.column) !== index)
    .map((place) => ({ row: header.row, column: place.header, why: 'This column is there twice.' }));
  const wrongUnits = places
    .filter(({ column: found, unit }) => found !== null && unit !== '' && !found.cell.units.includes(unit))
    .map(({ column: found, header: typed }) => ({
      row: header.row,
      column: typed,
      why: `The unit is not one this column takes. It takes ${found?.cell.units.join(' or ') || 'no unit'}.`,
    }));
  return [...missing, ...doubled, ...wrongUnits];
}

function readRow<Input>(
  line: CsvLine,
  places: readonly Place[],
  columns: readonly CsvColumn[],
  schema: z.ZodType<Input>,
  fixed: Readonly<Record<string, unknown>>,
): ReadRow<Input> | { readonly problems: readonly CsvProblem[] } {
  const draft: Record<string, unknown> = { ...fixed };
  for (const { path } of columns) parentOf(draft, path.split('.'));
  const problems: CsvProblem[] = [];
  for (const candidate of columns) {
    const index = places.findIndex((place) => place.column === candidate);
    const typed = line.cells[index] ?? '';
    const at = { row: line.row, column: headerOf(candidate) };
    if (typed === '') {
      if (candidate.isNeeded) problems.push({ ...at, why: 'This is needed.' });
      continue;
    }
    const reading = candidate.cell.read(typed, places[index]?.unit ?? '');
    if ('why' in reading) problems.push({ ...at, why: reading.why });
    else setAt(draft, candidate.path.split('.'), reading.value);
  }
  if (problems.length > 0) return { problems };
  const parsed = schema.safeParse(draft);
  if (parsed.success) return { row: line.row, input: parsed.data };
  return {
    problems: parsed.error.issues.map((issue) => {
      const path = issue.path.join('.');
      const found = columns.find(
        (candidate) => path === candidate.path || path.startsWith(`${candidate.path}.`),
      );
      return { row: line.row, column: found === undefined ? '' : headerOf(found), why: issueWords(issue) };
    }),
  };
}

/** The contract's own sentence, or the bound in words where it has none. */
function issueWords(issue: z.core.$ZodIssue): string {
  const isStock = issue.message.startsWith('Too ') || issue.message.startsWith('Invalid ');
  if (isStock && issue.code === 'too_big') return `At most ${issue.maximum} is accepted.`;
  if (isStock && issue.code === 'too_small') {
    return `${issue.inclusive === false ? 'Above' : 'At least'} ${issue.minimum} is accepted.`;
  }
  if (isStock && issue.code === 'invalid_type') return 'A whole number is needed here.';
  return issue.message;
}

type Tree = Record<string, unknown>;

function isTree(value: unknown): value is Tree {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function valueAt(value: unknown, keys: readonly string[]): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  return isTree(value) ? valueAt(value[key], rest) : null;
}

/** The object that holds the last key, made on the way where it is not there. */
function parentOf(tree: Tree, keys: readonly string[]): Tree {
  let here = tree;
  for (const key of keys.slice(0, -1)) {
    const next = here[key];
    const made = isTree(next) ? next : {};
    here[key] = made;
    here = made;
  }
  return here;
}

function setAt(tree: Tree, keys: readonly string[], value: unknown): void {
  const last = keys.at(-1);
  if (last !== undefined) parentOf(tree, keys)[last] = value;
}
