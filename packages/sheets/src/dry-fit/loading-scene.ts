// Side section of the car with the box in its place, anywhere on its way, and ghosts of the whole way.
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { CavityResult } from '@gusset/contracts/cargo';
import type { LoadingAnswer } from '@gusset/contracts/dry-fit-sheet';
import type { Pose } from '@gusset/contracts/geometry';
import {
  cavitySection,
  circle,
  type DrawingView,
  placeInFrame,
  polygon,
  posed,
  SCREEN_VIEW,
  type Scene,
} from '@gusset/drawings';
import { poseBetween } from './tight-place.ts';

const MOST_GHOSTS = 7;
const MARK_RADIUS_PT = 9;

/** The box's pose when `share` of the way out is behind it: 0 = in its place, 1 = outside. */
export function poseOnWay(path: readonly Pose[], share: number): Pose | null {
  const first = path[0];
  if (first === undefined) return null;
  const lengths = path.slice(1).map((to, index) => legLength(path[index] ?? to, to));
  const total = lengths.reduce((sum, length) => sum + length, 0);
  let left = Math.min(1, Math.max(0, share)) * total;
  for (const [index, length] of lengths.entries()) {
    const [from, to] = [path[index], path[index + 1]];
    if (from === undefined || to === undefined) break;
    if (left <= length) return poseBetween(from, to, length === 0 ? 1 : left / length);
    left -= length;
  }
  return path.at(-1) ?? first;
}

/** How far along the way, 0 to 1, the tightest place is. */
export function shareOfTightest(path: readonly Pose[], tightest: Pose): number {
  const STEPS = 400;
  let best = { share: 0, off: Number.POSITIVE_INFINITY };
  for (let step = 0; step <= STEPS; step++) {
    const pose = poseOnWay(path, step / STEPS);
    const off = pose === null ? Number.POSITIVE_INFINITY : legLength(pose, tightest);
    if (off < best.off) best = { share: step / STEPS, off };
  }
  return best.share;
}

/** A turn counts as far as it moves a point half a metre off. */
const ARM_MM = 500;

function legLength(from: Pose, to: Pose): number {
  return Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) + ARM_MM * Math.abs(to.thetaRad - from.thetaRad);
}

export type LoadingSceneInput = {
  readonly result: Pick<BoxSheetResult, 'box' | 'place'>;
  readonly cavity: CavityResult;
  readonly answer: LoadingAnswer | null;
  /** How much of the way out is behind it. */
  readonly share: number;
};

export function loadingScene(
  { result, cavity, answer, share }: LoadingSceneInput,
  partial: Partial<DrawingView> = {},
): Scene {
  const view = { ...SCREEN_VIEW, ...partial };
  const path = answer?.path ?? [];
  const rest: Pose = result.place?.pose ?? { xMm: 0, yMm: 0, thetaRad: 0, zMm: 0 };
  const now = poseOnWay(path, share) ?? rest;
  const outer = result.box.section.finished;
  const scene = cavitySection(
    {
      title: 'The way in and out, side section',
      description: 'Car, box in its place, and the outlines it passes through.',
      edges: cavity.walls.map((wall, index) => ({
        from: cavity.polygon[index] ?? { xMm: 0, yMm: 0 },
        to: cavity.polygon[(index + 1) % cavity.polygon.length] ?? { xMm: 0, yMm: 0 },
        name: wall.name,
        kind: wall.surface === 'hard' ? 'rigid' : wall.surface,
      })),
      // What counts in place only is not in the way.
      obstructions: cavity.obstructions
        .filter(({ appliesTo }) => appliesTo !== 'fit')
        .map(({ name, polygon: outline }) => ({ name, outline })),
      opening: {
        from: cavity.opening.from,
        to: cavity.opening.to,
        text: `opening ${view.formatLength(cavity.opening.heightMm)}`,
      },
      labels: [],
      box: { outer, inner: null, pose: rest },
      wayOut: { poses: ghosts(path), track: [] },
      clearances: [],
    },
    view,
  );
  const { world } = scene;
  if (world === null) return scene;
  const place = (point: { readonly xMm: number; readonly yMm: number }) => placeInFrame(world, point);
  const moving = polygon(posed(outer, now).map(place), { role: 'construction', dashPt: null, widthPt: 2.4 });
  const tightest = answer?.tightest ?? null;
  const marks =
    tightest === null
      ? []
      : [
          polygon(posed(outer, tightest.pose).map(place), { role: 'pencil', dashPt: null, widthPt: 1.1 }),
          circle(place(tightest.at[1]), MARK_RADIUS_PT, { role: 'pencil', dashPt: null, widthPt: 1.6 }),
        ];
  return {
    ...scene,
    layers: [...scene.layers, { id: 'tightest', items: marks }, { id: 'moving', items: [moving] }].filter(
      ({ items }) => items.length > 0,
    ),
  };
}

/** Evenly along the way, both ends included. */
function ghosts(path: readonly Pose[]): Pose[] {
  if (path.length === 0) return [];
  return Array.from({ length: MOST_GHOSTS }, (_, index) => poseOnWay(path, index / (MOST_GHOSTS - 1))).filter(
    (pose) => pose !== null,
  );
}
