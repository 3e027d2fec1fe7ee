// From layouts to the saw, setting by setting.
import type {
  SawCut,
  SawPlan,
  SawSetUp,
  SawStep,
  SheetLayout,
  SheetRectangle,
} from '@gusset/contracts/cutting';
import { type CutLevel, cutLevels, isSame } from './cut-levels.ts';
import { leastSettings, orderCuts, type PlannedCut, SAME_SETTING_MM } from './order-cuts.ts';

/**
 * The cuts of these sheets (one board, or several of one thickness) in an order that seldom moves the fence. Trimming
 * comes first. Every step names a piece that is then in hand and the edge that runs on the fence; `replayPlan` proves it.
 */
export function sawPlan(sheets: readonly SheetLayout[]): SawPlan {
  const levels = cutLevels(sheets);
  const groups = orderCuts(levels);
  const setUps: SawSetUp[] = [];
  let order = 0;
  const trims = sheets.flatMap((sheet) =>
    sheet.cuts.filter((cut) => cut.kind === 'trim').map((cut) => ({ sheet, cut })),
  );
  if (trims.length > 0) {
    const steps = trims.map(({ sheet, cut }, index) => trimStep(sheet, cut, index + 1));
    order = steps.length;
    setUps.push({ order: setUps.length + 1, fenceMm: null, steps });
  }
  const open = levels.map(({ strips }) => ({ low: 0, high: strips.length - 1 }));
  for (const group of groups) {
    const steps = group.flatMap((cut): readonly SawStep[] => {
      const level = levels[cut.level];
      const at = open[cut.level];
      if (level === undefined || at === undefined) return [];
      order += 1;
      return [stepOf(level, at, cut, order)];
    });
    setUps.push({ order: setUps.length + 1, fenceMm: group[0]?.fenceMm ?? 0, steps });
  }
  return {
    setUps,
    fenceSettings: groups.length,
    settingsMapByMap: settingsMapByMap(sheets),
    leastSettings: leastSettings(levels),
  };
}

function nameOf({ stockId, copy }: SheetLayout): SawStep['sheet'] {
  return { stockId, copy };
}

function trimStep(sheet: SheetLayout, cut: SawCut, order: number): SawStep {
  const { along, piece, fenceMm, kerf } = cut;
  return { order, sheet: nameOf(sheet), along, piece, against: 'low', fenceMm, kerf, freesPartIds: [] };
}

/** Cuts one strip off, and notes in `at` what is left together. */
function stepOf(level: CutLevel, at: { low: number; high: number }, cut: PlannedCut, order: number): SawStep {
  const piece = together(level, at.low, at.high);
  const freed: SheetRectangle[] = [];
  const kerf = level.lines[cut.line]?.kerf ?? { ...piece, lengthMm: 0, widthMm: 0 };
  const strip = level.strips[cut.against === 'low' ? at.low : at.high];
  if (strip !== undefined) freed.push(strip);
  if (cut.against === 'low') at.low += 1;
  else at.high -= 1;
  if (at.low === at.high) {
    const last = level.strips[at.low];
    if (last !== undefined) freed.push(last);
  }
  return {
    order,
    sheet: nameOf(level.sheet),
    along: level.along,
    piece,
    against: cut.against,
    fenceMm: cut.fenceMm,
    kerf,
    freesPartIds: level.sheet.placements
      .filter((placement) => freed.some((one) => isSame(one, placement)))
      .map(({ partId }) => partId),
  };
}

/** The strips from `low` to `high` and the lines between them, still one piece. */
function together(level: CutLevel, low: number, high: number): SheetRectangle {
  const first = level.strips[low] ?? level.base;
  const last = level.strips[high] ?? level.base;
  return level.along === 'width'
    ? { ...level.base, xMm: first.xMm, lengthMm: last.xMm + last.lengthMm - first.xMm }
    : { ...level.base, yMm: first.yMm, widthMm: last.yMm + last.widthMm - first.yMm };
}

/** Settings of someone who cuts up sheet after sheet as the maps are numbered. */
function settingsMapByMap(sheets: readonly SheetLayout[]): number {
  let settings = 0;
  let standing: number | null = null;
  for (const { kind, fenceMm } of sheets.flatMap(({ cuts }) => cuts)) {
    if (kind !== 'part') continue;
    if (standing === null || Math.abs(standing - fenceMm) > SAME_SETTING_MM) {
      settings += 1;
      standing = fenceMm;
    }
  }
  return settings;
}
