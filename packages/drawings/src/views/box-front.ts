// A baffle from the front: outline, cut-outs, bolt circles, centre lines.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { circle, polygon } from '../scene/items.ts';
import type { Layer, LeaderItem, Scene, SceneItem } from '../scene/scene.ts';
import { type Spot, spot } from '../scene/spot.ts';
import { type DrawingView, fitWorld, withDefaults } from './drawing-view.ts';
import { type Ground, noteElbow, ringSides } from './note-places.ts';
import { type DrawnDimension, dimensionOf } from './placed-dimensions.ts';
import { roundedRectangle } from './rounded-rectangle.ts';

export type BoltCircle = {
  readonly diameterMm: number;
  readonly count: number;
  readonly holeDiameterMm: number;
  /** Where the first hole stands: anticlockwise from the right, radians. */
  readonly startRad: number;
};

export type DrawnCutout =
  | {
      readonly shape: 'circle';
      readonly name: string;
      readonly centre: PointMm;
      readonly diameterMm: number;
      /** Outer edge of what is screwed on, dashed; null = none. */
      readonly flangeDiameterMm: number | null;
      readonly bolts: BoltCircle | null;
    }
  | {
      readonly shape: 'rectangle';
      readonly name: string;
      readonly centre: PointMm;
      readonly widthMm: number;
      readonly heightMm: number;
      readonly cornerRadiusMm: number;
    };

export type BoxFrontInput = {
  readonly title: string;
  readonly description: string;
  readonly outline: PolygonMm;
  readonly cutouts: readonly DrawnCutout[];
  readonly dimensions: readonly DrawnDimension[];
};

const MARGIN_PT = 58;

export function boxFront(input: BoxFrontInput, partial: Partial<DrawingView> = {}): Scene {
  const view = withDefaults(partial);
  const margin = MARGIN_PT + view.textPt;
  const fitted = fitWorld(input.outline, view, {
    left: margin,
    top: margin,
    right: margin + 40,
    bottom: margin,
  });
  const { place, frame } = fitted;
  const rings = input.cutouts.map((cutout) => rimOf(cutout, place, frame.ptPerMm));
  const ground: Ground = {
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    edges: ringSides([input.outline.map(place), ...rings]),
    taken: [],
  };
  const layers: Layer[] = [
    {
      id: 'outline',
      items: [polygon(input.outline.map(place), { role: 'outline', dashPt: null, widthPt: 1.8 }, 'sheet')],
    },
    { id: 'cutouts', items: input.cutouts.flatMap((cutout) => cutoutItems(cutout, place, frame.ptPerMm)) },
    {
      id: 'notes',
      items: input.cutouts.map((cutout) => cutoutNote(cutout, place, frame.ptPerMm, view, ground)),
    },
    { id: 'dimensions', items: input.dimensions.map((drawn) => dimensionOf(drawn, place, view)) },
  ];
  return {
    title: input.title,
    description: input.description,
    widthPt: view.widthPt,
    heightPt: view.heightPt,
    world: frame,
    scaleLabel: fitted.scaleLabel,
    layers: layers.filter(({ items }) => items.length > 0),
  };
}

type Place = (point: PointMm) => Spot;

function cutoutItems(cutout: DrawnCutout, place: Place, ptPerMm: number): SceneItem[] {
  const centre = place(cutout.centre);
  if (cutout.shape === 'rectangle') {
    const [widthPt, heightPt] = [cutout.widthMm * ptPerMm, cutout.heightMm * ptPerMm];
    const ring = roundedRectangle(centre, widthPt, heightPt, cutout.cornerRadiusMm * ptPerMm);
    return [polygon(ring, 'outline', 'sheet'), ...crossLines(centre, widthPt / 2, heightPt / 2)];
  }
  const radiusPt = (cutout.diameterMm / 2) * ptPerMm;
  const reachPt = (Math.max(cutout.diameterMm, cutout.flangeDiameterMm ?? 0) / 2) * ptPerMm;
  return [
    circle(centre, radiusPt, 'outline', 'sheet'),
    ...(cutout.flangeDiameterMm === null
      ? []
      : [circle(centre, (cutout.flangeDiameterMm / 2) * ptPerMm, 'hidden')]),
    ...(cutout.bolts === null ? [] : boltItems(cutout.bolts, centre, ptPerMm)),
    ...crossLines(centre, reachPt, reachPt),
  ];
}

