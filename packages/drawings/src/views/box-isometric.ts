// A box in isometric projection (ISO 5456-3) from its faces: faces that look away are dropped, the others are laid
// from the back to the front so that nearer ones cover farther ones. Exact for a box whose faces do not interlock.
import { hatch, polygon, text } from '../scene/items.ts';
import type { Layer, Scene, SceneItem } from '../scene/scene.ts';
import { between, distance, extentOf, middleOf, type Spot, spot } from '../scene/spot.ts';
import { type DrawingView, withDefaults } from './drawing-view.ts';

/** x toward the opening, y up, z across the width; millimetres. */
export type Point3Mm = { readonly xMm: number; readonly yMm: number; readonly zMm: number };

export type DrawnFace = {
  readonly name: string;
  /** In one plane, anticlockwise seen from outside. */
  readonly corners: readonly Point3Mm[];
  /** Rings of openings in the same plane (a circle as its polygon). */
  readonly openings: readonly (readonly Point3Mm[])[];
  /** Letter in a balloon; null = none. */
  readonly mark: string | null;
  readonly hatched: boolean;
};

export type BoxIsometricInput = {
  readonly title: string;
  readonly description: string;
  readonly faces: readonly DrawnFace[];
  /** Which corner of the world the reader stands at: the opening side, to the left or right of the box. */
  readonly from: 'right' | 'left';
  readonly notes: readonly { readonly at: Point3Mm; readonly text: string }[];
};

const COSINE_30 = Math.sqrt(3) / 2;
const EDGE_ON = 1e-6; // share of a face's own size seen: anything less is an edge
const MARGIN_PT = 30;

/** Unscaled projection, y down, and how near the point is to the reader. */
function project({ xMm, yMm, zMm }: Point3Mm, from: BoxIsometricInput['from']): { at: Spot; near: number } {
  const [side, mirrored] = from === 'right' ? [zMm, 1] : [-zMm, -1];
  // The reader looks along (-1, -1, -1) in (x, y, side); seen from the other side, right and left change places.
  return { at: spot(mirrored * (xMm - side) * COSINE_30, (xMm + side) / 2 - yMm), near: xMm + side + yMm };
}

type SeenFace = {
  readonly face: DrawnFace;
  readonly ring: readonly Spot[];
  readonly near: number;
  readonly seen: number;
};

export function boxIsometric(input: BoxIsometricInput, partial: Partial<DrawingView> = {}): Scene {
  const view = withDefaults(partial);
  const seen = input.faces.map((face) => seenFace(face, input.from)).filter((face) => face.seen > EDGE_ON);
  const painted = [...seen].sort((a, b) => a.near - b.near || a.face.name.localeCompare(b.face.name, 'en'));
  const spread = fitFlat(
    input.faces.flatMap(({ corners }) => corners.map((corner) => project(corner, input.from).at)),
    view,
  );
  const at = (point: Point3Mm): Spot => spread(project(point, input.from).at);
  const layers: Layer[] = [
    { id: 'faces', items: painted.flatMap(({ face }) => faceItems(face, at)) },
    { id: 'marks', items: painted.flatMap(({ face }) => markItems(face, at)) },
    { id: 'notes', items: input.notes.map((note) => noteItem(at(note.at), note.text, view)) },
  ];
  return {
    title: input.title,
    description: input.description,
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    world: null,
    scaleLabel: null,
    layers: layers.filter(({ items }) => items.length > 0),
  };
}

/** `seen` is the projected area with its sign (positive = facing the reader) as a share of the face's rectangle. */
function seenFace(face: DrawnFace, from: BoxIsometricInput['from']): SeenFace {
  const points = face.corners.map((corner) => project(corner, from));
  const ring = points.map(({ at }) => at);
  const near = points.reduce((sum, point) => sum + point.near, 0) / Math.max(points.length, 1);
  const mirrored = from === 'left' ? -1 : 1;
  const facing = facingShare(face.corners, mirrored);
  return { face, ring, near, seen: facing };
}

/** Cosine between the face's outward normal (Newell) and the way to the reader. */
function facingShare(corners: readonly Point3Mm[], mirrored: number): number {
  let [x, y, z] = [0, 0, 0];
  corners.forEach((a, index) => {
    const b = corners[(index + 1) % corners.length] ?? a;
    x += (a.yMm - b.yMm) * (a.zMm + b.zMm);
    y += (a.zMm - b.zMm) * (a.xMm + b.xMm);
    z += (a.xMm - b.xMm) * (a.yMm + b.yMm);
  });
  const length = Math.hypot(x, y, z);
  return length === 0 ? 0 : (x + y + z * mirrored) / (length * Math.sqrt(3));
}

function fitFlat(spots: readonly Spot[], view: DrawingView): (at: Spot) => Spot {
  const extent = extentOf(spots) ?? { left: 0, top: 0, right: 1, bottom: 1 };
  const width = Math.max(extent.right - extent.left, 1);
  const height = Math.max(extent.bottom - extent.top, 1);
  const scale = Math.min((view.widthPt - 2 * MARGIN_PT) / width, (view.heightPt - 2 * MARGIN_PT) / height);
  const middle = spot((extent.left + extent.right) / 2, (extent.top + extent.bottom) / 2);
  return ({ x, y }) =>
    spot(view.widthPt / 2 + (x - middle.x) * scale, view.heightPt / 2 + (y - middle.y) * scale);
}

function faceItems(face: DrawnFace, at: (point: Point3Mm) => Spot): SceneItem[] {
  const ring = face.corners.map(at);
  const openings = face.openings.map((opening) => opening.map(at));
  const wash: SceneItem[] = face.hatched ? [hatch([ring, ...openings], 'panel')] : [];
  return [
    polygon(ring, null, 'sheet'),
    ...wash,
    polygon(ring, 'outline'),
    ...openings.map((opening) => polygon(opening, 'thin', 'sheet')),
  ];
}

function markItems({ mark, corners, openings }: DrawnFace, at: (point: Point3Mm) => Spot): SceneItem[] {
  if (mark === null) return [];
  return [
    {
      kind: 'balloon',
      centre: freeSpot(
        corners.map(at),
        openings.map((opening) => middleOf(opening.map(at))),
      ),
      letter: mark,
      radiusPt: 10,
      active: false,
      key: null,
    },
  ];
}

/** The middle of a face, or of the quarter that lies farthest from its openings. */
function freeSpot(ring: readonly Spot[], openings: readonly Spot[]): Spot {
  const middle = middleOf(ring);
  if (openings.length === 0) return middle;
  const room = (at: Spot): number => Math.min(...openings.map((opening) => distance(opening, at)));
  const quarters = ring.map((corner) => between(middle, corner, 0.6));
  return quarters.reduce((best, quarter) => (room(quarter) > room(best) ? quarter : best), middle);
}

function noteItem(at: Spot, words: string, view: DrawingView): SceneItem {
  return text(at, words, { sizePt: view.textPt, face: 'mono', anchor: 'middle', backed: true });
}
