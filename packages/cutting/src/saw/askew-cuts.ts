// Cuts along no edge of the blank: slopes of a wedge's sides, clipped corners, notches. With sled, guide rail or a
// straightedge, as the table's fence has no edge to hold against.
import type { AskewCut, CutListRow } from '@gusset/contracts/cutting';
import type { PointMm } from '@gusset/contracts/geometry';

const ON_BLANK_MM = 0.01;
const DEGREES_PER_RADIAN = 180 / Math.PI;
const HALF_TURN_DEG = 180;
/** A corner that turns the other way, as the sine between its edges. */
const HOLLOW_SINE = -1e-6;

/**
 * Every edge of the outline that is not one of the blank's.
 * @param baseToBladeMm from the edge of the saw's base that runs along the straightedge to the blade; 0 for a guide rail
 *   whose edge is the line of cut
 */
export function askewCuts(rows: readonly CutListRow[], baseToBladeMm: number): readonly AskewCut[] {
  return rows.filter(({ isRectangle }) => !isRectangle).flatMap((row) => cutsOf(row, baseToBladeMm));
}

function cutsOf(row: CutListRow, baseToBladeMm: number): readonly AskewCut[] {
  const { outline, finishedLengthMm, finishedWidthMm } = row;
  return outline.flatMap((from, edge): readonly AskewCut[] => {
    const to = cornerAt(outline, edge + 1);
    if (isOnBlank(from, to, finishedLengthMm, finishedWidthMm)) return [];
    const lengthMm = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
    if (lengthMm < ON_BLANK_MM) return [];
    // The outline runs counter-clockwise, so the wood that stays lies to the left of each edge.
    const inX = (-(to.yMm - from.yMm) / lengthMm) * baseToBladeMm;
    const inY = ((to.xMm - from.xMm) / lengthMm) * baseToBladeMm;
    const turned = Math.atan2(to.yMm - from.yMm, to.xMm - from.xMm) * DEGREES_PER_RADIAN;
    return [
      {
        panelId: row.panelId,
        mark: row.mark,
        pieces: row.quantity,
        edge,
        from,
        to,
        lengthMm,
        angleDeg: ((turned % HALF_TURN_DEG) + HALF_TURN_DEG) % HALF_TURN_DEG,
        bevelDeg: row.edges[edge]?.bevelDeg ?? 0,
        guideFrom: { xMm: from.xMm + inX, yMm: from.yMm + inY },
        guideTo: { xMm: to.xMm + inX, yMm: to.yMm + inY },
        stopsAtStart: isHollow(outline, edge),
        stopsAtEnd: isHollow(outline, edge + 1),
      },
    ];
  });
}

function isOnBlank(from: PointMm, to: PointMm, lengthMm: number, widthMm: number): boolean {
  const both = (pick: (point: PointMm) => number, at: number) =>
    Math.abs(pick(from) - at) < ON_BLANK_MM && Math.abs(pick(to) - at) < ON_BLANK_MM;
  return (
    both((point) => point.xMm, 0) ||
    both((point) => point.xMm, lengthMm) ||
    both((point) => point.yMm, 0) ||
    both((point) => point.yMm, widthMm)
  );
}

function isHollow(outline: CutListRow['outline'], index: number): boolean {
  const before = cornerAt(outline, index - 1);
  const at = cornerAt(outline, index);
  const after = cornerAt(outline, index + 1);
  const one = { x: at.xMm - before.xMm, y: at.yMm - before.yMm };
  const two = { x: after.xMm - at.xMm, y: after.yMm - at.yMm };
  const lengths = Math.hypot(one.x, one.y) * Math.hypot(two.x, two.y) || 1;
  return (one.x * two.y - one.y * two.x) / lengths < HOLLOW_SINE;
}

function cornerAt(outline: CutListRow['outline'], index: number): PointMm {
  return outline[(index + outline.length) % outline.length] ?? { xMm: 0, yMm: 0 };
}
