import { HATCH_ESTATE, sketchCavity } from '@gusset/cargo';
import { cavitySection } from '@gusset/drawings';
import { surveyView } from '@gusset/sheets';
import { describe, expect, it } from 'vitest';
import { drawingWindow } from './drawing-room.ts';

function scene(showsAll: boolean, widthPt: number, heightPt: number) {
  const input = surveyView(sketchCavity(HATCH_ESTATE, []), 'section', {
    title: 'Halden Brisk',
    form: HATCH_ESTATE,
    activeKey: null,
    readingText: () => null,
    showsAll,
    obstructions: [],
    keepFree: [],
    narrowings: [],
  });
  return cavitySection(input, { widthPt, heightPt });
}

describe('drawingWindow', () => {
  it('is the drawing itself where everything lies inside', () => {
    const window = drawingWindow({ ...scene(false, 900, 700), layers: [] });
    expect(window).toEqual({ x: 0, y: 0, width: 900, height: 700 });
  });

  it('grows about the middle and keeps the shape where dimensions stand outside', () => {
    const window = drawingWindow(scene(true, 390, 200));
    expect(window.height).toBeGreaterThan(200);
    expect(window.width / window.height).toBeCloseTo(390 / 200, 9);
    expect(window.x + window.width / 2).toBeCloseTo(195, 9);
  });
});
