// A survey as it draws itself while the letters come in: the same views on the screen, on the blank measuring sheet
// and on sheet 02. A wall stays a thin line until what places it is measured, then it gets its hatched band.
import type {
  CavitySketch,
  DrawingView,
  KeepFreeZone,
  LabelAnchor,
  Obstruction,
  SectionForm,
  WidthSlab,
} from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import type { CavityViewInput, DrawnEdge, DrawnLabel, DrawnObstruction } from '@gusset/drawings';
import { isWorthTaking } from './survey-form.ts';

export type SurveyDrawingOptions = {
  readonly title: string;
  readonly form: SectionForm;
  /** The dimension that is asked for: drawn in blue. */
  readonly activeKey: string | null;
  /** What stands on a dimension line; null = the letter alone. */
  readonly readingText: (key: string) => string | null;
  /** False leaves checks and finer letters out until they are taken or asked for: a phone has no room for all. */
  readonly showsAll: boolean;
  readonly obstructions: readonly Obstruction[];
  readonly keepFree: readonly KeepFreeZone[];
  /** Places narrower than the form says. */
  readonly narrowings: readonly WidthSlab[];
};

/** Side section on the centre line, or the view from above, of a survey that may still have gaps. */
export function surveyView(
  sketch: CavitySketch,
  view: DrawingView,
  options: SurveyDrawingOptions,
): CavityViewInput {
  const { title, obstructions, keepFree, narrowings } = options;
  const isSection = view === 'section';
  const open = sketch.walls.find(({ role }) => role === 'opening');
  const missing = sketch.missing.map(({ letter }) => letter).join(', ');
  const standing = missing === '' ? 'Every needed dimension is there.' : `Still to take: ${missing}.`;
  return {
    title: `${title}, ${isSection ? 'side section' : 'from above'}`,
    description: standing,
    edges: isSection ? sectionEdges(sketch) : planEdges(sketch),
    obstructions: isSection
      ? [...obstructions, ...keepFree.map(keepFreeName), ...narrowings.map(narrowName)].map(asSection)
      : [
          ...narrowParts(sketch),
          ...slabParts(sketch, narrowings),
          ...[...obstructions, ...keepFree.map(keepFreeName)].map(asPlan),
        ],
    opening: open === undefined || !isSection ? null : { from: open.from, to: open.to, text: '' },
    labels: sketch.labels
      .filter((label) => label.view === view && isShown(label, options))
      .map((label) => drawnLabel(label, options)),
    box: null,
    wayOut: null,
    clearances: [],
  };
}

function keepFreeName<T extends { readonly name: string }>(zone: T): T {
  return { ...zone, name: `keep free: ${zone.name}` };
}

function narrowName<T extends { readonly name: string }>(place: T): T {
  return { ...place, name: `narrower: ${place.name}` };
}

function sectionEdges(sketch: CavitySketch): DrawnEdge[] {
  return sketch.walls.map(({ from, to, name, surface, waitsFor }) => ({
    from,
    to,
    name,
    kind: surface === 'open' ? 'open' : waitsFor.length > 0 ? 'glass' : surface === 'soft' ? 'soft' : 'rigid',
  }));
}

/** The widest place, seen from above: back wall, two sides, the way in. */
function planEdges(sketch: CavitySketch): DrawnEdge[] {
  const [widest] = sketch.plan;
  const corners = widest?.polygon ?? [];
  const missing = new Set(sketch.missing.map(({ key }) => key));
  const isGuessed = sketch.labels.some(({ view, key }) => view === 'plan' && missing.has(key));
  const solid = isGuessed ? 'glass' : 'soft';
  const names = ['Left side', 'Opening', 'Right side', 'Back wall'] as const;
  return corners.flatMap((from, index) => {
    const to = corners[(index + 1) % corners.length];
    const name = names[index] ?? 'Side';
    return to === undefined ? [] : [{ from, to, name, kind: name === 'Opening' ? 'open' : solid }];
  });
}

/**
 * What stands in from the widest place on either side: wheel arches, the bend of a round well. Steps that lie beside each
 * other are one outline, as narrow at each place as the narrowest.
 */
