// From panels to the list that hangs at the saw: what size to cut, at which bevel, from which sheet.
import type { CutEdge, CutListRow, CutPart, CutSettings } from '@gusset/contracts/cutting';
import type { Panel } from '@gusset/contracts/panel';
import { mirrorNote } from './mirror-note.ts';
import { edgeLengthMm, sizeWithEdgesMoved } from './move-edges.ts';

const DEGREES_PER_RADIAN = 180 / Math.PI;
/** A bevel this close to square is cut square; no blade scale shows it. */
const SQUARE_RAD = 1e-6;
/** Rounding of a bevel computed as exactly the saw's maximum must not count as beyond it. */
const TILT_SLACK_DEG = 1e-6;
/** An outline this close to its rectangle needs no second cut. */
const RECTANGLE_MM = 0.01;

/** One row a panel, by material, then thickness (thick first), then mark. */
export function cutList(panels: readonly Panel[], settings: CutSettings): readonly CutListRow[] {
  const sorted = panels.toSorted(byStockThenMark);
  return sorted.map((panel, index) => toRow(panel, sorted.slice(0, index), settings));
}

export type CutListGroup = {
  readonly materialId: string;
  readonly thicknessMm: number;
  readonly rows: readonly CutListRow[];
  readonly pieces: number;
  readonly blankAreaMm2: number;
  readonly massKg: number;
};

/** The rows that one kind of sheet serves, with their sums, in the order of the list. */
export function groupCutList(rows: readonly CutListRow[]): readonly CutListGroup[] {
  const groups = Map.groupBy(rows, (row) => stockKey(row.materialId, row.thicknessMm));
  return [...groups.values()].flatMap((members) => {
    const first = members[0];
    if (first === undefined) return [];
    return [
      {
        materialId: first.materialId,
        thicknessMm: first.thicknessMm,
        rows: members,
        pieces: members.reduce((sum, row) => sum + row.quantity, 0),
        blankAreaMm2: members.reduce(
          (sum, row) => sum + row.quantity * row.blankLengthMm * row.blankWidthMm,
          0,
        ),
        massKg: members.reduce((sum, row) => sum + row.totalMassKg, 0),
      },
    ];
  });
}

/** The blanks that a layout must place: one a piece, `panelId` or `panelId#2` for the second of a row. */
export function cutParts(rows: readonly CutListRow[]): readonly CutPart[] {
  return rows.flatMap((row) =>
    Array.from({ length: row.quantity }, (_, index) => ({
      id: index === 0 ? row.panelId : `${row.panelId}#${index + 1}`,
      materialId: row.materialId,
      thicknessMm: row.thicknessMm,
      lengthMm: row.blankLengthMm,
      widthMm: row.blankWidthMm,
      mayTurn: true,
      grain: row.grain,
    })),
  );
}

/** Parts and sheets belong together where material and thickness agree. */
export function stockKey(materialId: string, thicknessMm: number): string {
  return `${materialId} ${thicknessMm}`;
}

function toRow(panel: Panel, earlier: readonly Panel[], settings: CutSettings): CutListRow {
  const edges = panel.outline.map((_, index) => toCutEdge(panel, index, settings));
  const blank = sizeWithEdgesMoved(
    panel.outline,
    edges.map((edge) => edge.oversizeMm),
  );
  return {
    panelId: panel.id,
    mark: panel.mark,
    name: panel.name,
    materialId: panel.materialId,
    thicknessMm: panel.thicknessMm,
    quantity: panel.quantity,
    finishedLengthMm: panel.lengthMm,
    finishedWidthMm: panel.widthMm,
    smallerFace: smallerFace(panel),
    blankLengthMm: blank.lengthMm,
    blankWidthMm: blank.widthMm,
    isRectangle: isRectangle(panel),
    outline: [...panel.outline],
    edges,
    holes: [...panel.holes],
    grain: panel.grain,
    mirror: mirrorNote(panel, earlier),
    massKg: panel.massKg,
    totalMassKg: panel.massKg * panel.quantity,
  };
}

function toCutEdge(panel: Panel, index: number, settings: CutSettings): CutEdge {
  const edge = panel.edges[index];
  const bevelRad = edge === undefined || edge.bevelRad < SQUARE_RAD ? 0 : edge.bevelRad;
  const bevelDeg = bevelRad * DEGREES_PER_RADIAN;
  return {
    lengthMm: edgeLengthMm(panel.outline, index),
    bevelDeg,
    exceedsTilt: bevelDeg > settings.bladeMaxTiltDeg + TILT_SLACK_DEG,
    oversizeMm: edge?.runsThrough ? settings.oversizeMm : 0,
    ...(edge?.rabbet === undefined ? {} : { rebate: edge.rabbet }),
  };
}

/** A bevel takes thickness x tan(bevel) off the smaller face, square to the edge. */
function smallerFace(panel: Panel): CutListRow['smallerFace'] {
  if (panel.edges.every((edge) => edge.bevelRad < SQUARE_RAD)) return null;
  const inwardMm = panel.outline.map(
    (_, index) => -panel.thicknessMm * Math.tan(panel.edges[index]?.bevelRad ?? 0),
  );
  return sizeWithEdgesMoved(panel.outline, inwardMm);
}

function isRectangle(panel: Panel): boolean {
  return panel.outline.every((corner) => {
    const onSide = Math.min(Math.abs(corner.xMm), Math.abs(panel.lengthMm - corner.xMm)) <= RECTANGLE_MM;
    const onEnd = Math.min(Math.abs(corner.yMm), Math.abs(panel.widthMm - corner.yMm)) <= RECTANGLE_MM;
    return onSide && onEnd;
  });
}

function byStockThenMark(one: Panel, two: Panel): number {
  return (
    compareText(one.materialId, two.materialId) ||
    two.thicknessMm - one.thicknessMm ||
    one.mark.localeCompare(two.mark, 'en', { numeric: true }) ||
    compareText(one.id, two.id)
  );
}

function compareText(one: string, two: string): number {
  return one < two ? -1 : one > two ? 1 : 0;
}
