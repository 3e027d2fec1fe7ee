// Side section on the centre line: the car, the box in it with its boards hatched turn about, gaps and sizes.
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { CavityResult, SurfaceClearance } from '@gusset/contracts/cargo';
import type { PointMm, PolygonMm, Pose } from '@gusset/contracts/geometry';
import {
  boxSection,
  cavitySection,
  type DrawingView,
  type DrawnClearance,
  type DrawnDimension,
  hatch,
  type Layer,
  placeInFrame,
  polygon,
  posed,
  SCREEN_VIEW,
  type Scene,
  type SceneItem,
  text,
} from '@gusset/drawings';
import { AT_ORIGIN, at, poseIn, wallEnds } from './box-outline.ts';

/** Dimension lines stand off the box this far, past the hatched band of a floor. */
const OFFSET_PT = 38;
/** Inside of the whole height, which stands further off. */
const KNEE_OFFSET_PT = 16;
const MOST_NOTES = 4;

export function boxSectionScene(
  result: BoxSheetResult,
  cavity: CavityResult | null,
  partial: Partial<DrawingView> = {},
): Scene {
  const view = { ...SCREEN_VIEW, ...partial };
  return cavity === null || result.place === null ? alone(result, view) : inTheCar(result, cavity, view);
}

const netWords = ({ box }: BoxSheetResult) => `net ${box.volumes.netLitres.toFixed(1)} L`;

function describe(result: BoxSheetResult, { formatLength }: DrawingView): string {
  const { depthMm, heightMm } = result.box.sizes.carcass;
  return `Box ${formatLength(depthMm)} deep and ${formatLength(heightMm)} high, ${netWords(result)}.`;
}

function alone(result: BoxSheetResult, view: DrawingView): Scene {
  const { bodies, drivers, section } = result.box;
  const centre = middleOf(section.inner);
  return boxSection(
    {
      title: 'Side section on centre line',
      description: describe(result, view),
      parts: [
        ...bodies.flatMap((body) =>
          body.section === null ? [] : [{ mark: null, outline: body.section, standing: 'cut' as const }],
        ),
        ...drivers
          .slice(0, 1)
          .map((driver) => ({ mark: null, outline: driver.section, standing: 'hidden' as const })),
      ],
      centreLines: [],
      dimensions: sizes(result, AT_ORIGIN),
      notes: [{ at: centre, text: netWords(result) }],
    },
    view,
  );
}

function inTheCar(result: BoxSheetResult, cavity: CavityResult, view: DrawingView): Scene {
  const pose = poseIn(result);
  const scene = cavitySection(
    {
      title: 'Side section on centre line',
      description: describe(result, view),
      edges: cavity.walls.map((wall, index) => ({
        from: cavity.polygon[index] ?? at(0, 0),
        to: cavity.polygon[(index + 1) % cavity.polygon.length] ?? at(0, 0),
        name: wall.name,
        kind: wall.surface === 'hard' ? 'rigid' : wall.surface,
      })),
      obstructions: [
        ...cavity.obstructions.map(({ name, polygon: outline }) => ({ name, outline })),
        ...cavity.keepFree.map(({ name, polygon: outline }) => ({ name: `keep free: ${name}`, outline })),
      ],
      opening: {
        from: cavity.opening.from,
        to: cavity.opening.to,
        text: `opening ${view.formatLength(cavity.opening.heightMm)}`,
      },
      labels: [],
      box: { outer: result.box.section.finished, inner: null, pose },
      wayOut: null,
      clearances: notes(result, view),
      dimensions: sizes(result, pose),
    },
    view,
  );
  const { world } = scene;
  if (world === null) return scene;
  const place = (ring: PolygonMm) => posed(ring, pose).map((point) => placeInFrame(world, point));
  const boards = result.box.bodies.flatMap((body) => (body.section === null ? [] : [body.section]));
  const boxLayer: Layer = {
    id: 'boards',
    items: [
      ...boards.flatMap((ring, index): SceneItem[] => [
        polygon(place(ring), null, 'sheet'),
        hatch([place(ring)], index % 2 === 0 ? 'panel' : 'counter-panel'),
        polygon(place(ring), 'thin'),
      ]),
      ...result.box.drivers.slice(0, 1).map((driver) => polygon(place(driver.section), 'hidden')),
      ...words(result, place, view.textPt),
    ],
  };
  const boxAt = scene.layers.findIndex(({ id }) => id === 'box');
  const layers = [...scene.layers.slice(0, boxAt + 1), boxLayer, ...scene.layers.slice(boxAt + 1)];
  return { ...scene, layers };
}

