// Left and right of a box are often mirror images. Where they differ when turned over, the saw and the drill must
// be set for each hand, and the list says so.
import type { MirrorNote } from '@gusset/contracts/cutting';
import type { Panel } from '@gusset/contracts/panel';

/** Two features of a panel closer than this are the same to a saw (± 0.5 mm) and to a router (± 0.2 mm). */
const SAME_PLACE_MM = 0.05;
/** Finer than any blade scale reads. */
const SAME_BEVEL_RAD = 1e-4;

/** A point of the panel with what is made there: an edge's middle with its bevel, or a hole's centre. */
type Feature = {
  readonly kind: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly sizesMm: readonly number[];
  readonly bevelRad: number;
};

/** The earliest panel that `panel` is a mirror image of, without being the same piece. */
export function mirrorNote(panel: Panel, others: readonly Panel[]): MirrorNote | null {
  const partner = others.find((other) => other.id !== panel.id && isMirrorPair(panel, other));
  if (partner === undefined) return null;
  return { mark: partner.mark, sameWhenTurnedOver: !hasHand(panel) };
}

/** Bevels and blind holes tell one face from the other; without them, turning over makes the mirror image. */
function hasHand(panel: Panel): boolean {
  return (
    panel.edges.some((edge) => edge.bevelRad > SAME_BEVEL_RAD) ||
    panel.holes.some((hole) => hole.depthMm !== null)
  );
}

function isMirrorPair(panel: Panel, other: Panel): boolean {
  const sameStock =
    panel.materialId === other.materialId &&
    isNear(panel.thicknessMm, other.thicknessMm) &&
    isNear(panel.lengthMm, other.lengthMm) &&
    isNear(panel.widthMm, other.widthMm);
  if (!sameStock) return false;
  const own = features(panel);
  const theirs = features(other);
  const isSamePiece = matches(own, theirs) || matches(turned(own, panel), theirs);
  if (isSamePiece) return false;
  const mirrored = own.map((feature) => ({ ...feature, xMm: panel.lengthMm - feature.xMm }));
  return matches(mirrored, theirs) || matches(turned(mirrored, panel), theirs);
}

function turned(list: readonly Feature[], panel: Panel): readonly Feature[] {
  return list.map((feature) => ({
    ...feature,
    xMm: panel.lengthMm - feature.xMm,
    yMm: panel.widthMm - feature.yMm,
  }));
}

function features(panel: Panel): readonly Feature[] {
  const edges = panel.outline.map((from, index): Feature => {
    const to = panel.outline[(index + 1) % panel.outline.length] ?? from;
    return {
      kind: 'edge',
      xMm: (from.xMm + to.xMm) / 2,
      yMm: (from.yMm + to.yMm) / 2,
      sizesMm: [Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)],
      bevelRad: panel.edges[index]?.bevelRad ?? 0,
    };
  });
  const holes = panel.holes.map(
    (hole): Feature => ({
      kind: `${hole.shape} ${hole.depthMm === null ? 'through' : 'blind'}`,
      xMm: hole.centreXMm,
      yMm: hole.centreYMm,
      sizesMm: [
        ...(hole.shape === 'circle' ? [hole.diameterMm] : [hole.widthMm, hole.heightMm, hole.cornerRadiusMm]),
        hole.depthMm ?? 0,
      ],
      bevelRad: 0,
    }),
  );
  return [...edges, ...holes];
}

function matches(left: readonly Feature[], right: readonly Feature[]): boolean {
  return left.length === right.length && left.every((one) => right.some((two) => isSameFeature(one, two)));
}

function isSameFeature(one: Feature, two: Feature): boolean {
  return (
    one.kind === two.kind &&
    isNear(one.xMm, two.xMm) &&
    isNear(one.yMm, two.yMm) &&
    one.sizesMm.every((size, index) => isNear(size, two.sizesMm[index] ?? Number.NEGATIVE_INFINITY)) &&
    Math.abs(one.bevelRad - two.bevelRad) <= SAME_BEVEL_RAD
  );
}

function isNear(oneMm: number, twoMm: number): boolean {
  return Math.abs(oneMm - twoMm) <= SAME_PLACE_MM;
}