/** Centres of the bolt holes, anticlockwise from `startRad`, y down. */
export function boltCentres(bolts: BoltCircle, centre: Spot, ptPerMm: number): readonly Spot[] {
  const radiusPt = (bolts.diameterMm / 2) * ptPerMm;
  return Array.from({ length: bolts.count }, (_, index) => {
    const angle = bolts.startRad + (index * 2 * Math.PI) / bolts.count;
    return spot(centre.x + Math.cos(angle) * radiusPt, centre.y - Math.sin(angle) * radiusPt);
  });
}

const SMALLEST_BOLT_PT = 1; // a hole that would print smaller than this is drawn this large

function boltItems(bolts: BoltCircle, centre: Spot, ptPerMm: number): SceneItem[] {
  const holePt = Math.max((bolts.holeDiameterMm / 2) * ptPerMm, SMALLEST_BOLT_PT);
  return [
    circle(centre, (bolts.diameterMm / 2) * ptPerMm, 'centre'),
    ...boltCentres(bolts, centre, ptPerMm).map((at) => circle(at, holePt, 'thin', 'sheet')),
  ];
}

function crossLines(centre: Spot, reachX: number, reachY: number): SceneItem[] {
  return [
    {
      kind: 'centre-line',
      from: spot(centre.x - reachX, centre.y),
      to: spot(centre.x + reachX, centre.y),
      key: null,
    },
    {
      kind: 'centre-line',
      from: spot(centre.x, centre.y - reachY),
      to: spot(centre.x, centre.y + reachY),
      key: null,
    },
  ];
}

const UP_RIGHT_RAD = -Math.PI / 4;

/** What a note must keep clear of: the flange, or the opening where there is none. */
function rimOf(cutout: DrawnCutout, place: Place, ptPerMm: number): readonly Spot[] {
  const centre = place(cutout.centre);
  if (cutout.shape === 'rectangle') {
    return roundedRectangle(centre, cutout.widthMm * ptPerMm, cutout.heightMm * ptPerMm, 0);
  }
  const reachPt = Math.max(cutout.diameterMm, cutout.flangeDiameterMm ?? 0) * ptPerMm;
  return roundedRectangle(centre, reachPt, reachPt, reachPt / 2);
}

/** Name, diameter and bolts beside the cut-out, led out up and to the right. */
function cutoutNote(
  cutout: DrawnCutout,
  place: Place,
  ptPerMm: number,
  view: DrawingView,
  ground: Ground,
): LeaderItem {
  const centre = place(cutout.centre);
  const halfPt = ((cutout.shape === 'circle' ? cutout.diameterMm : cutout.widthMm) / 2) * ptPerMm;
  const rimX = cutout.shape === 'circle' ? halfPt * Math.SQRT1_2 : halfPt;
  const rimY = cutout.shape === 'circle' ? halfPt * Math.SQRT1_2 : (cutout.heightMm / 2) * ptPerMm;
  const target = spot(centre.x + rimX, centre.y - rimY);
  const lines = noteLines(cutout, view);
  const sizePt = view.textPt * 0.9;
  const elbow = noteElbow({ target, towardsRad: UP_RIGHT_RAD, lines, sizePt }, ground);
  return { kind: 'leader', target, elbow, lines, sizePt, tone: 'plain', key: null };
}

function noteLines(cutout: DrawnCutout, { formatLength }: DrawingView): string[] {
  if (cutout.shape === 'rectangle') {
    return [cutout.name, `${formatLength(cutout.widthMm)} × ${formatLength(cutout.heightMm)}`];
  }
  const { bolts } = cutout;
  const lines = [cutout.name, `⌀ ${formatLength(cutout.diameterMm)}`];
  if (bolts === null) return lines;
  return [
    ...lines,
    `${bolts.count} × ⌀ ${formatLength(bolts.holeDiameterMm)} on ⌀ ${formatLength(bolts.diameterMm)}`,
  ];
}
