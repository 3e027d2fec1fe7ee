// Bevelled edges by blade tilt and fence distance: the blade is tilted once for every panel that wants it so.
import type { BevelCut, BevelSetUp, CutListRow } from '@gusset/contracts/cutting';
import { SAME_SETTING_MM } from './order-cuts.ts';

const SAME_TILT_DEG = 0.05;
/** Edges this close to parallel run on a fence, as the sine between them. */
const PARALLEL_SINE = 1e-4;
const RIGHT_ANGLE_DEG = 90;

type Edge = {
  readonly fromX: number;
  readonly fromY: number;
  readonly alongX: number;
  readonly alongY: number;
};

/**
 * Steepest last, so that the blade goes one way; within a tilt the widest setting first.
 * @param bladeMaxTiltDeg how far this saw tilts from square
 */
export function bevelSetUps(rows: readonly CutListRow[], bladeMaxTiltDeg: number): readonly BevelSetUp[] {
  const wanted = rows.flatMap((row) =>
    row.edges.flatMap((edge, index): readonly (Omit<BevelSetUp, 'cuts'> & { readonly cut: BevelCut })[] => {
      if (edge.bevelDeg === 0) return [];
      const cut: BevelCut = {
        panelId: row.panelId,
        mark: row.mark,
        pieces: row.quantity,
        edge: index,
        lengthMm: edge.lengthMm,
      };
      return [
        {
          ...machineFor(edge.bevelDeg, bladeMaxTiltDeg),
          bevelDeg: edge.bevelDeg,
          fenceMm: fenceFor(row, index),
          cut,
        },
      ];
    }),
  );
  const setUps: (Omit<BevelSetUp, 'cuts'> & { readonly cuts: BevelCut[] })[] = [];
  for (const { cut, ...setting } of wanted.toSorted(bySetting)) {
    const last = setUps.at(-1);
    if (last !== undefined && isSameSetting(last, setting)) last.cuts.push(cut);
    else setUps.push({ ...setting, cuts: [cut] });
  }
  return setUps;
}

/** A bevel beyond the saw's tilt is cut with the panel on edge: the blade then tilts by what is left to 90°. */
function machineFor(bevelDeg: number, maxDeg: number): Pick<BevelSetUp, 'how' | 'tiltDeg'> {
  if (bevelDeg <= maxDeg + SAME_TILT_DEG) return { how: 'flat', tiltDeg: bevelDeg };
  const onEdgeDeg = RIGHT_ANGLE_DEG - bevelDeg;
  return onEdgeDeg <= maxDeg ? { how: 'on-edge', tiltDeg: onEdgeDeg } : { how: 'other-way', tiltDeg: null };
}

/** Across the panel to the edge that runs on the fence, with what that edge still has to be trimmed. */
function fenceFor({ outline, edges }: CutListRow, index: number): number | null {
  const edge = edgeOf(outline, index);
  let acrossMm: number | null = null;
  outline.forEach((_, other) => {
    const across = edgeOf(outline, other);
    const isParallel = Math.abs(edge.alongX * across.alongY - edge.alongY * across.alongX) < PARALLEL_SINE;
    const isOpposite = edge.alongX * across.alongX + edge.alongY * across.alongY < 0;
    if (other === index || !isParallel || !isOpposite) return;
    const mm =
      Math.abs((across.fromX - edge.fromX) * edge.alongY - (across.fromY - edge.fromY) * edge.alongX) +
      (edges[other]?.oversizeMm ?? 0);
    acrossMm = Math.max(acrossMm ?? 0, mm);
  });
  return acrossMm;
}

function edgeOf(outline: CutListRow['outline'], index: number): Edge {
  const from = outline[index] ?? { xMm: 0, yMm: 0 };
  const to = outline[(index + 1) % outline.length] ?? from;
  const length = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) || 1;
  return {
    fromX: from.xMm,
    fromY: from.yMm,
    alongX: (to.xMm - from.xMm) / length,
    alongY: (to.yMm - from.yMm) / length,
  };
}

type Setting = Pick<BevelSetUp, 'how' | 'bevelDeg' | 'fenceMm'>;

function bySetting(one: Setting, two: Setting): number {
  return one.bevelDeg - two.bevelDeg || (two.fenceMm ?? -1) - (one.fenceMm ?? -1);
}

function isSameSetting(one: Setting, two: Setting): boolean {
  const isSameFence =
    one.fenceMm === null || two.fenceMm === null
      ? one.fenceMm === two.fenceMm
      : Math.abs(one.fenceMm - two.fenceMm) <= SAME_SETTING_MM;
  return one.how === two.how && Math.abs(one.bevelDeg - two.bevelDeg) <= SAME_TILT_DEG && isSameFence;
}