function narrowParts(sketch: CavitySketch): DrawnObstruction[] {
  const [widest, ...narrower] = sketch.plan;
  if (widest === undefined) return [];
  const halfMm = halfWidth(widest.polygon);
  const reach = narrower.map(({ id, name, polygon }) => {
    const xs = polygon.map(({ xMm }) => xMm);
    const words = id === 'between-arches' ? 'wheel arch' : `narrower ${name.replace(/, bend$/u, '')}`;
    return {
      words,
      fromMm: onBorder(Math.min(...xs)),
      toMm: onBorder(Math.max(...xs)),
      innerMm: halfWidth(polygon),
    };
  });
  const borders = [...new Set(reach.flatMap(({ fromMm, toMm }) => [fromMm, toMm]))].sort((a, b) => a - b);
  const runs: Step[][] = [];
  let open: Step[] = [];
  for (const [index, fromMm] of borders.slice(0, -1).entries()) {
    const toMm = borders[index + 1] ?? fromMm;
    const here = reach.filter((slab) => slab.fromMm <= fromMm && slab.toMm >= toMm && slab.innerMm < halfMm);
    const narrowest = here.sort((a, b) => a.innerMm - b.innerMm)[0];
    if (narrowest === undefined) open = [];
    else {
      if (open.length === 0) runs.push(open);
      open.push({ words: narrowest.words, fromMm, toMm, innerMm: narrowest.innerMm });
    }
  }
  return runs.flatMap((steps) => stairs(steps, halfMm));
}

/** Two slabs that meet do so at one border, whatever rounding their ends came with. */
function onBorder(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}

type Step = {
  readonly words: string;
  readonly fromMm: number;
  readonly toMm: number;
  readonly innerMm: number;
};

/** A bend in several steps is seen for what it is: it gets no name. */
function stairs(steps: readonly Step[], outerMm: number): DrawnObstruction[] {
  const [first, last] = [steps[0], steps.at(-1)];
  if (first === undefined || last === undefined) return [];
  return [1, -1].map((side) => ({
    name: steps.length === 1 ? first.words : '',
    outline: [
      { xMm: first.fromMm, yMm: side * outerMm },
      ...steps.flatMap(({ fromMm, toMm, innerMm }) => [
        { xMm: fromMm, yMm: side * innerMm },
        { xMm: toMm, yMm: side * innerMm },
      ]),
      { xMm: last.toMm, yMm: side * outerMm },
    ],
  }));
}

function slabParts(sketch: CavitySketch, slabs: readonly WidthSlab[]): DrawnObstruction[] {
  const [widest] = sketch.plan;
  if (widest === undefined) return [];
  const halfMm = halfWidth(widest.polygon);
  return slabs.flatMap(({ name, polygon, zMaxMm }) => sideParts(name, polygon, zMaxMm, halfMm));
}

function halfWidth(polygon: readonly PointMm[]): number {
  return Math.max(...polygon.map(({ yMm }) => yMm));
}

function sideParts(
  name: string,
  along: readonly PointMm[],
  innerMm: number,
  outerMm: number,
): DrawnObstruction[] {
  if (innerMm >= outerMm) return [];
  const xs = along.map(({ xMm }) => xMm);
  const [fromMm, toMm] = [Math.min(...xs), Math.max(...xs)];
  return [1, -1].map((side) => ({ name, outline: box(fromMm, toMm, side * innerMm, side * outerMm) }));
}

function asSection({
  name,
  polygon,
}: {
  readonly name: string;
  readonly polygon: readonly PointMm[];
}): DrawnObstruction {
  return { name, outline: polygon };
}

function asPlan({ name, polygon, zMinMm, zMaxMm }: Obstruction | KeepFreeZone): DrawnObstruction {
  const xs = polygon.map(({ xMm }) => xMm);
  return { name, outline: box(Math.min(...xs), Math.max(...xs), zMinMm, zMaxMm) };
}

function box(x1: number, x2: number, y1: number, y2: number): PointMm[] {
  return [
    { xMm: x1, yMm: y1 },
    { xMm: x2, yMm: y1 },
    { xMm: x2, yMm: y2 },
    { xMm: x1, yMm: y2 },
  ];
}

function isShown(
  { key, standing }: LabelAnchor,
  { form, activeKey, showsAll }: SurveyDrawingOptions,
): boolean {
  if (showsAll || key === activeKey || standing === 'measured') return true;
  const dimension = form.dimensions.find((each) => each.key === key);
  return dimension !== undefined && (dimension.need === 'required' || isWorthTaking(dimension));
}

function drawnLabel(
  { key, letter, from, to }: LabelAnchor,
  { activeKey, readingText }: SurveyDrawingOptions,
): DrawnLabel {
  return { letter, from, to, active: key === activeKey, value: readingText(key) };
}
