import { cavitySketchSchema, type SectionForm } from '@gusset/contracts/cargo';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BEHIND_SEAT } from './forms/behind-seat.ts';
import { stationsForm } from './forms/free-section.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { SALOON_BOOT } from './forms/saloon-boot.ts';
import { UNDER_SEAT } from './forms/under-seat.ts';
import { missingDimensions } from './readings.ts';
import { sketchCavity } from './sketch-cavity.ts';
import { angleReading, answered, changed, lengthReading, RECTANGLE, SLANTED } from './survey-fixture.ts';

const FORMS: readonly SectionForm[] = [
  SALOON_BOOT,
  HATCH_ESTATE,
  BEHIND_SEAT,
  UNDER_SEAT,
  answered(stationsForm('Rear glass', [0, 100, 200, 300])),
];

describe('sketchCavity', () => {
  it('draws every form before anything is measured, with a place for every letter', () => {
    for (const form of FORMS) {
      const sketch = sketchCavity(form, []);
      expect(cavitySketchSchema.safeParse(sketch).error).toBeUndefined();
      expect(sketch.labels.map(({ key }) => key)).toEqual(form.dimensions.map(({ key }) => key));
      expect(sketch.walls.length).toBeGreaterThanOrEqual(3);
      expect(sketch.complete).toBe(false);
      expect(sketch.missing).toEqual(missingDimensions(form, []));
    }
  });

  it('highlights walls and slabs that it draws', () => {
    for (const form of FORMS.slice(0, 2)) {
      const sketch = sketchCavity(form, []);
      const ids = new Set([
        ...sketch.walls.map(({ id }) => id),
        ...sketch.plan.map(({ id }) => id),
        'header',
        'above-arches',
      ]);
      for (const { drawing } of form.dimensions) {
        for (const id of drawing.highlights) expect(ids).toContain(id);
      }
    }
  });

  it('settles each wall as its dimensions come', () => {
    const first = sketchCavity(HATCH_ESTATE, [lengthReading('floorDepth', 800)]);
    const waits = new Map(first.walls.map(({ id, waitsFor }) => [id, waitsFor]));
    expect(waits.get('floor')).toEqual([]);
    expect(waits.get('sill')).toEqual(['sillHeight']);
    expect(waits.get('seat-back')).toEqual(['seatHeight', 'seatLean']);
    const all = sketchCavity(HATCH_ESTATE, SLANTED);
    expect(all.walls.every(({ waitsFor }) => waitsFor.length === 0)).toBe(true);
    expect(all).toMatchObject({ complete: true, missing: [], rejected: [] });
  });

  it('says of each letter whether it is measured, assumed or only drawn', () => {
    const { labels } = sketchCavity(HATCH_ESTATE, [lengthReading('floorDepth', 800)]);
    const standing = new Map(labels.map((label) => [label.key, label.standing]));
    expect(standing.get('floorDepth')).toBe('measured');
    expect(standing.get('sillLean')).toBe('assumed');
    expect(standing.get('opening')).toBe('typical');
  });

  it('puts a letter where its dimension runs', () => {
    const { labels } = sketchCavity(HATCH_ESTATE, SLANTED);
    const opening = labels.find(({ key }) => key === 'opening');
    expect(opening).toMatchObject({
      letter: 'C',
      view: 'section',
      from: { xMm: 800, yMm: 120 },
      vertex: null,
    });
    expect(opening?.to.xMm).toBeCloseTo(500, 6);
    expect(opening?.to.yMm).toBeCloseTo(520, 6);
    const lean = labels.find(({ key }) => key === 'seatLean');
    expect(lean?.vertex).toEqual({ xMm: 0, yMm: 0 });
  });

  it('scales what is not measured to what is', () => {
    const small = sketchCavity(SALOON_BOOT, [lengthReading('floorDepth', 450)]);
    const large = sketchCavity(SALOON_BOOT, [lengthReading('floorDepth', 900)]);
    const heightOf = (sketch: typeof small) => Math.max(...sketch.walls.map(({ from }) => from.yMm));
    expect(heightOf(large)).toBeCloseTo(2 * heightOf(small), 6);
  });

  it('finds a contradiction while other dimensions are still missing', () => {
    const early = changed(SLANTED, lengthReading('seatHeight', 480), lengthReading('roofDepth', 140)).filter(
      ({ key }) => !['archWidth', 'openingWidth'].includes(key),
    );
    expect(sketchCavity(HATCH_ESTATE, early).findings).toContainEqual(
      expect.objectContaining({ code: 'opening-taller-than-cavity', byMm: expect.closeTo(40, 6) }),
    );
  });

  it('keeps a finding back while a missing dimension decides it', () => {
    const early = changed(SLANTED, lengthReading('seatHeight', 480)).filter(
      ({ key }) => key !== 'sillHeight',
    );
    expect(sketchCavity(HATCH_ESTATE, early).findings.map(({ code }) => code)).not.toContain(
      'opening-taller-than-cavity',
    );
  });

  it('draws on without a reading that cannot be, and says why', () => {
    const sketch = sketchCavity(HATCH_ESTATE, changed(RECTANGLE, lengthReading('floorDepth', -5)));
    expect(sketch.rejected).toEqual([
      {
        key: 'floorDepth',
        allowed: '150 to 4000 mm',
        why: 'A, floor, seat back to sill is out of its range',
      },
    ]);
    expect(sketch.missing.map(({ letter }) => letter)).toEqual(['A']);
    expect(sketch.complete).toBe(false);
  });

  it('is finite for any readings in any order of arrival', () => {
    const readings = [
      fc.double({ min: 150, max: 4000, noNaN: true }).map((v) => lengthReading('floorDepth', v, null)),
      fc.double({ min: 100, max: 2200, noNaN: true }).map((v) => lengthReading('seatHeight', v, null)),
      fc.double({ min: 100, max: 2500, noNaN: true }).map((v) => lengthReading('opening', v, null)),
      fc.double({ min: 20, max: 3500, noNaN: true }).map((v) => lengthReading('roofDepth', v, null)),
      fc.double({ min: -0.3, max: 1, noNaN: true }).map((v) => angleReading('seatLean', v, null)),
      fc.double({ min: -400, max: 400, noNaN: true }).map((v) => lengthReading('floorRise', v, null)),
      fc.double({ min: 100, max: 2500, noNaN: true }).map((v) => lengthReading('archWidth', v, null)),
    ];
    fc.assert(
      fc.property(fc.tuple(...readings), fc.array(fc.nat(6)), (all, order) => {
        const some = order.flatMap((index) => all.slice(index, index + 1));
        expect(cavitySketchSchema.safeParse(sketchCavity(HATCH_ESTATE, some)).error).toBeUndefined();
      }),
      { numRuns: 100 },
    );
  });
});
