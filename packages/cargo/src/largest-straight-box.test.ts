import { type CavityResult, DEFAULT_CLEARANCES, straightBoxSchema } from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { stationsForm } from './forms/free-section.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { largestStraightBox, type StraightBoxWish } from './largest-straight-box.ts';
import { placeBox } from './place-box.ts';
import { edgesOf } from './plane/edges.ts';
import { dot, minus, outwardNormal } from './plane/vector.ts';
import { answered, changed, lengthReading, RECTANGLE, SLANTED } from './survey-fixture.ts';
import { wantedToWall } from './wanted-clearance.ts';

const rectangle = answered(buildCavity(HATCH_ESTATE, RECTANGLE));
const slanted = answered(buildCavity(HATCH_ESTATE, SLANTED));
const unsure = answered(
  buildCavity(
    HATCH_ESTATE,
    SLANTED.map((it) => ('valueMm' in it ? { ...it, plusMinusMm: 2 } : { ...it, plusMinusRad: 0.005 })),
  ),
);

const largest = (cavity: CavityResult, wish: StraightBoxWish) => answered(largestStraightBox(cavity, wish));

/** Distance a corner keeps from every wall of a convex cavity beyond what is wanted; floors left out. */
function spareOf(cavity: CavityResult, corner: PointMm): number {
  const spares = edgesOf(cavity.polygon).flatMap(({ from, to }, index) => {
    const wall = cavity.walls[index];
    if (wall === undefined || wall.role === 'floor') return [];
    const insideMm = dot(minus(from, corner), outwardNormal(from, to));
    return [insideMm - wantedToWall(wall, DEFAULT_CLEARANCES) - wall.plusMinusMm];
  });
  return Math.min(...spares);
}

/** Best wedge with a sloping back on a grid, for a convex cavity: only the four corners can come too near. */
function gridBest(cavity: CavityResult, stepMm: number): number {
  const known = new Map<number, boolean>();
  const fitsAt = (xMm: number, yMm: number): boolean => {
    const place = xMm * 1000 + yMm;
    const fits = known.get(place) ?? spareOf(cavity, { xMm, yMm }) >= 0;
    known.set(place, fits);
    return fits;
  };
  let best = 0;
  for (let heightMm = 40; heightMm <= 520; heightMm += stepMm) {
    for (let backMm = 0; backMm < 800; backMm += stepMm) {
      if (!fitsAt(backMm, 0)) continue;
      for (let leanMm = 0; backMm + leanMm < 800; leanMm += stepMm) {
        if (!fitsAt(backMm + leanMm, heightMm)) continue;
        let frontMm = backMm + leanMm + 40;
        while (fitsAt(frontMm, 0) && fitsAt(frontMm, heightMm)) {
          best = Math.max(best, heightMm * (frontMm - backMm - leanMm / 2));
          frontMm += stepMm;
        }
      }
    }
  }
  return best;
}

