// Short constructors for scene items, so that a view reads like what it draws.
import type { HatchKind, Ink, Stroke, StrokeRole } from './pens.ts';
import type {
  CircleItem,
  DimensionItem,
  HatchItem,
  LineItem,
  PolylineItem,
  RegionItem,
  TextAnchor,
  TextFace,
  TextItem,
} from './scene.ts';
import type { Spot } from './spot.ts';

type Optional<Item, Keys extends keyof Item> = Partial<Pick<Item, Keys>>;

export const line = (from: Spot, to: Spot, stroke: StrokeRole | Stroke): LineItem => ({
  kind: 'line',
  from,
  to,
  stroke,
  key: null,
});

export const polyline = (points: readonly Spot[], stroke: StrokeRole | Stroke): PolylineItem => ({
  kind: 'polyline',
  points,
  closed: false,
  stroke,
  fill: null,
  key: null,
});

export const polygon = (
  points: readonly Spot[],
  stroke: StrokeRole | Stroke | null,
  fill: Ink | null = null,
  key: string | null = null,
): PolylineItem => ({ kind: 'polyline', points, closed: true, stroke, fill, key });

export const region = (
  rings: readonly (readonly Spot[])[],
  stroke: StrokeRole | null,
  fill: Ink | null = null,
): RegionItem => ({ kind: 'region', rings, stroke, fill, key: null });

export const circle = (
  centre: Spot,
  radiusPt: number,
  stroke: StrokeRole | Stroke | null,
  fill: Ink | null = null,
): CircleItem => ({ kind: 'circle', centre, radiusPt, stroke, fill, key: null });

export const hatch = (rings: readonly (readonly Spot[])[], kind: HatchKind): HatchItem => ({
  kind: 'hatch',
  rings,
  hatch: kind,
  key: null,
});

export type TextManner = {
  readonly sizePt?: number;
  readonly face?: TextFace;
  readonly anchor?: TextAnchor;
  readonly ink?: Ink;
  readonly turnRad?: number;
  readonly backed?: boolean;
  readonly key?: string | null;
};

export const text = (at: Spot, words: string, manner: TextManner = {}): TextItem => ({
  kind: 'text',
  at,
  text: words,
  sizePt: manner.sizePt ?? 10,
  face: manner.face ?? 'regular',
  anchor: manner.anchor ?? 'start',
  ink: manner.ink ?? 'ink',
  turnRad: manner.turnRad ?? 0,
  backed: manner.backed ?? false,
  key: manner.key ?? null,
});

export const dimension = (
  item: Pick<DimensionItem, 'from' | 'to' | 'offsetPt' | 'text' | 'sizePt'> &
    Optional<DimensionItem, 'key' | 'tone' | 'letter'>,
): DimensionItem => ({ kind: 'dimension', key: null, tone: 'plain', letter: null, ...item });
