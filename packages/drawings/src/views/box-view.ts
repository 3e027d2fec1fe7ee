// A box cut open from the side or from above: sections of its panels hatched turn about, what stands behind dashed.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { hatch, polygon, text } from '../scene/items.ts';
import type { HatchKind } from '../scene/pens.ts';
import type { Layer, Scene, SceneItem } from '../scene/scene.ts';
import { middleOf, type Spot } from '../scene/spot.ts';
import { type DrawingView, fitWorld, withDefaults } from './drawing-view.ts';
import { type DrawnDimension, dimensionOf } from './placed-dimensions.ts';

export type DrawnPart = {
  /** Mark shown in a balloon; null = none. */
  readonly mark: string | null;
  readonly outline: PolygonMm;
  /** cut = in the section plane, hatched · seen = beyond it, in outline · hidden = behind material, dashed. */
  readonly standing: 'cut' | 'seen' | 'hidden';
};

export type BoxViewInput = {
  readonly title: string;
  readonly description: string;
  readonly parts: readonly DrawnPart[];
  readonly centreLines: readonly { readonly from: PointMm; readonly to: PointMm }[];
  readonly dimensions: readonly DrawnDimension[];
  readonly notes: readonly { readonly at: PointMm; readonly text: string }[];
};

const MARGIN_PT = 58;
const BALLOON_PT = 10;

/** Side section. */
export const boxSection = (input: BoxViewInput, view: Partial<DrawingView> = {}): Scene =>
  boxScene(input, withDefaults(view));

/** Section from above. */
export const boxPlan = (input: BoxViewInput, view: Partial<DrawingView> = {}): Scene =>
  boxScene(input, withDefaults(view));

function boxScene(input: BoxViewInput, view: DrawingView): Scene {
  const margin = MARGIN_PT + view.textPt;
  const points = input.parts.flatMap(({ outline }) => outline);
  const fitted = fitWorld(points, view, { left: margin, top: margin, right: margin, bottom: margin });
  const { place } = fitted;
  const order = { hidden: 2, seen: 0, cut: 1 } as const;
  const sorted = [...input.parts].sort((a, b) => order[a.standing] - order[b.standing]);
  let cut = 0;
  const parts = sorted.flatMap((part): SceneItem[] => {
    const turn: HatchKind = part.standing === 'cut' && cut++ % 2 === 1 ? 'counter-panel' : 'panel';
    return partItems(part, turn, place);
  });
  const layers: Layer[] = [
    { id: 'parts', items: parts },
    {
      id: 'axes',
      items: input.centreLines.map(({ from, to }) => ({
        kind: 'centre-line',
        from: place(from),
        to: place(to),
        key: null,
      })),
    },
    { id: 'marks', items: markItems(input.parts, place) },
    { id: 'dimensions', items: input.dimensions.map((drawn) => dimensionOf(drawn, place, view)) },
    {
      id: 'notes',
      items: input.notes.map(({ at, text: words }) =>
        text(place(at), words, {
          sizePt: view.textPt,
          face: 'mono',
          anchor: 'middle',
          ink: 'ink-2',
          backed: true,
        }),
      ),
    },
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

function partItems(part: DrawnPart, turn: HatchKind, place: (point: PointMm) => Spot): SceneItem[] {
  const ring = part.outline.map(place);
  switch (part.standing) {
    case 'cut':
      return [polygon(ring, null, 'sheet'), hatch([ring], turn), polygon(ring, 'outline')];
    case 'seen':
      return [polygon(ring, 'thin')];
    case 'hidden':
      return [polygon(ring, 'hidden')];
  }
}

/** Balloons sit on their part; thin parts keep them readable because the balloon wipes the hatch out. */
function markItems(parts: readonly DrawnPart[], place: (point: PointMm) => Spot): SceneItem[] {
  return parts.flatMap(({ mark, outline }): SceneItem[] =>
    mark === null
      ? []
      : [
          {
            kind: 'balloon',
            centre: middleOf(outline.map(place)),
            letter: mark,
            radiusPt: BALLOON_PT,
            active: false,
            key: null,
          },
        ],
  );
}
