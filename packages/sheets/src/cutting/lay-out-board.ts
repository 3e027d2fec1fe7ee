// One board: its rows, the sheets and offcuts it may be cut from, and the layout that both give.

import type { CutSettings, LayoutInput, LayoutResult, StockSheet } from '@gusset/contracts/cutting';
import type {
  BoardFact,
  CutBoard,
  CutRow,
  CuttingFacts,
  CuttingInput,
  LayoutSearch,
  SheetTaken,
} from '@gusset/contracts/cutting-sheet';
import { cutParts, layoutSheets } from '@gusset/cutting';
import { isRefusal, type Refusal, type RefusalDetail } from '@gusset/units';
import { isBetter, scoreOf } from './better-layout.ts';
import { HAND_MARK } from './panels-to-cut.ts';

/** Layouts tried where nobody asked for more: some tens of milliseconds for one box. */
const USUAL_SEARCH: LayoutSearch = { seed: 1, iterations: 1_500 };
/** Where something else than board is saved, the best of several layouts of as few sheets is taken. */
const PICKED_FROM: readonly LayoutSearch[] = Array.from({ length: 8 }, (_, index) => ({
  seed: index + 1,
  iterations: 200,
}));
/** Pieces times layouts: what the server repeats each time a sheet is opened stays well under a second. */
const MOST_PIECES_PLACED = 400_000;
const MM3_PER_M3 = 1e9;
const MM2_PER_CM2 = 100;
const NAME_LIMIT = 80;

export type BoardRows = { readonly board: BoardFact; readonly rows: readonly CutRow[] };

export function layOutBoard(
  { board, rows }: BoardRows,
  input: CuttingInput,
  facts: CuttingFacts,
  settings: CutSettings,
): CutBoard | { readonly refusal: RefusalDetail } {
  const [first] = rows;
  const thicknessMm = first?.thicknessMm ?? board.figures.nominalThicknessMm;
  const stock = stockFor(board, thicknessMm, input, facts);
  if (stock.length === 0) return { refusal: noStock(board) };
  const parts = cutParts(rows).map((part) => (input.mayTurn ? part : { ...part, mayTurn: false }));
  const question: LayoutInput = {
    parts: [...parts],
    sheets: [...stock],
    settings: {
      kerfMm: settings.kerfMm,
      trimMm: settings.trimMm,
      keepLengthMm: settings.keepLengthMm,
      keepWidthMm: settings.keepWidthMm,
    },
    aim: input.aim === 'least-board' ? 'least-cost' : 'fewest-sheets',
  };
  const { search, layout } = bestOf(searchesFor(board.id, parts.length, input), question, input.aim);
  if (isRefusal(layout)) return { refusal: atPerson(layout.refusal, { board, rows }, stock) };
  return {
    boardId: board.id,
    name: board.name,
    thicknessMm,
    isMeasured: board.figures.measuredThicknessMm !== null,
    grain: board.figures.grain,
    rows,
    pieces: rows.reduce((sum, row) => sum + row.quantity, 0),
    massKg: rows.reduce((sum, row) => sum + row.totalMassKg, 0),
    sheets: sheetsTaken(layout, stock, { board, thicknessMm }, facts),
    layout: withoutPrices(layout),
    search,
  };
}

/** The chosen sheets, as many as needed, and the offcuts in the rack. */
function stockFor(
  board: BoardFact,
  thicknessMm: number,
  input: CuttingInput,
  facts: CuttingFacts,
): readonly StockSheet[] {
  const chosen = input.sheetChoices.find(({ boardId }) => boardId === board.id)?.sheetIds ?? [board.id];
  const whole = [...new Set(chosen)].flatMap((id): readonly StockSheet[] => {
    const sheet = facts.boards.find((one) => one.id === id);
    if (sheet === undefined) return [];
    const { lengthMm, widthMm, grain } = sheet.figures;
    return [
      {
        id,
        name: sheet.name.slice(0, NAME_LIMIT),
        materialId: board.id,
        thicknessMm,
        lengthMm,
        widthMm,
        count: null,
        // This sheet knows no prices: "least cost" then means least board bought.
        costMinor: Math.round((lengthMm * widthMm) / MM2_PER_CM2),
        grain,
        isOffcut: false,
      },
    ];
  });
  const fromRack = input.offcuts.flatMap((offcut): readonly StockSheet[] =>
    offcut.boardId !== board.id || offcut.length === null || offcut.width === null
      ? []
      : [
          {
            id: `offcut:${offcut.key}`,
            name: 'Offcut',
            materialId: board.id,
            thicknessMm,
            lengthMm: offcut.length.mm,
            widthMm: offcut.width.mm,
            count: offcut.count,
            costMinor: null,
            grain: board.figures.grain === 'none' ? 'none' : 'length',
            isOffcut: true,
          },
        ],
  );
  return [...whole, ...fromRack];
}

