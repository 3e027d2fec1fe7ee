import type { FrozenDrawing } from '@gusset/contracts/quote';
import { type Scene, type SvgElement, sceneToSvgElements } from '@gusset/drawings';
import { createElement, type ReactNode } from 'react';
import { DrawingView } from '../../shared/sheet/drawing-view.tsx';

/** Below this the figures of the drawing would shrink past reading; it scrolls sideways in its own frame. */
const LEAST_WIDTH_PX = 320;

/** A drawing out of the frozen picture, drawn on the server: no script reaches the customer for it. */
export function FrozenDrawingView({ drawing }: { readonly drawing: FrozenDrawing }) {
  return (
    <DrawingView label={drawing.title} minWidthPx={LEAST_WIDTH_PX}>
      <svg
        viewBox={`0 0 ${drawing.widthPt} ${drawing.heightPt}`}
        width="100%"
        role="img"
        aria-label={`${drawing.title}. ${drawing.description}`}
      >
        {sceneToSvgElements(sceneOf(drawing)).map(toElement)}
      </svg>
    </DrawingView>
  );
}

/** Its layers were written by the drawings package when the quote was made, and are covered by the quote's hash. */
function sceneOf({ title, description, widthPt, heightPt, layers }: FrozenDrawing): Scene {
  return {
    title,
    description,
    widthPt,
    heightPt,
    world: null,
    scaleLabel: null,
    layers: layers as Scene['layers'],
  };
}

function toElement({ tag, id, props, children, text }: SvgElement): ReactNode {
  return createElement(tag, { key: id, ...props }, text ?? children.map(toElement));
}
