// A drawing as data. Every place is in points of the drawing (y down); `world` says where millimetres landed, so a
// drag on the screen can be read back. Text, ticks and line widths therefore keep their size at every scale.
import type { HatchKind, Ink, Stroke, StrokeRole } from './pens.ts';
import type { Spot } from './spot.ts';

export type TextFace = 'regular' | 'semibold' | 'condensed' | 'mono';
export type TextAnchor = 'start' | 'middle' | 'end';

/** Common to all items. `key` names an interactive part: the field behind a dimension, the task behind a bar. */
type Keyed = { readonly key: string | null };

export type LineItem = Keyed & {
  readonly kind: 'line';
  readonly from: Spot;
  readonly to: Spot;
  readonly stroke: StrokeRole | Stroke;
};

export type PolylineItem = Keyed & {
  readonly kind: 'polyline';
  readonly points: readonly Spot[];
  readonly closed: boolean;
  readonly stroke: StrokeRole | Stroke | null;
  readonly fill: Ink | null;
};

/** Area bounded by rings, even-odd: an outline with its holes. */
export type RegionItem = Keyed & {
  readonly kind: 'region';
  readonly rings: readonly (readonly Spot[])[];
  readonly stroke: StrokeRole | Stroke | null;
  readonly fill: Ink | null;
};

/** Arc from one angle on to the other, radians, 0 = right and clockwise on paper. */
export type ArcItem = Keyed & {
  readonly kind: 'arc';
  readonly centre: Spot;
  readonly radiusPt: number;
  readonly fromRad: number;
  readonly toRad: number;
  readonly stroke: StrokeRole | Stroke;
};

export type CircleItem = Keyed & {
  readonly kind: 'circle';
  readonly centre: Spot;
  readonly radiusPt: number;
  readonly stroke: StrokeRole | Stroke | null;
  readonly fill: Ink | null;
};

export type TextItem = Keyed & {
  readonly kind: 'text';
  /** On the baseline. */
  readonly at: Spot;
  readonly text: string;
  readonly sizePt: number;
  readonly face: TextFace;
  readonly anchor: TextAnchor;
  readonly ink: Ink;
  /** Clockwise. */
  readonly turnRad: number;
  /** True = lines underneath are wiped out round the words. */
  readonly backed: boolean;
};

/** Section hatching of the area between rings (even-odd). */
export type HatchItem = Keyed & {
  readonly kind: 'hatch';
  readonly rings: readonly (readonly Spot[])[];
  readonly hatch: HatchKind;
};

/** Linear dimension: extension lines, 45° ticks, the figure above the line and readable from below or the right. */
export type DimensionItem = Keyed & {
  readonly kind: 'dimension';
  readonly from: Spot;
  readonly to: Spot;
  /** How far the dimension line stands off, to the left of someone walking from → to. */
  readonly offsetPt: number;
  readonly text: string;
  readonly sizePt: number;
  readonly tone: 'plain' | 'active' | 'failing';
  /** Circled letter on the dimension line, for surveys. */
  readonly letter: string | null;
};

export type LeaderItem = Keyed & {
  readonly kind: 'leader';
  readonly target: Spot;
  readonly elbow: Spot;
  readonly lines: readonly string[];
  readonly sizePt: number;
  readonly tone: LeaderTone;
};
export type LeaderTone = 'plain' | 'worked-out' | 'check' | 'failing' | 'pass';

export type BalloonItem = Keyed & {
  readonly kind: 'balloon';
  readonly centre: Spot;
  readonly letter: string;
  readonly radiusPt: number;
  readonly active: boolean;
};

export type CentreLineItem = Keyed & { readonly kind: 'centre-line'; readonly from: Spot; readonly to: Spot };

/** Long break: a thin line with a zigzag, where the drawing leaves something out. */
export type BreakItem = Keyed & { readonly kind: 'break'; readonly from: Spot; readonly to: Spot };

/** A whole drawing set into another: a view on a sheet, a figure on a page. Line widths and letters shrink with it. */
export type InsetItem = Keyed & {
  readonly kind: 'inset';
  readonly scene: Scene;
  readonly at: Spot;
  readonly scale: number;
};

export type SceneItem =
  | LineItem
  | PolylineItem
  | RegionItem
  | ArcItem
  | CircleItem
  | TextItem
  | HatchItem
  | DimensionItem
  | LeaderItem
  | BalloonItem
  | CentreLineItem
  | BreakItem
  | InsetItem;

export type Layer = { readonly id: string; readonly items: readonly SceneItem[] };

/** x pt = originX + xMm × ptPerMm, y pt = originY − yMm × ptPerMm. */
export type WorldFrame = { readonly ptPerMm: number; readonly originX: number; readonly originY: number };

export type Scene = {
  /** Short, for the caption and the accessible name. */
  readonly title: string;
  /** What the drawing says, in words, for someone who cannot see it. */
  readonly description: string;
  readonly widthPt: number;
  readonly heightPt: number;
  /** Null for charts and other drawings of no thing. */
  readonly world: WorldFrame | null;
  /** `1:10`; null when the drawing is of no standard scale. */
  readonly scaleLabel: string | null;
  /** Drawn in this order. */
  readonly layers: readonly Layer[];
};
