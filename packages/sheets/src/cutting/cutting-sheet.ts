// Sheet 05. The cutting engine lists and lays out; this file gathers what is cut, from which sheets, with which saw,
// and says what is needed.
import { type CutSettings, DEFAULT_CUT_SETTINGS, type LayoutTotals } from '@gusset/contracts/cutting';
import {
  type CutBoard,
  type CutRow,
  type CuttingFacts,
  type CuttingInput,
  type CuttingResult,
  cuttingInputSchema,
} from '@gusset/contracts/cutting-sheet';
import type { Panel } from '@gusset/contracts/panel';
import { cutList } from '@gusset/cutting';
import type { RefusalDetail } from '@gusset/units';
import { storable } from '../box/storable.ts';
import {
  type GatheredUpstream,
  incomplete,
  type Missing,
  ready,
  refused,
  type SheetDefinition,
  type SheetOutcome,
} from '../sheet-definition.ts';
import { boxPanels } from './box-panels.ts';
import { cuttingFactFigures, cuttingKeyFigures } from './cutting-figures.ts';
import { cuttingNotes, keepsDraft } from './cutting-notes.ts';
import { type BoardRows, layOutBoard } from './lay-out-board.ts';
import { panelsToCut } from './panels-to-cut.ts';

export type CuttingUpstream = Pick<GatheredUpstream, 'box' | 'enclosures'>;

export const cuttingSheet: SheetDefinition<CuttingInput, CuttingFacts, CuttingUpstream, CuttingResult> = {
  kind: 'cutting',
  engineVersion: 1,
  optionalReads: [],
  inputSchema: cuttingInputSchema,
  emptyInput: () => ({
    kerf: null,
    trim: null,
    oversize: null,
    mayTurn: true,
    aim: 'fewest-sheets',
    sheetChoices: [],
    offcuts: [],
    handParts: [],
    spares: [],
    searches: [],
    machines: { bit: null, bush: null, pass: null, baseToBlade: null },
    gluing: { adhesive: 'pva', temperatureC: 20 },
    notes: '',
  }),
  compute: computeCutting,
  keyFigures: cuttingKeyFigures,
  factFigures: cuttingFactFigures,
};

function computeCutting(
  input: CuttingInput,
  facts: CuttingFacts,
  upstream: CuttingUpstream,
): SheetOutcome<CuttingResult> {
  const panels = boxPanels(upstream);
  const missing = missingOf(input, facts, panels);
  if (panels === null || missing.length > 0) return incomplete(missing);
  const settings = cutSettings(input, facts);
  const boards: CutBoard[] = [];
  const refusals: RefusalDetail[] = [];
  for (const rows of boardRows(input, facts, panels, settings)) {
    const board = layOutBoard(rows, input, facts, settings);
    if ('refusal' in board) refusals.push(board.refusal);
    else boards.push(board);
  }
  if (refusals.length > 0) return refused(refusals);
  const notes = cuttingNotes(boards, input, facts, panels);
  return ready(
    storable({
      isDraft: notes.some(keepsDraft),
      kerfMm: settings.kerfMm,
      trimMm: settings.trimMm,
      boards,
      sheetsUsed: sheetsUsed(boards),
      totals: totalsOf(boards),
      pieces: boards.reduce((sum, board) => sum + board.pieces, 0),
      massKg: boards.reduce((sum, board) => sum + board.massKg, 0),
      notes,
    }),
  );
}

/** What is half typed, and boards that the catalogue no longer has. */
function missingOf(
  input: CuttingInput,
  facts: CuttingFacts,
  panels: readonly Panel[] | null,
): readonly Missing[] {
  if (panels === null) return [{ field: 'box', what: 'the box of sheet 04' }];
  const known = new Set(facts.boards.map(({ id }) => id));
  const missing: Missing[] = [];
  for (const id of new Set(panels.map(({ materialId }) => materialId))) {
    if (!known.has(id)) {
      missing.push({ field: 'sheetChoices', what: 'a board of the box that is no longer in the catalogue' });
    }
  }
  const lists = [
    { field: 'offcuts', what: 'offcut', rows: input.offcuts },
    { field: 'handParts', what: 'part by hand', rows: input.handParts },
  ];
  for (const { field, what, rows } of lists) {
    rows.forEach((row, index) => {
      const of = `of ${what} ${index + 1}`;
      if (row.boardId === null || !known.has(row.boardId))
        missing.push({ field: `${field}.${index}.boardId`, what: `the board ${of}` });
      if (row.length === null) missing.push({ field: `${field}.${index}.length`, what: `the length ${of}` });
      if (row.width === null) missing.push({ field: `${field}.${index}.width`, what: `the width ${of}` });
    });
  }
  return missing;
}

function cutSettings(input: CuttingInput, { saw }: CuttingFacts): CutSettings {
  return {
    ...DEFAULT_CUT_SETTINGS,
    kerfMm: input.kerf?.mm ?? saw.kerfMm,
    trimMm: input.trim?.mm ?? saw.trimMm,
    bladeMaxTiltDeg: saw.bladeMaxTiltDeg,
    oversizeMm: input.oversize?.mm ?? 0,
  };
}

/** The cut list, board by board, as the list orders them. */
function boardRows(
  input: CuttingInput,
  facts: CuttingFacts,
  panels: readonly Panel[],
  settings: CutSettings,
): readonly BoardRows[] {
  const toCut = panelsToCut(input, facts, panels);
  const asked = new Map(toCut.map((one) => [one.panel.id, one]));
  const rows = cutList(
    toCut.map(({ panel }) => panel),
    settings,
  ).map((row): CutRow => {
    const { spares = 0, isByHand = false } = asked.get(row.panelId) ?? {};
    return { ...row, spares, isByHand };
  });
  return [...Map.groupBy(rows, (row) => row.materialId)].flatMap(([boardId, members]) => {
    const board = facts.boards.find(({ id }) => id === boardId);
    return board === undefined ? [] : [{ board, rows: members }];
  });
}

function sheetsUsed(boards: readonly CutBoard[]): CuttingResult['sheetsUsed'] {
  const used = new Map<string, { partId: string; name: string; count: number }>();
  for (const { partId, name, count } of boards.flatMap(({ sheets }) => sheets)) {
    if (partId === null) continue;
    used.set(partId, { partId, name, count: count + (used.get(partId)?.count ?? 0) });
  }
  return [...used.values()];
}

function totalsOf(boards: readonly CutBoard[]): LayoutTotals {
  const sum = (pick: (totals: LayoutTotals) => number): number =>
    boards.reduce((total, { layout }) => total + pick(layout.totals), 0);
  return {
    fullSheets: sum((totals) => totals.fullSheets),
    offcutsUsed: sum((totals) => totals.offcutsUsed),
    costMinor: null,
    sheetMm2: sum((totals) => totals.sheetMm2),
    partsMm2: sum((totals) => totals.partsMm2),
    kerfMm2: sum((totals) => totals.kerfMm2),
    trimMm2: sum((totals) => totals.trimMm2),
    offcutsMm2: sum((totals) => totals.offcutsMm2),
    wasteMm2: sum((totals) => totals.wasteMm2),
  };
}