describe('largestStraightBox', () => {
  it('fills a rectangle less its clearances', () => {
    const box = largest(rectangle, { shape: 'box' });
    expect(box.depthBottomMm).toBeCloseTo(800 - 15 - 10, 3);
    expect(box.heightMm).toBeCloseTo(500 - 10, 3);
    expect(box.widthMm).toBeCloseTo(950 - 20, 9);
    expect(box.widthLimit).toBe('opening');
    expect(box.pose).toMatchObject({ xMm: expect.closeTo(15, 3), yMm: 0, thetaRad: 0 });
    expect(box.outsideLitres).toBeCloseTo(775 * 490 * 930e-6, 2);
    expect(straightBoxSchema.safeParse(box).error).toBeUndefined();
  });

  it('gains nothing from a slope where every wall is square', () => {
    expect(largest(rectangle, { shape: 'wedge' }).areaMm2).toBeCloseTo(775 * 490, -1);
  });

  it('beats a 10 mm grid in a leaning space, and by no more than the grid is coarse', () => {
    for (const cavity of [slanted, unsure]) {
      // A narrow asked width keeps the wheel arches out of it: the walls alone decide.
      const { areaMm2, heightMm, depthBottomMm } = largest(cavity, { shape: 'wedge', widthMm: 600 });
      const grid = gridBest(cavity, 10);
      expect(areaMm2).toBeGreaterThanOrEqual(grid);
      expect(areaMm2).toBeLessThanOrEqual(grid + 10 * (heightMm + depthBottomMm));
    }
  });

  it('leans the back along the seat when the seat decides', () => {
    const { depthBottomMm, depthTopMm, heightMm } = largest(slanted, {
      shape: 'wedge',
      widthMm: 600,
      heightMm: 300,
    });
    expect((depthBottomMm - depthTopMm) / heightMm).toBeCloseTo(3 / 4, 2);
  });

  it('is clear of everything at worst, as placeBox sees it', () => {
    const wishes: StraightBoxWish[] = [
      { shape: 'box' },
      { shape: 'wedge' },
      { shape: 'wedge', slope: 'front' },
      { shape: 'wedge', heightMm: 320 },
      { shape: 'wedge', depthBottomMm: 330 },
      { shape: 'box', widthMm: 1200 },
    ];
    for (const wish of wishes) {
      const box = largest(unsure, wish);
      const placement = answered(placeBox({ cavity: unsure, ...box }));
      expect(placement.fitsAtWorst).toBe(true);
      for (const it of placement.clearances)
        expect(it.worstCaseMm).toBeGreaterThanOrEqual(it.wantedMm - 1e-3);
    }
  });

  it('keeps the height and depth that were asked for', () => {
    const box = largest(slanted, { shape: 'wedge', heightMm: 320, depthBottomMm: 300 });
    expect(box).toMatchObject({ heightMm: 320, depthBottomMm: expect.closeTo(300, 9) });
  });

  it('gives the asked depth the least lean that lets it stand', () => {
    // Upright it stands 60 deep beside the seat at 400; 250 deep at the bottom only fits leaning.
    const box = largest(slanted, { shape: 'wedge', widthMm: 600, heightMm: 400, depthBottomMm: 380 });
    expect(box.depthTopMm).toBeLessThan(380);
    const steeper = answered(placeBox({ cavity: slanted, ...box }));
    expect(steeper.fits).toBe(true);
  });

  it('answers nothing where nothing stands', () => {
    expect(largestStraightBox(slanted, { shape: 'box', heightMm: 515 })).toBeNull();
    expect(largestStraightBox(rectangle, { shape: 'box', widthMm: 990 })).toBeNull();
  });

  it('gives way to an arm in the middle', () => {
    const arm = {
      id: 'brace',
      name: 'Brace',
      polygon: [
        { xMm: 500, yMm: 300 },
        { xMm: 520, yMm: 300 },
        { xMm: 520, yMm: 500 },
        { xMm: 500, yMm: 500 },
      ],
      zMinMm: -20,
      zMaxMm: 20,
      plusMinusMm: 0,
      appliesTo: 'both',
      moves: false,
    } as const;
    const cavity = { ...rectangle, obstructions: [arm] };
    // Before the brace 475 x 490, under it 775 x 290: the first is the larger.
    const box = largest(cavity, { shape: 'box' });
    expect(box.depthBottomMm).toBeCloseTo(475, 2);
    expect(box.heightMm).toBeCloseTo(490, 2);
  });

  it('never grows when more clearance is wanted', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 40, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        (seatBackMm, moreMm) => {
          const areaAt = (mm: number) =>
            largest(slanted, {
              shape: 'box',
              widthMm: 600,
              clearances: { ...DEFAULT_CLEARANCES, seatBackMm: mm },
            }).areaMm2;
          expect(areaAt(seatBackMm + moreMm)).toBeLessThanOrEqual(areaAt(seatBackMm) + 1);
        },
      ),
      { numRuns: 15 },
    );
  });

  it('keeps to the floor of a sloping space', () => {
    const rising = answered(buildCavity(HATCH_ESTATE, changed(SLANTED, lengthReading('floorRise', 60))));
    const box = largest(rising, { shape: 'wedge', widthMm: 600 });
    expect(box.pose.thetaRad).toBeCloseTo(Math.asin(60 / 800), 9);
    const placement = answered(placeBox({ cavity: rising, ...box }));
    expect(placement.clearances.find(({ surface }) => surface.role === 'floor')?.rests).toBe(true);
    expect(placement.fits).toBe(true);
  });

  it('stands on a floor taken in pieces along a straightedge', () => {
    const stationsMm = [0, 20, 400, 800];
    const readings = [
      ...stationsMm.flatMap((_, i) => [lengthReading(`up-${i}`, 500), lengthReading(`down-${i}`, 0)]),
      lengthReading('width', 1000),
      lengthReading('openingWidth', 950),
    ];
    const pieces = answered(buildCavity(answered(stationsForm('Level', stationsMm)), readings));
    const wanted = { ...DEFAULT_CLEARANCES, seatBackMm: 30 };
    const box = largest(pieces, { shape: 'box', clearances: wanted });
    expect(box.depthBottomMm).toBeCloseTo(800 - 30 - 10, 2);
    expect(box.heightMm).toBeCloseTo(490, 2);
  });

  it('refuses sizes below nothing and a back the section has not', () => {
    expect(isRefusal(largestStraightBox(rectangle, { shape: 'box', heightMm: -3 }))).toBe(true);
    expect(isRefusal(largestStraightBox(rectangle, { shape: 'box', widthMm: Number.NaN }))).toBe(true);
    expect(isRefusal(largestStraightBox(rectangle, { shape: 'box', back: 'cab-wall' }))).toBe(true);
  });
});
