// Lines of text set into a column, and how high they stand.
import { text } from '../scene/items.ts';
import type { Ink } from '../scene/pens.ts';
import type { SceneItem, TextFace } from '../scene/scene.ts';
import { spot } from '../scene/spot.ts';
import { wrapText } from '../text/text-width.ts';

export type Lettering = {
  readonly face: TextFace;
  readonly sizePt: number;
  readonly ink: Ink;
  /** Line to line, in type sizes. */
  readonly leading: number;
};

export const BODY: Lettering = { face: 'regular', sizePt: 9.5, ink: 'ink', leading: 1.45 };
export const SMALL: Lettering = { face: 'regular', sizePt: 8, ink: 'ink-2', leading: 1.4 };
export const CAPTION: Lettering = { face: 'condensed', sizePt: 7.5, ink: 'ink-2', leading: 1.4 };
export const HEADING: Lettering = { face: 'semibold', sizePt: 12, ink: 'ink', leading: 1.3 };
export const TITLE: Lettering = { face: 'condensed', sizePt: 24, ink: 'ink', leading: 1.15 };

export type Column = { readonly left: number; readonly widthPt: number; readonly align: 'start' | 'end' };

export type SetWords = { readonly items: readonly SceneItem[]; readonly heightPt: number };

/** Sets text into a column from `top` down; empty text takes no height. */
export function setWords(words: string, lettering: Lettering, column: Column, top: number): SetWords {
  if (words === '') return { items: [], heightPt: 0 };
  const { face, sizePt, ink, leading } = lettering;
  const lines = wrapText(words, face, sizePt, column.widthPt);
  const x = column.align === 'start' ? column.left : column.left + column.widthPt;
  const firstBaseline = top + sizePt * (0.5 + leading / 2) - sizePt * 0.18; // capitals sit in the middle of their line
  const items = lines.map((line, index) =>
    text(spot(x, firstBaseline + index * sizePt * leading), line, {
      face,
      sizePt,
      ink,
      anchor: column.align,
    }),
  );
  return { items, heightPt: lines.length * sizePt * leading };
}
