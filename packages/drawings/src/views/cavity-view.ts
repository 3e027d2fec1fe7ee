// A vehicle's cargo space with what stands in it, from the side (x toward the opening, y up) and from above.
import type { PointMm, PolygonMm, Pose } from '@gusset/contracts/geometry';
import { hatch, line, polygon, polyline, region, text } from '../scene/items.ts';
import type { DimensionItem, Layer, Scene, SceneItem } from '../scene/scene.ts';
import {
  add,
  between,
  direction,
  type Extent,
  extentOf,
  leftOf,
  middleOf,
  type Spot,
  spot,
  times,
} from '../scene/spot.ts';
import { textWidthPt } from '../text/text-width.ts';
import { clearanceItems, type DrawnClearance } from './clearance-notes.ts';
import { type DrawingView, fitWorld, withDefaults } from './drawing-view.ts';
import { type Ground, ringSides } from './note-places.ts';
import { type DrawnDimension, dimensionOf } from './placed-dimensions.ts';
import { type DrawnLabel, labelItems } from './survey-labels.ts';
import {
  type DrawnEdge,
  type DrawnObstruction,
  obstructionName,
  placedObstruction,
  wallItems,
} from './vehicle-outline.ts';

export type DrawnBox = {
  readonly outer: PolygonMm;
  /** Null = drawn as one piece. */
  readonly inner: PolygonMm | null;
  readonly pose: Pose;
};

/** Poses and track of the box on its way out, as the program worked them out. */
export type DrawnWayOut = { readonly poses: readonly Pose[]; readonly track: readonly PointMm[] };

export type CavityViewInput = {
  readonly title: string;
  readonly description: string;
  /** In order round the cavity, each starting where the last ended. */
  readonly edges: readonly DrawnEdge[];
  readonly obstructions: readonly DrawnObstruction[];
  readonly opening: { readonly from: PointMm; readonly to: PointMm; readonly text: string } | null;
  readonly labels: readonly DrawnLabel[];
  readonly box: DrawnBox | null;
  readonly wayOut: DrawnWayOut | null;
  readonly clearances: readonly DrawnClearance[];
  /** Sizes of the box in the section's own millimetres; notes keep clear of them. */
  readonly dimensions?: readonly DrawnDimension[];
};

const BAND_PT = 11;
const MARGIN_PT = 62; // band, one row of survey labels, their letters
const FULL_SIZE_PT = 640; // drawings narrower than this shrink what stands round the cavity
const SMALLEST_SHRINK = 0.6;

/** Side section on the centre line. */
export function cavitySection(input: CavityViewInput, view: Partial<DrawingView> = {}): Scene {
  return cavityScene(input, withDefaults(view), []);
}

/** From above: x toward the opening, y across the width, centre line at y = 0. */
export function cavityPlan(input: CavityViewInput, view: Partial<DrawingView> = {}): Scene {
  const xs = input.edges.flatMap(({ from, to }) => [from.xMm, to.xMm]);
  if (xs.length === 0) return cavityScene(input, withDefaults(view), []);
  const axis: [PointMm, PointMm] = [
    { xMm: Math.min(...xs), yMm: 0 },
    { xMm: Math.max(...xs), yMm: 0 },
  ];
  return cavityScene(input, withDefaults(view), [axis]);
}

function cavityScene(input: CavityViewInput, view: DrawingView, axes: readonly [PointMm, PointMm][]): Scene {
  const shrink = Math.min(1, Math.max(SMALLEST_SHRINK, view.widthPt / FULL_SIZE_PT));
  const margin = MARGIN_PT * shrink + view.textPt;
  const fitted = fitWorld(worldPoints(input), view, {
    left: margin,
    top: margin,
    right: margin,
    bottom: margin,
  });
  const { place } = fitted;
  const ring = input.edges.map(({ from }) => place(from));
  const boxRing = input.box === null ? null : posed(input.box.outer, input.box.pose).map(place);
  const walls = wallItems(input.edges, place, BAND_PT * shrink);
  const obstructions = input.obstructions.map((each) => placedObstruction(each, place));
  const sizes = (input.dimensions ?? []).map((drawn) => dimensionOf(drawn, place, view));
  const opening = placedOpening(input, place, view, ring);
  const ground: Ground = {
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    edges: ringSides([
      ring,
      boxRing ?? [],
      ...walls.bands,
      ...ghostRings(input, place),
      ...obstructions.map(({ ring: each }) => each),
      ...sizes.map(dimensionRing),
    ]),
    taken: [
      ...sizes.map(figureArea),
      ...(sizes.length > 0 ? boxArea(boxRing) : []),
      ...(opening === null ? [] : [opening.area]),
    ],
  };
  // Clearances choose their places first: they are what the drawing is looked at for.
  const clearances = clearanceItems(input.clearances, place, view, boxRing ?? ring, ground);
  const names = obstructions
    .filter(({ name }) => name !== '')
    .map(({ name, ring: each }) => obstructionName(name, each, view, ground));
  const layers: Layer[] = [
    { id: 'vehicle', items: [...walls.items, ...obstructions.flatMap(({ items }) => items)] },
    { id: 'box', items: input.box === null ? [] : boxItems(input.box, place) },
    {
      id: 'axes',
      items: axes.map(([from, to]) => ({ kind: 'centre-line', from: place(from), to: place(to), key: null })),
    },
    { id: 'dimensions', items: sizes },
    { id: 'way-out', items: wayOutItems(input, place) },
    { id: 'opening', items: opening?.items ?? [] },
    { id: 'obstructions', items: names },
    { id: 'clearances', items: clearances },
    { id: 'labels', items: labelItems(input.labels, place, view, ring, shrink) },
  ];
  return {
    title: input.title,
    description: input.description,
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    world: fitted.frame,
    scaleLabel: fitted.scaleLabel,
    layers: layers.filter(({ items }) => items.length > 0),
  };
}