function words(
  result: BoxSheetResult,
  place: (ring: PolygonMm) => readonly { x: number; y: number }[],
  sizePt: number,
): SceneItem[] {
  const [middle] = place([middleOf(result.box.section.inner)]);
  if (middle === undefined) return [];
  return [
    text(middle, netWords(result), {
      sizePt,
      face: 'mono',
      anchor: 'middle',
      ink: 'ink-2',
      backed: true,
    }),
  ];
}

/** Depth along the floor, height at the front, depth at the top of a wedge: each the field that changes it. */
function sizes(result: BoxSheetResult, pose: Pose): readonly DrawnDimension[] {
  const { depthMm, heightMm } = result.box.sizes.carcass;
  const [low, high] = posed([at(depthMm, 0), at(depthMm, heightMm)], pose);
  const bottom = wallEnds(result, 'bottom', pose);
  const top = wallEnds(result, 'top', pose);
  const dimensions: DrawnDimension[] = [];
  const plain = { text: null, failing: false };
  if (bottom !== null) {
    const [from, to] = rightToLeft(bottom);
    dimensions.push({ from, to, ...plain, offsetPt: OFFSET_PT, key: 'outside.depth' });
  }
  if (low !== undefined && high !== undefined) {
    dimensions.push({ from: high, to: low, ...plain, offsetPt: OFFSET_PT, key: 'outside.height' });
  }
  const { shape } = result.design;
  if (top !== null && shape.kind !== 'rectangular') {
    const [to, from] = rightToLeft(top);
    dimensions.push({ from, to, ...plain, offsetPt: OFFSET_PT, key: 'outside.depthTop' });
  }
  const knee = kneeOf(shape);
  if (knee !== null) {
    const [foot, at0] = posed([at(knee.xMm, 0), knee], pose);
    if (foot !== undefined && at0 !== undefined) {
      const ends = knee.xMm > depthMm / 2 ? { from: at0, to: foot } : { from: foot, to: at0 };
      dimensions.push({ ...ends, ...plain, offsetPt: KNEE_OFFSET_PT, key: 'outside.kneeHeight' });
    }
  }
  return dimensions;
}

/** Where the upright below a clipped corner or above an L's foot begins; null for boxes without. */
function kneeOf(shape: BoxSheetResult['design']['shape']): PointMm | null {
  if (shape.kind === 'clipped-wedge') {
    return at(shape.slopedFace === 'front' ? shape.depthBottomMm : 0, shape.kneeHeightMm);
  }
  if (shape.kind !== 'profile') return null;
  const ledge = shape.walls.findIndex(({ face }) => face === 'slope-2');
  const corner = shape.walls[ledge];
  const after = shape.walls[(ledge + 1) % shape.walls.length];
  if (corner === undefined || after === undefined) return null;
  // The outer end of the ledge: where the foot ends.
  const outer = corner.xMm > 0 && corner.xMm >= after.xMm && after.face === 'slope-1' ? corner : after;
  return at(outer.xMm, outer.yMm);
}

function rightToLeft([a, b]: NonNullable<ReturnType<typeof wallEnds>>) {
  return a.xMm >= b.xMm ? ([a, b] as const) : ([b, a] as const);
}

function middleOf(ring: PolygonMm) {
  const sum = ring.reduce((total, point) => at(total.xMm + point.xMm, total.yMm + point.yMm), at(0, 0));
  return at(sum.xMm / ring.length, sum.yMm / ring.length);
}

/** The tightest first, then whatever is not clear; sides are shown from above. */
function notes(result: BoxSheetResult, view: DrawingView): readonly DrawnClearance[] {
  const clearances = result.place?.placement.clearances ?? [];
  const shown = clearances.filter(({ surface, rests }) => surface.type !== 'side' && !rests);
  return shown
    .filter((clearance, index) => index === 0 || clearance.verdict !== 'clear')
    .slice(0, MOST_NOTES)
    .map((clearance, index) => clearanceNote(clearance, view, index === 0));
}

const NOTE_VERDICTS = { clear: 'ok', tight: 'check', touches: 'fails' } as const;

export function clearanceNote(
  { at: [onBox, onSurface], clearanceMm, surface, verdict }: SurfaceClearance,
  { formatLength }: DrawingView,
  isTightest: boolean,
): DrawnClearance {
  const figure =
    clearanceMm < 0 ? `${formatLength(-clearanceMm)} too far` : formatLength(Math.max(0, clearanceMm));
  return {
    from: onBox,
    to: onSurface,
    text: [isTightest ? `tightest ${figure}` : figure, surface.name.toLowerCase()],
    verdict: NOTE_VERDICTS[verdict],
  };
}
