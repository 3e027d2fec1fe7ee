// What a machine or a spreadsheet takes of a cutting sheet: DXF and SVG by panel, DXF by sheet, the list as CSV; one archive.
import type { CutBoard, CuttingResult } from '@gusset/contracts/cutting-sheet';
import { type MachinePart, partDxf, partSvg, sheetDxf } from '@gusset/drawings/machine-files';
import { strToU8, zipSync } from 'fflate';
import type { Actor, Deps } from '../deps.ts';
import { toJobView } from '../jobs/job.service.ts';
import { writeCsv } from '../records/csv/csv-text.ts';
import { inJob } from '../sheets/sheet.service.ts';
import { cuttingOf } from './cut-sheet.ts';

type Row = CutBoard['rows'][number];

export async function cutFiles(
  deps: Deps,
  actor: Actor,
  jobId: string,
): Promise<{ readonly zip: Uint8Array; readonly fileName: string }> {
  const { number, result, revision } = await inJob(deps, actor, jobId, async (scope) => ({
    ...(await cuttingOf(scope)),
    number: toJobView(scope.job, actor).number,
  }));
  const name = `cut-files-${number}-${revision === null ? 'draft' : `rev-${revision}`}`;
  const files = Object.fromEntries(
    filesOf(result).map(({ path, text }) => [`${name}/${path}`, strToU8(text)]),
  );
  // A fixed date: the same sheet gives the same archive.
  return { zip: zipSync(files, { mtime: '1980-01-01T00:00:00' }), fileName: `${name}.zip` };
}

type TextFile = { readonly path: string; readonly text: string };

function filesOf(result: CuttingResult): readonly TextFile[] {
  const parts = result.boards.flatMap(({ rows }) =>
    rows.flatMap((row): readonly TextFile[] => {
      const part = toPart(row);
      const path = `parts/${safe(`${row.mark} ${row.name}`)}`;
      return [
        { path: `${path}.dxf`, text: partDxf(part) },
        { path: `${path}.svg`, text: partSvg(part) },
      ];
    }),
  );
  const sheets = result.boards.flatMap((board) =>
    board.layout.sheets.map(
      (sheet, index): TextFile => ({
        path: `sheets/${safe(`${board.name} ${index + 1}`)}.dxf`,
        text: sheetDxf({ ...sheet, placed: sheet.placements.flatMap((one) => placed(board, one)) }),
      }),
    ),
  );
  return [{ path: 'cut-list.csv', text: listCsv(result) }, ...parts, ...sheets];
}

function placed(
  board: CutBoard,
  { partId, xMm, yMm, turned }: CutBoard['layout']['sheets'][number]['placements'][number],
) {
  const [panelId] = partId.split('#');
  const row = board.rows.find((one) => one.panelId === panelId);
  if (row === undefined) return [];
  const { blankLengthMm, blankWidthMm, finishedLengthMm, finishedWidthMm } = row;
  const isFinished = blankLengthMm === finishedLengthMm && blankWidthMm === finishedWidthMm;
  return [{ part: toPart(row), xMm, yMm, turned, blankLengthMm, blankWidthMm, isFinished }];
}

function toPart({ mark, name, thicknessMm, outline, holes, edges }: Row): MachinePart {
  return { mark, name, thicknessMm, outline, holes, edges };
}

const HEADER = [
  'Mark',
  'Part',
  'Board',
  'Off',
  'Length (mm)',
  'Width (mm)',
  'Blank length (mm)',
  'Blank width (mm)',
  'Thickness (mm)',
  'Grain',
  'Bevels (deg)',
];

function listCsv({ boards }: CuttingResult): string {
  const tenth = (mm: number) => String(Number(mm.toFixed(1)));
  const rows = boards.flatMap((board) =>
    board.rows.map((row) => [
      row.mark,
      row.name,
      board.name,
      String(row.quantity),
      tenth(row.finishedLengthMm),
      tenth(row.finishedWidthMm),
      tenth(row.blankLengthMm),
      tenth(row.blankWidthMm),
      tenth(row.thicknessMm),
      row.grain === 'none' ? '' : row.grain,
      row.edges
        .filter(({ bevelDeg }) => bevelDeg > 0)
        .map(({ bevelDeg }) => bevelDeg.toFixed(1))
        .join(' '),
    ]),
  );
  return writeCsv([HEADER, ...rows]);
}

/** A name that every file system takes. */
function safe(text: string): string {
  return text.replaceAll(/[^\p{L}\p{N} ._-]+/gu, '-').trim();
}
