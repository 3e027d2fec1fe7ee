// Draws a scene out: every item becomes paths and text, in the same order, for every renderer.
import { CAP_HEIGHT, textWidthPt } from '../text/text-width.ts';
import {
  balloonItems,
  breakItems,
  centreLineItems,
  dimensionItems,
  leaderItems,
  type PlainItem,
} from './annotations.ts';
import { hatchSegments } from './hatch-segments.ts';
import { HATCHES, penOf, type Stroke, type StrokeRole } from './pens.ts';
import type { ArcItem, HatchItem, InsetItem, RegionItem, Scene, SceneItem, TextItem } from './scene.ts';
import {
  arcCommands,
  circleCommands,
  type PathCommand,
  placeShape,
  ringCommands,
  type Shape,
  type TextShape,
} from './shape.ts';
import { add, polar, type Spot } from './spot.ts';

/** The shapes of one item. */
export type ShapeGroup = {
  readonly kind: SceneItem['kind'];
  readonly key: string | null;
  readonly shapes: readonly Shape[];
};

export type FlatLayer = { readonly id: string; readonly groups: readonly ShapeGroup[] };

export function flattenScene(scene: Scene): readonly FlatLayer[] {
  return scene.layers.map(({ id, items }) => ({ id, groups: items.map(flattenItem) }));
}

export function flattenItem(item: SceneItem): ShapeGroup {
  return { kind: item.kind, key: item.key, shapes: shapesOf(item) };
}

function shapesOf(item: SceneItem): readonly Shape[] {
  switch (item.kind) {
    case 'dimension':
      return dimensionItems(item).flatMap(plainShapes);
    case 'leader':
      return leaderItems(item).flatMap(plainShapes);
    case 'balloon':
      return balloonItems(item).flatMap(plainShapes);
    case 'centre-line':
      return centreLineItems(item).flatMap(plainShapes);
    case 'break':
      return breakItems(item).flatMap(plainShapes);
    case 'hatch':
      return hatchShapes(item);
    case 'region':
      return [
        path(
          item.rings.flatMap((ring) => ringCommands(ring, true)),
          item.stroke,
          item.fill,
        ),
      ];
    case 'inset':
      return insetShapes(item);
    case 'arc':
      return [arcShape(item)];
    default:
      return plainShapes(item);
  }
}

function insetShapes({ scene, at, scale }: InsetItem): readonly Shape[] {
  const shapes = flattenScene(scene).flatMap(({ groups }) => groups.flatMap((group) => group.shapes));
  return shapes.map((shape) => placeShape(shape, scale, at));
}

const arcShape = (item: ArcItem): Shape =>
  path(arcCommands(item.centre, item.radiusPt, item.fromRad, item.toRad), item.stroke, null);

function plainShapes(item: PlainItem): readonly Shape[] {
  switch (item.kind) {
    case 'line':
      return [path(ringCommands([item.from, item.to], false), item.stroke, null)];
    case 'polyline':
      return [path(ringCommands(item.points, item.closed), item.stroke, item.fill)];
    case 'circle':
      return [path(circleCommands(item.centre, item.radiusPt), item.stroke, item.fill)];
    case 'text':
      return textShapes(item);
  }
}

function path(
  commands: readonly PathCommand[],
  stroke: StrokeRole | Stroke | null,
  fill: RegionItem['fill'],
): Shape {
  return { kind: 'path', commands, pen: stroke === null ? null : penOf(stroke), fill };
}

function hatchShapes(item: HatchItem): readonly Shape[] {
  const { angleRad, pitchPt, stroke } = HATCHES[item.hatch];
  const segments = hatchSegments(item.rings, angleRad, pitchPt);
  return segments.length === 0
    ? []
    : [
        path(
          segments.flatMap((ends) => ringCommands(ends, false)),
          stroke,
          null,
        ),
      ];
}

function textShapes(item: TextItem): readonly Shape[] {
  if (item.text === '') return [];
  const { at, text, sizePt, face, anchor, ink, turnRad } = item;
  const shape: TextShape = { kind: 'text', at, text, sizePt, face, anchor, ink, turnRad };
  if (!item.backed) return [shape];
  return [path(ringCommands(textCorners(item, BACKING_PT), true), null, 'sheet'), shape];
}

const BACKING_PT = 1.5; // clear sheet round words that stand on lines

/** Corners of the upright or turned rectangle round a text, grown by `marginPt`. */
export function textCorners(item: Omit<TextShape, 'kind' | 'ink'>, marginPt: number): readonly Spot[] {
  const widthPt = textWidthPt(item.text, item.face, item.sizePt);
  const startPt = { start: 0, middle: -widthPt / 2, end: -widthPt }[item.anchor];
  const [left, right] = [startPt - marginPt, startPt + widthPt + marginPt];
  const [top, bottom] = [-item.sizePt * CAP_HEIGHT - marginPt, marginPt];
  const corner = (x: number, y: number): Spot =>
    add(polar(item.at, item.turnRad, x), polar({ x: 0, y: 0 }, item.turnRad + Math.PI / 2, y));
  return [corner(left, top), corner(right, top), corner(right, bottom), corner(left, bottom)];
}

/** Where an interactive part stands, so that a screen can lay an input over it. */
export type KeyedPlace = {
  readonly key: string;
  readonly kind: SceneItem['kind'];
  readonly centre: Spot;
  readonly widthPt: number;
  readonly heightPt: number;
  readonly turnRad: number;
};

/** Every keyed text, dimension figure, bar or outline, in drawing order. */
export function keyedPlaces(scene: Scene): readonly KeyedPlace[] {
  return scene.layers.flatMap(({ items }) => items.flatMap(keyedPlace));
}

function keyedPlace(item: SceneItem): KeyedPlace[] {
  if (item.key === null) return [];
  const { key, kind } = item;
  const shapes = shapesOf(item);
  const words = shapes.find((shape) => shape.kind === 'text');
  const corners =
    words?.kind === 'text' && item.kind !== 'polyline' ? textCorners(words, 0) : shapes.flatMap(pathSpots);
  if (corners.length === 0) return [];
  const turnRad = words?.kind === 'text' ? words.turnRad : 0;
  const turned = corners.map((corner) => turn(corner, -turnRad));
  const [xs, ys] = [turned.map(({ x }) => x), turned.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const centre = turn({ x: (left + right) / 2, y: (top + bottom) / 2 }, turnRad);
  return [{ key, kind, centre, widthPt: right - left, heightPt: bottom - top, turnRad }];
}

const turn = ({ x, y }: Spot, byRad: number): Spot => ({
  x: x * Math.cos(byRad) - y * Math.sin(byRad),
  y: x * Math.sin(byRad) + y * Math.cos(byRad),
});

function pathSpots(shape: Shape): Spot[] {
  if (shape.kind === 'text') return [];
  return shape.commands.flatMap((command) => {
    if (command[0] === 'Z') return [];
    const [x, y] = command[0] === 'C' ? [command[5], command[6]] : [command[1], command[2]];
    return [{ x, y }];
  });
}
