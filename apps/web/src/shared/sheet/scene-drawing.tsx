import { type Scene, type SvgElement, sceneToSvgElements } from '@gusset/drawings';
import { createElement, type MouseEvent, type ReactNode, useMemo } from 'react';
import { DrawingView } from './drawing-view.tsx';

export type SceneDrawingProps = {
  /** The same scene goes to the screen, to print and to PDF. */
  readonly scene: Scene;
  /** Fields laid over the drawing at its dimensions; positions from `keyedPlaces(scene)`, in percent of the scene. */
  readonly overlay?: ReactNode;
  readonly legend?: ReactNode;
  readonly minWidthPx?: number;
  /** A press on something that carries a key: a dimension, a panel, a letter. */
  readonly onPressKey?: (key: string) => void;
  /** What of the scene's plane is shown; the whole scene where nothing is said. */
  readonly window?: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
};

/** A vector scene as SVG in the page: inks follow the theme, title and description are read out. */
export function SceneDrawing({ scene, overlay, legend, minWidthPx, onPressKey, window }: SceneDrawingProps) {
  const { x, y, width, height } = window ?? { x: 0, y: 0, width: scene.widthPt, height: scene.heightPt };
  const elements = useMemo(() => sceneToSvgElements(scene), [scene]);
  const press = (event: MouseEvent<SVGSVGElement>) => {
    const keyed = event.target instanceof Element ? event.target.closest('[data-key]') : null;
    const key = keyed?.getAttribute('data-key');
    if (key) onPressKey?.(key);
  };
  return (
    <DrawingView label={scene.title} legend={legend} {...(minWidthPx === undefined ? {} : { minWidthPx })}>
      <div style={{ position: 'relative' }}>
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: what can be pressed on a drawing also stands as a field or list beside it. */}
        <svg
          viewBox={`${x} ${y} ${width} ${height}`}
          width="100%"
          role="img"
          aria-label={`${scene.title}. ${scene.description}`}
          onClick={onPressKey === undefined ? undefined : press}
        >
          {elements.map(toElement)}
        </svg>
        {overlay}
      </div>
    </DrawingView>
  );
}

function toElement({ tag, id, props, children, text }: SvgElement): ReactNode {
  return createElement(tag, { key: id, ...props }, text ?? children.map(toElement));
}
