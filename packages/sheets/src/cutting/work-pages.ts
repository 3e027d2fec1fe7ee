// Saw, router and glue-up as pages: the same sentences as on the screen.
import { type AssemblyPlan, USUAL_ADHESIVES } from '@gusset/contracts/cutting';
import type { CuttingInput } from '@gusset/contracts/cutting-sheet';
import type { WorkPage, WorkRow, WorkTable } from '@gusset/drawings';
import { formatMinutes } from '@gusset/units';
import { stepDetail, stepFigures, stepTitle, waitWords } from './assembly-words.ts';
import { markOf } from './cutting-notes.ts';
import type { FormatLength } from './cutting-papers.ts';
import {
  askewLine,
  benchLines,
  bevelledEdges,
  bevelWords,
  GLUE_PAGE_CAUTION,
  ROUTER_PAGE_LEAD,
  SAW_PAGE_CAUTION,
  settingsWords,
  stepWords,
} from './machine-words.ts';
import type { BoardWork } from './machine-work.ts';

export function sawPage(works: readonly BoardWork[], trimMm: number, length: FormatLength): WorkPage {
  return {
    title: 'At the saw',
    lead: trimMm > 0 ? `First take ${length(trimMm)} off each edge of every sheet.` : null,
    caution: SAW_PAGE_CAUTION,
    tables: works.flatMap((work) => sawTables(work, length)),
  };
}

function sawTables({ board, saw, bevels, askew }: BoardWork, length: FormatLength): readonly WorkTable[] {
  const name = `${board.name}, ${length(board.thicknessMm)}`;
  const numberOf = ({ stockId, copy }: { readonly stockId: string; readonly copy: number }) =>
    board.layout.sheets.findIndex((sheet) => sheet.stockId === stockId && sheet.copy === copy) + 1;
  const settings = saw.setUps.flatMap(({ fenceMm, steps }): readonly WorkRow[] =>
    fenceMm === null
      ? []
      : [
          {
            figure: length(fenceMm),
            lines: steps.map((step) => {
              const marks = step.freesPartIds.map((partId) => markOf(board, partId)).join(', ');
              const words = stepWords(step, numberOf(step.sheet), length);
              return marks === '' ? words : `${words} → ${marks}`;
            }),
          },
        ],
  );
  const tables: readonly WorkTable[] = [
    { heading: `${name}: ${settingsWords(saw)}`, columns: ['Fence', 'Cuts'], rows: settings },
    {
      heading: `${name}: bevels`,
      columns: ['Fence', 'Blade and edges'],
      rows: bevels.map((setUp) => ({
        figure: setUp.fenceMm === null ? 'none' : length(setUp.fenceMm),
        lines: [bevelWords(setUp), bevelledEdges(setUp, length)],
      })),
    },
    {
      heading: `${name}: sled, guide rail or straightedge, along / across from the blank’s corner`,
      columns: ['Mark', 'Cut'],
      rows: askew.map((cut) => ({ figure: cut.mark, lines: [askewLine(cut, length)] })),
    },
  ];
  return tables.filter(({ rows }) => rows.length > 0);
}

/** Null where no panel has anything to route or drill. */
export function routerPage(works: readonly BoardWork[], length: FormatLength): WorkPage | null {
  const tables = works.flatMap(({ board, bench }): readonly WorkTable[] => {
    const rows = board.rows.flatMap((row): readonly WorkRow[] => {
      const lines = benchLines(bench, row.panelId, length);
      if (lines.length === 0) return [];
      const words = lines.flatMap(({ at, words: found }) =>
        found.map((line, index) => (index === 0 && at !== '' ? `${at}: ${line}` : line)),
      );
      const name = row.quantity > 1 ? `${row.name}, ${row.quantity} off` : row.name;
      return [{ figure: row.mark, lines: [name, ...words] }];
    });
    return rows.length === 0
      ? []
      : [{ heading: `${board.name}, ${length(board.thicknessMm)}`, columns: ['Mark', 'Work'], rows }];
  });
  return tables.length === 0
    ? null
    : { title: 'Router and drill', lead: ROUTER_PAGE_LEAD, caution: null, tables };
}

export function gluePage(
  plan: AssemblyPlan,
  { gluing }: Pick<CuttingInput, 'gluing'>,
  length: FormatLength,
): WorkPage {
  const { name, openMinutes } = USUAL_ADHESIVES[gluing.adhesive];
  return {
    title: 'Assembly',
    lead: `${name} at ${gluing.temperatureC} °C: ${formatMinutes(plan.waitMinutes)} of waiting in all; open for ${formatMinutes(openMinutes)}. What stands on the tin comes first.`,
    caution: GLUE_PAGE_CAUTION,
    tables: [
      {
        heading: 'In this order',
        columns: ['Step', 'What to do'],
        rows: plan.steps.map((step) => ({
          figure: String(step.order),
          lines: [
            step.what === 'dry' || step.marks.length === 0
              ? stepTitle(step)
              : `${stepTitle(step)}: ${step.marks.join(', ')}`,
            stepDetail(step, plan),
            ...[stepFigures(step, length), waitWords(step)].filter((words) => words !== ''),
          ],
        })),
      },
    ],
  };
}
