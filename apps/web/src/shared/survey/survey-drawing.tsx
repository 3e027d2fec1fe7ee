'use client';

import type { CavitySketch, DrawingView } from '@gusset/contracts/cargo';
import { cavityPlan, cavitySection } from '@gusset/drawings';
import { type SurveyDrawingOptions, surveyView } from '@gusset/sheets';
import { useMemo } from 'react';
import { SceneDrawing } from '../sheet/scene-drawing.tsx';
import { drawingWindow, tightWindow } from './drawing-room.ts';

export type SurveyDrawingProps = SurveyDrawingOptions & {
  readonly sketch: CavitySketch;
  readonly view: DrawingView;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Only the lines, as large as they go. */
  readonly isTight?: boolean;
  /** A letter was pressed. */
  readonly onPressLetter?: (letter: string) => void;
};

/** A survey as far as it is measured: side section or plan, each letter where the tape goes. */
export function SurveyDrawing({
  sketch,
  view,
  widthPx,
  heightPx,
  onPressLetter,
  isTight = false,
  ...options
}: SurveyDrawingProps) {
  const { title, form, activeKey, readingText, showsAll, obstructions, keepFree, narrowings } = options;
  const scene = useMemo(() => {
    const input = surveyView(sketch, view, {
      title,
      form,
      activeKey,
      readingText,
      showsAll,
      obstructions,
      keepFree,
      narrowings,
    });
    const room = { widthPt: widthPx, heightPt: heightPx, textPt: widthPx < 480 ? 11 : 12.5 };
    return view === 'section' ? cavitySection(input, room) : cavityPlan(input, room);
  }, [
    sketch,
    view,
    title,
    form,
    activeKey,
    readingText,
    showsAll,
    obstructions,
    keepFree,
    narrowings,
    widthPx,
    heightPx,
  ]);
  const window = useMemo(() => (isTight ? tightWindow(scene) : drawingWindow(scene)), [scene, isTight]);
  return (
    <SceneDrawing
      scene={scene}
      minWidthPx={Math.min(widthPx, 320)}
      onPressKey={onPressLetter}
      window={window}
    />
  );
}
