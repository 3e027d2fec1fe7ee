// An L and a step: hollow corners are mitred, everything else is as in any box. One worked by hand, the laws for many.
import type { BoxDesign } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import loadManifold, { type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { anyFittings, anyLProfile } from './arbitrary-design.ts';
import { buildBox } from './build-box.ts';
import { built, finding, panel, withDrivers } from './built-box.ts';
import { BARE_BOX, example } from './example-designs.ts';
import { mirrorDesign } from './mirror-design.ts';
import { solidOfBody, sweptAcross } from './solid-of-body.ts';

const LITRE_MM3 = 1e6;
const sum = (parts: readonly number[]) => parts.reduce((total, part) => total + part, 0);

/** 600 deep, 400 high; the upper front 250 × 150 is not there: a low limb under the seat, a high one behind it. */
const L_BOX = example({
  ...BARE_BOX,
  shape: {
    kind: 'profile',
    widthMm: 700,
    walls: [
      { xMm: 0, yMm: 0, face: 'bottom' },
      { xMm: 600, yMm: 0, face: 'front' },
      { xMm: 600, yMm: 250, face: 'slope-1' },
      { xMm: 350, yMm: 250, face: 'slope-2' },
      { xMm: 350, yMm: 400, face: 'top' },
      { xMm: 0, yMm: 400, face: 'back' },
    ],
  },
});

describe('an L of 600 × 400 mm with 250 × 150 mm left out', () => {
  const box = built(L_BOX);

  it('holds both limbs: 664 × (564 × 214 + 314 × 150) mm', () => {
    expect(box.volumes.grossLitres).toBeCloseTo((664 * (564 * 214 + 314 * 150)) / 1e6, 9);
    expect(box.volumes.outsideLitres).toBeCloseTo((700 * (600 * 250 + 350 * 150)) / 1e6, 9);
  });

  it('mitres the hollow corner at 45°, so that both faces have their own length', () => {
    // The step's inner face goes on under the upper front, one thickness further than its outer face.
    const step = panel(box, 'wall-slope-1');
    const mitre = step.edges.find(({ joint }) => joint === 'mitre');
    expect(mitre?.bevelRad).toBeCloseTo(Math.PI / 4, 9);
    const body = box.bodies.find(({ panelId }) => panelId === 'wall-slope-1');
    const deep = (face: readonly { yMm: number }[] | undefined) => {
      const ys = (face ?? []).map(({ yMm }) => yMm);
      return Math.max(...ys) - Math.min(...ys);
    };
    expect(deep(body?.innerFace) - deep(body?.outerFace)).toBeCloseTo(18, 9);
  });

  it('has sides with six corners', () => {
    expect(panel(box, 'side-left').outline).toHaveLength(6);
    expect(panel(box, 'side-left').solidMm3).toBeCloseTo((600 * 250 + 350 * 150) * 18, 3);
  });

  it('tells a magnet in the wood of its step from one in the air of its lower limb', () => {
    const deep = {
      mountingDepthMm: 200,
      overallDiaMm: 140,
      cutoutDiaMm: 120,
      boltCircleDiaMm: 130,
      magnetDiaMm: 100,
    };
    const at = (upMm: number) => built(withDrivers(L_BOX, deep, { positions: [{ zMm: 0, upMm }] }));
    expect(finding(at(125), 'driver-meets-wall')).toBeUndefined();
    expect(finding(at(190), 'driver-meets-wall')?.byMm).toBeGreaterThan(0);
  });

  it('is refused where its boards would leave nothing of a limb', () => {
    const shape = L_BOX.shape;
    if (shape.kind !== 'profile') throw new Error('an L is a profile');
    const walls = shape.walls.map((wall) => (wall.yMm === 250 ? { ...wall, yMm: 44 } : wall));
    const thin = buildBox({ ...L_BOX, shape: { ...shape, walls } });
    expect(isRefusal(thin)).toBe(true);
  });

  it('is refused where it crosses itself', () => {
    const shape = L_BOX.shape;
    if (shape.kind !== 'profile') throw new Error('an L is a profile');
    const walls = shape.walls.map((wall) =>
      wall.face === 'slope-2' ? { ...wall, xMm: 250, yMm: -40 } : wall,
    );
    const crossed = buildBox({ ...L_BOX, shape: { ...shape, walls } });
    expect(isRefusal(crossed) && crossed.refusal.why).toBe('the outline crosses itself');
  });
});

const anyHollowDesign: fc.Arbitrary<BoxDesign> = fc
  .tuple(anyLProfile, anyFittings)
  .map(([shape, fittings]) => fittings(shape));

describe('boxes with hollow corners', () => {
  let wasm: ManifoldToplevel;
  beforeAll(async () => {
    wasm = await loadManifold();
    wasm.setup();
  });

  it('are filled by their panels without gap or overlap', () => {
    fc.assert(
      fc.property(anyHollowDesign, (design) => {
        const box = buildBox(design);
        fc.pre(!isRefusal(box));
        if (isRefusal(box)) return;
        const { shellLitres, grossLitres, outsideLitres } = box.volumes;
        expect(Math.abs(shellLitres + grossLitres - outsideLitres)).toBeLessThan(1e-9 * outsideLitres);
        const half = box.sizes.wood.widthMm / 2;
        const outside = sweptAcross(wasm, box.section.wood, -half, half);
        const air = sweptAcross(wasm, box.section.inner, box.plan.inner.zMinMm, box.plan.inner.zMaxMm);
        const hollow = outside.subtract(air);
        const solids = box.bodies
          .filter(({ panelId }) => !/^(brace|doubler-inside)/u.test(panelId))
          .map((body) => solidOfBody(wasm, body));
        const together = wasm.Manifold.union(solids);
        const close = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-6 * outside.volume());
        close(outside.volume(), outsideLitres * LITRE_MM3);
        close(together.volume(), sum(solids.map((solid) => solid.volume())));
        close(together.subtract(hollow).volume(), 0);
        close(hollow.subtract(together).volume(), 0);
        for (const solid of [...solids, outside, air, hollow, together]) solid.delete();
      }),
      { numRuns: 60, seed: 51 },
    );
  });

  it('are as large in the mirror', () => {
    fc.assert(
      fc.property(anyHollowDesign, (design) => {
        const box = buildBox(design);
        const mirror = buildBox(mirrorDesign(design));
        fc.pre(!isRefusal(box) && !isRefusal(mirror));
        if (isRefusal(box) || isRefusal(mirror)) return;
        expect(mirror.volumes.netLitres).toBeCloseTo(box.volumes.netLitres, 9);
        expect(mirror.mass.emptyCentreMm.z).toBeCloseTo(-box.mass.emptyCentreMm.z, 6);
      }),
      { numRuns: 60, seed: 52 },
    );
  });
});
