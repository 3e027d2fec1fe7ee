import { HATCH_ESTATE, SPARE_WHEEL_WELL, sketchCavity } from '@gusset/cargo';
import type { Measurement } from '@gusset/contracts/cargo';
import { describe, expect, it } from 'vitest';
import { type SurveyDrawingOptions, surveyView } from './survey-drawing.ts';

const length = (key: string, valueMm: number): Measurement => ({
  key,
  valueMm,
  plusMinusMm: null,
  typed: String(valueMm),
  method: 'tape',
  takenBy: 'Tomas Reuter',
  takenAt: '2026-11-24T09:30:00Z',
});
const options: SurveyDrawingOptions = {
  title: 'Halden Brisk',
  form: HATCH_ESTATE,
  activeKey: 'opening',
  readingText: (key) => (key === 'floorDepth' ? '812' : null),
  showsAll: false,
  obstructions: [],
  keepFree: [],
  narrowings: [],
};
const letters = (view: { readonly labels: readonly { readonly letter: string }[] }) =>
  view.labels.map(({ letter }) => letter).join('');

describe('surveyView', () => {
  it('draws walls thin until what places them is measured', () => {
    const kinds = (taken: readonly Measurement[]) =>
      surveyView(sketchCavity(HATCH_ESTATE, taken), 'section', options).edges.map(
        ({ name, kind }) => `${name} ${kind}`,
      );
    expect(kinds([])).toContain('Floor glass');
    expect(kinds([length('floorDepth', 812)])).not.toContain('Floor glass');
  });

  it('shows the letters needed and worth taking; the rest once asked for or when there is room', () => {
    const sketch = sketchCavity(HATCH_ESTATE, []);
    expect(letters(surveyView(sketch, 'section', options))).toBe('ABCDEFGHJK');
    expect(letters(surveyView(sketch, 'section', { ...options, activeKey: 'sealHeight' }))).toBe(
      'ABCDEFGHJKL',
    );
    expect(letters(surveyView(sketch, 'section', { ...options, showsAll: true }))).toContain('M');
    expect(letters(surveyView(sketch, 'plan', options))).toBe('PQ');
  });

  it('marks the dimension asked for and writes what was taken', () => {
    const { labels } = surveyView(
      sketchCavity(HATCH_ESTATE, [length('floorDepth', 812)]),
      'section',
      options,
    );
    expect(labels.find(({ letter }) => letter === 'C')).toMatchObject({ active: true, value: null });
    expect(labels.find(({ letter }) => letter === 'A')).toMatchObject({ active: false, value: '812' });
  });

  it('draws the bend of a round well as one outline on either side, without a name', () => {
    const taken = [
      ['rimLength', 640],
      ['bottomLength', 640],
      ['depth', 200],
      ['rimWidth', 640],
      ['cornerReach', 320],
      ['openingWidth', 630],
    ] as const;
    const sketch = sketchCavity(
      SPARE_WHEEL_WELL,
      taken.map(([key, mm]) => length(key, mm)),
    );
    const { obstructions } = surveyView(sketch, 'plan', { ...options, form: SPARE_WHEEL_WELL });
    expect(obstructions.map(({ name }) => name)).toEqual(['', '']);
    const [right, left] = obstructions;
    expect(Math.max(...(right?.outline ?? []).map(({ yMm }) => yMm))).toBe(320);
    expect(left?.outline.map(({ xMm, yMm }) => ({ xMm, yMm: -yMm }))).toEqual(right?.outline);
  });

  it('narrows the plan on both sides by the same', () => {
    const polygon = [
      { xMm: 100, yMm: 0 },
      { xMm: 400, yMm: 0 },
      { xMm: 400, yMm: 300 },
    ];
    const pocket = {
      id: 'p',
      name: 'Side pocket',
      polygon,
      zMinMm: -430,
      zMaxMm: 430,
      sidePlusMinusMm: 2,
      sectionPlusMinusMm: 4,
    };
    const sketch = sketchCavity(HATCH_ESTATE, [length('archWidth', 1000)]);
    const { obstructions } = surveyView(sketch, 'plan', { ...options, narrowings: [pocket] });
    expect(obstructions.map(({ outline }) => outline.map(({ xMm, yMm }) => [xMm, yMm]))).toEqual([
      [
        [100, 430],
        [400, 430],
        [400, 500],
        [100, 500],
      ],
      [
        [100, -430],
        [400, -430],
        [400, -500],
        [100, -500],
      ],
    ]);
  });
});
