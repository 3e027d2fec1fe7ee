// Plain text columns as meters and analysers write them: figures in rows, parted by tabs, semicolons, commas or spaces,
// with a decimal point or comma, comment lines and a line of header words before the first row.
import { type Refusal, refuse } from '@gusset/units';

/** Longer files are cut on the way in; a sweep of more rows is a recording, not a sweep. */
const MOST_ROWS = 20_000;
const COMMENT = /^\s*(?:[#*%!"']|\/\/|--|;)/;
const SHOWN_CHARACTERS = 60;

export type TextRow = {
  /** Counted from 1, as an editor shows it. */
  readonly line: number;
  readonly text: string;
  readonly figures: readonly number[];
};

export type TextColumns = {
  readonly rows: readonly TextRow[];
  /** Words before the first row, comment signs taken off, in lower case. */
  readonly header: string;
  readonly decimalComma: boolean;
};

/** Rows of two or three figures. Refused at the first line that is neither figures, comment nor header. */
export function textColumns(text: string): TextColumns | Refusal {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .map((content, i) => ({ line: i + 1, text: content.trim() }))
    .filter((each) => each.text !== '');
  const written = lines.filter((each) => !COMMENT.test(each.text));
  const first = written.findIndex((each) => startsWithFigure(each.text));
  if (first === -1) {
    return refuse('text', {
      allowed: 'rows of figures: frequency, magnitude and, if there is one, phase',
      got: lines[0] === undefined ? null : shown(lines[0].text),
      why: 'no row of figures was found',
    });
  }
  const body = written.slice(first);
  if (body.length > MOST_ROWS) {
    return refuse('text', {
      allowed: `at most ${MOST_ROWS} rows`,
      got: body.length,
      why: 'the file has more rows than a sweep needs; export fewer points for each octave',
    });
  }
  const separator = separatorOf(body.map((each) => each.text));
  if (separator === null) return refuseCommas(body[0]);
  const rows: TextRow[] = [];
  for (const { line, text: row } of body) {
    const figures = figuresOf(row, separator);
    if (figures === null || figures.length < 2) return refuseLine(line, row, figures);
    rows.push({ line, text: row, figures: figures.slice(0, 3) });
  }
  return { rows, header: headerOf(lines, body[0]?.line ?? 1), decimalComma: separator.decimalComma };
}

type Separator = { readonly between: RegExp; readonly decimalComma: boolean };

function startsWithFigure(text: string): boolean {
  return /^[+-]?(?:\d|[.,]\d)/.test(text);
}

/**
 * Tabs and semicolons part columns wherever they stand; then a comma is a decimal sign. Commas part columns only where
 * nothing else does. Null = commas do both and nobody can tell which is which.
 */
function separatorOf(rows: readonly string[]): Separator | null {
  const uses = (sign: string) => rows.every((row) => row.includes(sign));
  const commas = rows.some((row) => row.includes(','));
  const points = rows.some((row) => row.includes('.'));
  const decimalComma = commas && !points;
  if (uses('\t')) return commas && points ? withCommas : { between: /\s*\t\s*/, decimalComma };
  if (uses(';')) return { between: /\s*;\s*/, decimalComma };
  if (!commas) return { between: /\s+/, decimalComma: false };
  if (points) return withCommas;
  // Commas and no point: `20,5 6,31` has decimal commas, `20,6` whole numbers parted by one comma.
  if (rows.every((row) => row.split(/\s+/).length >= 2 && !/,\s/.test(row)))
    return { between: /\s+/, decimalComma: true };
  if (rows.every((row) => row.split(',').length <= 3)) return withCommas;
  return null;
}

const withCommas: Separator = { between: /\s*[,\t]\s*|\s+/, decimalComma: false };

/** Null where one of the first three is no number. */
function figuresOf(row: string, { between, decimalComma }: Separator): number[] | null {
  const cells = row
    .split(between)
    .filter((cell) => cell !== '')
    .slice(0, 3);
  const figures = cells.map((cell) => toNumber(decimalComma ? cell.replace(',', '.') : cell));
  return figures.every((figure) => figure !== null) ? figures : null;
}

function toNumber(cell: string): number | null {
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(cell)) return null;
  const value = Number(cell);
  return Number.isFinite(value) ? value : null;
}

function headerOf(
  lines: readonly { readonly line: number; readonly text: string }[],
  before: number,
): string {
  return lines
    .filter(({ line }) => line < before)
    .map(({ text }) => text.replace(/^[\s#*%!"';/-]+/, ''))
    .join('\n')
    .toLowerCase();
}

function shown(text: string): string {
  return text.length > SHOWN_CHARACTERS ? `${text.slice(0, SHOWN_CHARACTERS)}…` : text;
}

function refuseLine(line: number, text: string, figures: readonly number[] | null): Refusal {
  return refuse('text', {
    allowed: 'two or three numbers in every row: frequency, magnitude, phase',
    got: shown(text),
    why:
      figures === null
        ? `line ${line} reads “${shown(text)}”, which is not a row of numbers`
        : `line ${line} reads “${shown(text)}”, which has only one number`,
  });
}

function refuseCommas(row: { readonly line: number; readonly text: string } | undefined): Refusal {
  return refuse('text', {
    allowed: 'a decimal point, or decimal commas with tabs, semicolons or spaces between the columns',
    got: row === undefined ? null : shown(row.text),
    why: `in line ${row?.line ?? 1}, “${shown(row?.text ?? '')}”, commas stand both inside the numbers and between them`,
  });
}