type Place = (point: PointMm) => Spot;

/** Extension lines and dimension line, closed over what is measured. */
function dimensionRing({ from, to, offsetPt }: DimensionItem): readonly Spot[] {
  const away = times(leftOf(direction(from, to)), offsetPt);
  return [from, add(from, away), add(to, away), to];
}

/** A box that carries its sizes has no room for notes. */
function boxArea(boxRing: readonly Spot[] | null): readonly Extent[] {
  const area = boxRing === null ? null : extentOf(boxRing);
  return area === null ? [] : [area];
}

/** Room of the figure on its line, whichever way it is turned. */
function figureArea({ from, to, offsetPt, text: figure, sizePt }: DimensionItem): Extent {
  const along = direction(from, to);
  const middle = add(between(from, to, 0.5), times(leftOf(along), offsetPt));
  const half = textWidthPt(figure, 'mono', sizePt) / 2;
  const [acrossPt, downPt] = Math.abs(along.x) > Math.abs(along.y) ? [half, sizePt] : [sizePt, half];
  return {
    left: middle.x - acrossPt,
    right: middle.x + acrossPt,
    top: middle.y - downPt,
    bottom: middle.y + downPt,
  };
}

function worldPoints(input: CavityViewInput): PointMm[] {
  const { box, wayOut } = input;
  const ghosts =
    box === null || wayOut === null ? [] : wayOut.poses.flatMap((pose) => posed(box.outer, pose));
  return [
    ...input.edges.flatMap(({ from, to }) => [from, to]),
    ...(input.opening === null ? [] : [input.opening.from, input.opening.to]),
    ...(box === null ? [] : posed(box.outer, box.pose)),
    ...ghosts,
  ];
}

/** World points of a body: turned by the pose's angle about its own origin, then shifted. */
export function posed(body: PolygonMm, pose: Pose): readonly PointMm[] {
  const [cosine, sine] = [Math.cos(pose.thetaRad), Math.sin(pose.thetaRad)];
  return body.map(({ xMm, yMm }) => ({
    xMm: pose.xMm + xMm * cosine - yMm * sine,
    yMm: pose.yMm + xMm * sine + yMm * cosine,
  }));
}

function boxItems(box: DrawnBox, place: Place): SceneItem[] {
  const outer = posed(box.outer, box.pose).map(place);
  if (box.inner === null) return [polygon(outer, { role: 'outline', dashPt: null, widthPt: 2 }, 'sheet')];
  const inner = posed(box.inner, box.pose).map(place);
  return [
    polygon(outer, null, 'sheet'),
    hatch([outer, inner], 'panel'),
    polygon(outer, { role: 'outline', dashPt: null, widthPt: 2 }),
    region([inner], 'thin'),
  ];
}

const ARROW_PT = 9;

function ghostRings({ box, wayOut }: CavityViewInput, place: Place): readonly (readonly Spot[])[] {
  if (box === null || wayOut === null) return [];
  return wayOut.poses.map((pose) => posed(box.outer, pose).map(place));
}

function wayOutItems(input: CavityViewInput, place: Place): SceneItem[] {
  const { box, wayOut } = input;
  if (box === null || wayOut === null) return [];
  const ghosts = ghostRings(input, place).map((ring) =>
    polygon(ring, { role: 'construction', dashPt: null, widthPt: 0.7 }),
  );
  const track = wayOut.track.map(place);
  const [beforeEnd, end] = track.slice(-2);
  if (beforeEnd === undefined || end === undefined) return ghosts;
  const ahead = direction(beforeEnd, end);
  const side = times(leftOf(ahead), ARROW_PT * 0.32);
  const foot = add(end, times(ahead, -ARROW_PT));
  const head: SceneItem = polygon([end, add(foot, side), add(foot, times(side, -1))], null, 'mark');
  return [...ghosts, polyline(track, 'construction'), head];
}

/** The opening's line with its size outside of it, moved in where the sheet ends; `area` is what the words cover. */
function placedOpening(
  { opening }: CavityViewInput,
  place: Place,
  view: DrawingView,
  ring: readonly Spot[],
): { readonly items: readonly SceneItem[]; readonly area: Extent } | null {
  if (opening === null) return null;
  const [from, to] = [place(opening.from), place(opening.to)];
  const middle = between(from, to, 0.5);
  const centre = middleOf(ring.length > 0 ? ring : [from, to]);
  const normal = leftOf(direction(from, to));
  const out =
    normal.x * (middle.x - centre.x) + normal.y * (middle.y - centre.y) >= 0 ? normal : times(normal, -1);
  const at = add(middle, times(out, 12));
  const widthPt = textWidthPt(opening.text, 'mono', view.textPt);
  const wished = out.x < 0 ? at.x - widthPt : at.x;
  const left = Math.max(0, Math.min(wished, view.widthPt - widthPt));
  const baseline = at.y + view.textPt * 0.35;
  return {
    items: [
      line(from, to, 'opening'),
      text(spot(left, baseline), opening.text, {
        sizePt: view.textPt,
        face: 'mono',
        ink: 'mark',
        anchor: 'start',
        backed: true,
      }),
    ],
    area: { left, right: left + widthPt, top: baseline - view.textPt, bottom: baseline + view.textPt * 0.3 },
  };
}
