import {
  BEHIND_SEAT,
  FOOTWELL,
  HATCH_ESTATE,
  SALOON_BOOT,
  SPARE_WHEEL_WELL,
  sketchCavity,
  UNDER_SEAT,
} from '@gusset/cargo';
import { type CavityViewInput, cavityPlan, cavitySection } from '@gusset/drawings';
import { describe, expect, it } from 'vitest';
import { surveyView } from './survey-drawing.ts';

const FORMS = [SALOON_BOOT, HATCH_ESTATE, BEHIND_SEAT, UNDER_SEAT, SPARE_WHEEL_WELL, FOOTWELL];

/** Letters whose balloons, 0.95 of the type size in radius, lie over one another. */
function overlapping(input: CavityViewInput, draw: typeof cavitySection): string[] {
  const balloons = draw(input).layers.flatMap(({ items }) =>
    items.flatMap((item) => {
      if (item.kind !== 'dimension' || item.letter === null) return [];
      const { from, to, offsetPt, letter, sizePt } = item;
      const [alongX, alongY] = [to.x - from.x, to.y - from.y];
      const share = offsetPt / Math.hypot(alongX, alongY);
      const x = (from.x + to.x) / 2 + alongY * share;
      const y = (from.y + to.y) / 2 - alongX * share;
      return [{ letter, x, y, sizePt }];
    }),
  );
  return balloons.flatMap((one, index) =>
    balloons
      .slice(index + 1)
      .filter((other) => Math.hypot(one.x - other.x, one.y - other.y) < one.sizePt * 1.9)
      .map((other) => `${one.letter}${other.letter}`),
  );
}

describe('letters of a survey', () => {
  it.each(FORMS)('stand clear of one another in every view of $name', (form) => {
    const sketch = sketchCavity(form, []);
    for (const [view, draw] of [
      ['section', cavitySection],
      ['plan', cavityPlan],
    ] as const) {
      const input = surveyView(sketch, view, {
        title: form.name,
        form,
        activeKey: null,
        readingText: () => '1234',
        showsAll: true,
        obstructions: [],
        keepFree: [],
        narrowings: [],
      });
      expect(input.labels.length).toBeGreaterThan(0);
      expect(overlapping(input, draw)).toEqual([]);
    }
  });
});
