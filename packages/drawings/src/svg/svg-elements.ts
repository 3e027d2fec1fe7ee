// A scene as a plain list of SVG elements: the string renderer writes them out, a React component maps them to JSX.
import { flattenScene, type ShapeGroup } from '../scene/flatten.ts';
import { type Ink, PRINT_INKS } from '../scene/pens.ts';
import type { Scene, TextFace } from '../scene/scene.ts';
import type { PathCommand, PathShape, Shape, TextShape } from '../scene/shape.ts';

export type SvgTheme = 'css-variables' | 'print';

export type SvgElement = {
  readonly tag: 'g' | 'path' | 'text';
  /** Stable and unique in the drawing: React's key. */
  readonly id: string;
  /** Attribute names as React spells them (`strokeWidth`, `data-key`). */
  readonly props: Readonly<Record<string, string | number>>;
  readonly children: readonly SvgElement[];
  /** Words of a text element; null for the others. */
  readonly text: string | null;
};

export type SvgManner = {
  readonly theme: SvgTheme;
  /** Factor on line widths, for bright light and old eyes; 1 = as drawn. */
  readonly strokeScale: number;
};

const FACES: Readonly<Record<TextFace, Readonly<Record<string, string | number>>>> = {
  regular: { fontFamily: "'Archivo Variable', Archivo, 'DejaVu Sans', sans-serif", fontWeight: 400 },
  semibold: { fontFamily: "'Archivo Variable', Archivo, 'DejaVu Sans', sans-serif", fontWeight: 620 },
  condensed: {
    fontFamily: "'Archivo Variable', Archivo, 'DejaVu Sans', sans-serif",
    fontWeight: 620,
    fontStretch: '80%',
  },
  mono: { fontFamily: "'IBM Plex Mono', 'DejaVu Sans Mono', monospace", fontWeight: 400 },
};

/** One group a layer, one group an item; interactive items carry `data-key` and their kind as `data-kind`. */
export function sceneToSvgElements(scene: Scene, manner: Partial<SvgManner> = {}): readonly SvgElement[] {
  const full: SvgManner = { theme: 'css-variables', strokeScale: 1, ...manner };
  return flattenScene(scene).map(({ id, groups }, layerIndex) =>
    group(
      `l${layerIndex}`,
      { 'data-layer': id },
      groups.map((items, index) => groupElement(items, `l${layerIndex}i${index}`, full)),
    ),
  );
}

function groupElement(items: ShapeGroup, id: string, manner: SvgManner): SvgElement {
  const children = items.shapes.map((shape, index) => shapeElement(shape, `${id}s${index}`, manner));
  const keyed: SvgElement['props'] =
    items.key === null ? {} : { 'data-key': items.key, 'data-kind': items.kind };
  return group(id, keyed, children);
}

const group = (id: string, props: SvgElement['props'], children: readonly SvgElement[]): SvgElement => ({
  tag: 'g',
  id,
  props,
  children,
  text: null,
});

function shapeElement(shape: Shape, id: string, manner: SvgManner): SvgElement {
  return shape.kind === 'path' ? pathElement(shape, id, manner) : textElement(shape, id, manner);
}

const colour = (ink: Ink, theme: SvgTheme): string => (theme === 'print' ? PRINT_INKS[ink] : `var(--${ink})`);

function pathElement(shape: PathShape, id: string, { theme, strokeScale }: SvgManner): SvgElement {
  const props: Record<string, string | number> = {
    d: pathData(shape.commands),
    fill: shape.fill === null ? 'none' : colour(shape.fill, theme),
  };
  if (shape.fill !== null) props.fillRule = 'evenodd';
  if (shape.pen !== null) {
    props.stroke = colour(shape.pen.ink, theme);
    props.strokeWidth = round(shape.pen.widthPt * strokeScale);
    if (shape.pen.dashPt.length > 0) props.strokeDasharray = shape.pen.dashPt.map(round).join(' ');
  }
  return { tag: 'path', id, props, children: [], text: null };
}

function textElement(shape: TextShape, id: string, { theme }: SvgManner): SvgElement {
  const props: Record<string, string | number> = {
    x: round(shape.at.x),
    y: round(shape.at.y),
    fontSize: round(shape.sizePt),
    ...FACES[shape.face],
    fill: colour(shape.ink, theme),
  };
  if (shape.anchor !== 'start') props.textAnchor = shape.anchor;
  if (Math.abs(shape.turnRad) > 1e-4) {
    // 1e-4 rad moves the end of a 200 pt line by 0.02 pt
    props.transform = `rotate(${round((shape.turnRad * 180) / Math.PI)} ${round(shape.at.x)} ${round(shape.at.y)})`;
  }
  return { tag: 'text', id, props, children: [], text: shape.text };
}

const pathData = (commands: readonly PathCommand[]): string =>
  commands.map(([letter, ...numbers]) => letter + numbers.map(round).join(' ')).join('');

/** Hundredths of a point: finer than any screen or printer here. Never `-0`. */
const round = (value: number): number => Math.round(value * 100) / 100 + 0;
