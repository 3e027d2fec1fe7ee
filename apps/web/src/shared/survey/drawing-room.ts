// Room for a whole drawing: rows of dimensions may stand outside the size it was drawn for. The window grows about its
// middle and keeps its shape, so that nothing on the page moves when a letter joins.

import { flattenScene, type Scene } from '@gusset/drawings';

export type Window = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** Air round the outermost line. */
const AIR_PT = 3;

export function drawingWindow(scene: Scene): Window {
  const { widthPt, heightPt } = scene;
  let [reachX, reachY] = [widthPt / 2, heightPt / 2];
  for (const { x, y } of drawnPoints(scene)) {
    reachX = Math.max(reachX, Math.abs(x - widthPt / 2) + AIR_PT);
    reachY = Math.max(reachY, Math.abs(y - heightPt / 2) + AIR_PT);
  }
  const factor = Math.max(reachX / (widthPt / 2), reachY / (heightPt / 2));
  const [width, height] = [widthPt * factor, heightPt * factor];
  return { x: (widthPt - width) / 2, y: (heightPt - height) / 2, width, height };
}

/** The window that the lines just fill: for a small picture without letters. */
export function tightWindow(scene: Scene): Window {
  const points = [...drawnPoints(scene)];
  if (points.length === 0) return drawingWindow(scene);
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [left, top] = [Math.min(...xs) - AIR_PT, Math.min(...ys) - AIR_PT];
  return { x: left, y: top, width: Math.max(...xs) + AIR_PT - left, height: Math.max(...ys) + AIR_PT - top };
}

function* drawnPoints(scene: Scene): Generator<{ readonly x: number; readonly y: number }> {
  for (const { groups } of flattenScene(scene)) {
    for (const shape of groups.flatMap(({ shapes }) => shapes)) {
      if (shape.kind === 'text') {
        yield shape.at;
        continue;
      }
      for (const [, ...figures] of shape.commands) {
        for (let i = 0; i + 1 < figures.length; i += 2) yield { x: figures[i] ?? 0, y: figures[i + 1] ?? 0 };
      }
    }
  }
}
