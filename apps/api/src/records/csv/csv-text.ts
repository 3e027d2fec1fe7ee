// Lists as text: RFC 4180 with CRLF and a UTF-8 mark, so that spreadsheets on any desk open them as they are.
import Papa from 'papaparse';

const BYTE_ORDER_MARK = '\uFEFF';
/** A cell that starts like this would be run as a formula by a spreadsheet (also in its full-width form). */
const STARTS_LIKE_FORMULA = /^'*[=+\-@\t\r＝＋－＠]/u;
const IS_NUMBER = /^-?\d+(\.\d+)?$/;

/** An apostrophe in front makes it text; figures stay figures. `unguarded` takes exactly that apostrophe off again. */
export function guarded(cell: string): string {
  return STARTS_LIKE_FORMULA.test(cell) && !IS_NUMBER.test(cell) ? `'${cell}` : cell;
}

export function unguarded(cell: string): string {
  return cell.startsWith("'") && STARTS_LIKE_FORMULA.test(cell) ? cell.slice(1) : cell;
}

export function writeCsv(rows: readonly (readonly string[])[]): string {
  const lines = rows.map((row) => row.map((cell) => quoted(guarded(cell))).join(','));
  return `${BYTE_ORDER_MARK}${lines.join('\r\n')}\r\n`;
}

function quoted(cell: string): string {
  return /[",\r\n]|^\s|\s$/u.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

export type CsvLine = {
  /** As a spreadsheet numbers it: the header is row 1. */
  readonly row: number;
  readonly cells: readonly string[];
};

export type CsvProblem = { readonly row: number; readonly column: string; readonly why: string };

/** Lines that hold something, with their row numbers; comma, semicolon or tab between cells. */
export function readCsv(text: string): { lines: CsvLine[]; problems: CsvProblem[] } {
  const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/u, ''), {
    delimitersToGuess: [',', ';', '\t'],
    skipEmptyLines: false,
  });
  const lines = parsed.data
    .map((cells, index) => ({ row: index + 1, cells: cells.map((cell) => unguarded(cell.trim())) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const problems = parsed.errors
    .filter(({ type }) => type === 'Quotes')
    .map(({ row }) => ({
      row: (row ?? 0) + 1,
      column: '',
      why: 'A quotation mark is opened here and not closed.',
    }));
  return { lines, problems };
}
