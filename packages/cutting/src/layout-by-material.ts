// A job is cut from several boards: each material and thickness is a layout of its own.
import type {
  CutAim,
  CutPart,
  LayoutResult,
  LayoutSettings,
  LayoutTotals,
  StockSheet,
} from '@gusset/contracts/cutting';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { stockKey } from './cut-list.ts';
import { type LayoutOptions, layoutSheets, sumUp } from './sheet-layout.ts';

export type MaterialsInput = {
  readonly parts: readonly CutPart[];
  readonly sheets: readonly StockSheet[];
  readonly settings: LayoutSettings;
  readonly aim: CutAim;
};

export type MaterialLayout = {
  readonly materialId: string;
  readonly thicknessMm: number;
  readonly layout: LayoutResult;
};

export type MaterialsResult = { readonly layouts: readonly MaterialLayout[]; readonly totals: LayoutTotals };

/** Lays out each material and thickness on its own sheets; time and iterations are shared evenly. */
export function layoutByMaterial(input: MaterialsInput, options: LayoutOptions): MaterialsResult | Refusal {
  const groups = Map.groupBy(input.parts, (part) => stockKey(part.materialId, part.thicknessMm));
  if (groups.size === 0) {
    return refuse('parts', { allowed: 'at least 1 part', got: 0, why: 'there is nothing to cut' });
  }
  const share = shareOf(options, groups.size);
  const layouts: MaterialLayout[] = [];
  for (const key of [...groups.keys()].sort()) {
    const parts = groups.get(key) ?? [];
    const [first] = parts;
    if (first === undefined) continue;
    const sheets = input.sheets.filter((sheet) => stockKey(sheet.materialId, sheet.thicknessMm) === key);
    if (sheets.length === 0) return noSheets(first, input);
    const layout = layoutSheets(
      { parts: [...parts], sheets, settings: input.settings, aim: input.aim },
      share,
    );
    if (isRefusal(layout)) return layout;
    layouts.push({ materialId: first.materialId, thicknessMm: first.thicknessMm, layout });
  }
  return { layouts, totals: sumUp(layouts.flatMap(({ layout }) => layout.sheets)) };
}

function shareOf(options: LayoutOptions, groups: number): LayoutOptions {
  return {
    ...options,
    ...(options.seconds === undefined ? {} : { seconds: options.seconds / groups }),
    ...(options.maxIterations === undefined
      ? {}
      : { maxIterations: Math.ceil(options.maxIterations / groups) }),
  };
}

function noSheets(part: CutPart, input: MaterialsInput): Refusal {
  const near = input.sheets.filter((sheet) => sheet.materialId === part.materialId);
  return refuse('sheets', {
    allowed: `a sheet of ${part.materialId}, ${part.thicknessMm} mm`,
    got: near.length === 0 ? null : near.map((sheet) => `${sheet.thicknessMm} mm`).join(', '),
    why: `part ${part.id} is ${part.thicknessMm} mm thick and no sheet at hand is`,
  });
}
