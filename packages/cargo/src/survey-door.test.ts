import { cavitySchema } from '@gusset/contracts/cargo';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { signedAreaMm2 } from './plane/polygon.ts';
import { crossingEdges } from './plane/simple.ts';
import { angleReading, changed, lengthReading, RECTANGLE, SLANTED } from './survey-fixture.ts';

const refusalOf = (answer: object) => (isRefusal(answer) ? answer.refusal : null);

describe('refusals', () => {
  it('names every missing dimension by letter', () => {
    const refusal = refusalOf(
      buildCavity(
        HATCH_ESTATE,
        RECTANGLE.filter(({ key }) => key !== 'opening' && key !== 'sillHeight'),
      ),
    );
    expect(refusal?.field).toBe('measurements.opening');
    expect(refusal?.why).toContain('C (');
    expect(refusal?.why).toContain('E (');
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, -1, 1e9])('refuses a floor of %s mm by name', (value) => {
    const refusal = refusalOf(
      buildCavity(HATCH_ESTATE, changed(RECTANGLE, lengthReading('floorDepth', value))),
    );
    expect(refusal?.field).toBe('measurements.floorDepth');
  });

  it.each([Number.NaN, -1, 1e9])('refuses a ± of %s by name', (plusMinusMm) => {
    const refusal = refusalOf(
      buildCavity(HATCH_ESTATE, changed(RECTANGLE, lengthReading('opening', 500, plusMinusMm))),
    );
    expect(refusal?.field).toBe('measurements.opening');
  });

  it('refuses a length where an angle is asked for, and a key the form has not', () => {
    const swapped = buildCavity(HATCH_ESTATE, changed(RECTANGLE, lengthReading('seatLean', 20)));
    expect(refusalOf(swapped)?.field).toBe('measurements.seatLean');
    const unknown = buildCavity(HATCH_ESTATE, [...RECTANGLE, lengthReading('glovebox', 20)]);
    expect(refusalOf(unknown)?.field).toBe('measurements.glovebox');
  });

  it('refuses an opening too short to reach from lip to seal, with the numbers', () => {
    const refusal = refusalOf(buildCavity(HATCH_ESTATE, changed(SLANTED, lengthReading('opening', 260))));
    expect(refusal?.field).toBe('measurements.opening');
    expect(refusal?.why).toContain('40.0 mm too short');
  });

  it('refuses walls that cross and names a dimension that places them', () => {
    const leaned = changed(
      SLANTED,
      lengthReading('roofDepth', 20),
      angleReading('seatLean', Math.PI / 3),
      lengthReading('opening', 900),
    );
    const refusal = refusalOf(buildCavity(HATCH_ESTATE, leaned));
    expect(refusal).not.toBeNull();
    expect(refusal?.field).toMatch(/^measurements\.(seatLean|opening|roofDepth|seatHeight)$/);
  });

  it('refuses a prism without width or outline', () => {
    const flat = {
      id: 'arm',
      name: 'Hinge arm',
      polygon: [
        { xMm: 0, yMm: 0 },
        { xMm: 10, yMm: 0 },
        { xMm: 20, yMm: 0 },
      ],
      zMinMm: 400,
      zMaxMm: 440,
      plusMinusMm: 2,
      appliesTo: 'both',
      moves: true,
    } as const;
    const refusal = refusalOf(buildCavity(HATCH_ESTATE, RECTANGLE, { obstructions: [flat], keepFree: [] }));
    expect(refusal?.field).toBe('obstructions[0].polygon');
  });

  it('answers anything in range with a simple counter-clockwise section or a refusal', () => {
    const length = (key: string, min: number, max: number) =>
      fc.double({ min, max, noNaN: true }).map((value) => lengthReading(key, value, null));
    const anything = fc.tuple(
      length('floorDepth', 150, 2000),
      length('seatHeight', 100, 1200),
      length('opening', 100, 1500),
      length('roofDepth', 20, 1500),
      length('sillHeight', 0, 600),
      fc.double({ min: -0.3, max: 1, noNaN: true }).map((value) => angleReading('seatLean', value, null)),
      length('openingWidth', 100, 1500),
      length('archWidth', 100, 1500),
      length('sillLean', -300, 300),
      length('floorRise', -200, 200),
    );
    let built = 0;
    fc.assert(
      fc.property(anything, (readings) => {
        const answer = buildCavity(HATCH_ESTATE, readings);
        if ('refusal' in answer) {
          expect(answer.refusal.field).toMatch(/^measurements\./);
          return;
        }
        built += 1;
        expect(crossingEdges(answer.polygon)).toBeNull();
        expect(signedAreaMm2(answer.polygon)).toBeGreaterThan(0);
        expect(cavitySchema.safeParse(answer).error).toBeUndefined();
      }),
      { numRuns: 300 },
    );
    expect(built).toBeGreaterThan(30);
  });
});