/** What was found and kept; else the usual search, or several where the aim is nothing that one search strives for. */
function searchesFor(boardId: string, pieces: number, input: CuttingInput): readonly LayoutSearch[] {
  const kept = input.searches.find((search) => search.boardId === boardId);
  const isPicked = input.aim === 'largest-offcut';
  const searches = kept === undefined ? (isPicked ? PICKED_FROM : [USUAL_SEARCH]) : [kept];
  return searches.map(({ seed, iterations }) => ({
    seed,
    iterations: Math.max(1, Math.min(iterations, Math.floor(MOST_PIECES_PLACED / searches.length / pieces))),
  }));
}

function bestOf(
  searches: readonly LayoutSearch[],
  question: LayoutInput,
  aim: CuttingInput['aim'],
): { readonly search: LayoutSearch; readonly layout: LayoutResult | Refusal } {
  const tried = searches.map((search) => ({
    search,
    layout: layoutSheets(question, { seed: search.seed, maxIterations: search.iterations }),
  }));
  const scored = tried.flatMap(({ search, layout }) =>
    isRefusal(layout) ? [] : [{ search, layout, score: scoreOf({ layout }, aim) }],
  );
  const [first, ...more] = scored;
  if (first === undefined) {
    // Every search refuses alike: what is asked for cannot be cut.
    const { seed, iterations } = USUAL_SEARCH;
    return (
      tried[0] ?? {
        search: USUAL_SEARCH,
        layout: layoutSheets(question, { seed, maxIterations: iterations }),
      }
    );
  }
  return more.reduce((best, one) => (isBetter(one.score, best.score) ? one : best), first);
}

function sheetsTaken(
  layout: LayoutResult,
  stock: readonly StockSheet[],
  { board, thicknessMm }: { readonly board: BoardFact; readonly thicknessMm: number },
  facts: CuttingFacts,
): readonly SheetTaken[] {
  return stock.flatMap((sheet): readonly SheetTaken[] => {
    const count = layout.sheets.filter(({ stockId }) => stockId === sheet.id).length;
    if (count === 0) return [];
    const densityKgPerM3 = (facts.boards.find(({ id }) => id === sheet.id) ?? board).figures.densityKgPerM3;
    return [
      {
        stockId: sheet.id,
        partId: sheet.isOffcut ? null : sheet.id,
        name: sheet.name,
        lengthMm: sheet.lengthMm,
        widthMm: sheet.widthMm,
        count,
        massKg: ((sheet.lengthMm * sheet.widthMm * thicknessMm) / MM3_PER_M3) * densityKgPerM3,
      },
    ];
  });
}

function withoutPrices(layout: LayoutResult): LayoutResult {
  return {
    ...layout,
    sheets: layout.sheets.map((sheet) => ({ ...sheet, costMinor: null })),
    totals: { ...layout.totals, costMinor: null },
  };
}

function noStock(board: BoardFact): RefusalDetail {
  return {
    field: 'sheetChoices',
    allowed: 'at least one sheet or offcut',
    got: 0,
    why: `nothing is chosen to cut ${board.name} from`,
  };
}

/** The engine names its own fields and ids; a person knows marks, names, and the fields of this sheet. */
function atPerson(refusal: RefusalDetail, { rows }: BoardRows, stock: readonly StockSheet[]): RefusalDetail {
  const why = [
    ...rows.flatMap((row) => [[`part ${row.panelId}`, `${row.mark} ${row.name}`] as const]),
    ...stock.map((sheet) => [`sheet ${sheet.id}`, sheet.name] as const),
  ].reduce((words, [id, name]) => words.replaceAll(id, name), refusal.why);
  return { ...refusal, field: personField(refusal.field, rows), why };
}

/** `parts[3].lengthMm` is a row of the box, or the length of a part by hand, which has its own field. */
function personField(field: string, rows: readonly CutRow[]): string {
  if (field.startsWith('settings.kerf')) return 'kerf';
  if (field.startsWith('sheets')) return 'sheetChoices';
  const [, index, what] = /^parts\[(\d+)\]\.(\w+)$/u.exec(field) ?? [];
  const id = cutParts(rows)[Number(index)]?.id.split('#')[0];
  const row = rows.find(({ panelId }) => panelId === id);
  if (row === undefined) return 'handParts';
  if (!row.isByHand) return 'box';
  const place = `handParts.${Number(row.mark.slice(HAND_MARK.length)) - 1}`;
  if (what === 'lengthMm') return `${place}.length`;
  if (what === 'widthMm') return `${place}.width`;
  return what === 'mayTurn' ? 'mayTurn' : `${place}.grain`;
}
