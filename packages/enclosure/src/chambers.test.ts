// Two chambers: worked by hand in the box of 700 × 380 × 420 mm, 18 mm board, and the laws for many.
import type { BoxDesign, BoxDesignInput, BoxResult, Chamber } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import loadManifold, { type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { anyDesign } from './arbitrary-design.ts';
import { anyPortedDesign } from './arbitrary-ports.ts';
import { buildBox } from './build-box.ts';
import { built, finding, panel, withDrivers } from './built-box.ts';
import { BARE_BOX, example } from './example-designs.ts';
import { mirrorDesign } from './mirror-design.ts';
import { solidOfBody, sweptAcross } from './solid-of-body.ts';

type DividerInput = NonNullable<BoxDesignInput['divider']>;

const divided = (divider: DividerInput, design: BoxDesign = BARE_BOX) => example({ ...design, divider });
const sum = (parts: readonly number[]) => parts.reduce((total, part) => total + part, 0);

function chambers(box: BoxResult): readonly [Chamber, Chamber] {
  const [near, far] = box.chambers ?? [];
  if (near === undefined || far === undefined) throw new Error('one chamber');
  return [near, far];
}

function refusal(design: BoxDesign) {
  const box = buildBox(design);
  if (!isRefusal(box)) throw new Error('this box was built');
  return box.refusal;
}

describe('a divider 150 mm behind the front', () => {
  const box = built(divided({ parallelTo: 'front', clearMm: 150 }));

  it('makes chambers of 150 and 216 mm, 664 × 344 mm each', () => {
    const [near, far] = chambers(box);
    expect(near.airLitres).toBeCloseTo((664 * 344 * 150) / 1e6, 9);
    expect(far.airLitres).toBeCloseTo((664 * 344 * (384 - 150 - 18)) / 1e6, 9);
    expect(panel(box, 'divider')).toMatchObject({ lengthMm: 664, widthMm: 344, thicknessMm: 18 });
  });

  it('is a deduction, and a seam all round', () => {
    expect(box.volumes.deductions).toContainEqual({
      code: 'divider',
      label: null,
      count: 1,
      litres: (664 * 344 * 18) / 1e6,
      source: 'computed',
    });
    expect(box.joints.dividerSeamMm).toBeCloseTo(2 * (664 + 344), 9);
  });

  it('gives a driver on the baffle to the near chamber, one in it to the chamber of its magnet', () => {
    const shallow = { mountingDepthMm: 110 };
    const onBaffle = built(divided({ parallelTo: 'front', clearMm: 150 }, withDrivers(BARE_BOX, shallow)));
    expect(chambers(onBaffle).map(({ deductions }) => deductions.map(({ code }) => code))).toEqual([
      ['driver'],
      [],
    ]);
    for (const magnets of ['near', 'far'] as const) {
      const inside = built(
        divided(
          { parallelTo: 'front', clearMm: 150, drivers: 'divider', magnets },
          withDrivers(BARE_BOX, shallow),
        ),
      );
      const [near, far] = chambers(inside);
      expect((magnets === 'near' ? near : far).deductions.map(({ code }) => code)).toEqual(['driver']);
      expect(panel(inside, 'divider').holes.map(({ purpose }) => purpose)).toContain('cut-out of driver 1');
      expect(panel(inside, 'wall-front').holes).toEqual([]);
    }
  });

  it('measures the room behind a magnet to the wall of its own chamber', () => {
    const inside = (magnets: 'near' | 'far') =>
      built(
        divided(
          { parallelTo: 'front', clearMm: 150, drivers: 'divider', magnets },
          withDrivers(BARE_BOX, {}),
        ),
      );
    expect(inside('far').drivers[0]?.depthAtMagnetEdgeMm).toBeCloseTo(18 + 216, 9);
    expect(inside('near').drivers[0]?.depthAtMagnetEdgeMm).toBeCloseTo(18 + 150, 9);
  });

  it('says that a driver on the baffle reaches into it, or near it', () => {
    const at = (clearMm: number) =>
      built(divided({ parallelTo: 'front', clearMm }, withDrivers(BARE_BOX, {}))); // 128 mm deep, 110 behind the wood
    expect(finding(at(100), 'driver-meets-divider')?.byMm).toBeCloseTo(10, 9);
    expect(finding(at(115), 'divider-close')).toMatchObject({ neededMm: 12 });
    expect(finding(at(115), 'divider-close')?.roomMm).toBeCloseTo(5, 9);
    expect(finding(at(125), 'divider-close')).toBeUndefined();
  });

  it('cuts every brace in two', () => {
    const bracing = { kind: 'count' as const, count: 1, solidFraction: 1, offCentre: 'left' as const };
    const braced = built(divided({ parallelTo: 'front', clearMm: 150 }, { ...BARE_BOX, bracing }));
    expect(panel(braced, 'brace-1-near').solidMm3).toBeCloseTo(150 * 344 * 18, 3);
    expect(panel(braced, 'brace-1-far').solidMm3).toBeCloseTo(216 * 344 * 18, 3);
    expect(chambers(braced).map(({ deductions }) => deductions[0]?.count)).toEqual([1, 1]);
  });
});

describe('a divider 200 mm from the left side', () => {
  const design = divided({ parallelTo: 'left', clearMm: 200 });

  it('stands upright between all walls', () => {
    const box = built(design);
    const [near, far] = chambers(box);
    expect(near.airLitres).toBeCloseTo((200 * 344 * 384) / 1e6, 9);
    expect(far.airLitres).toBeCloseTo((446 * 344 * 384) / 1e6, 9);
    expect(panel(box, 'divider').outline).toHaveLength(4);
  });

  it('puts the row of drivers into the chamber of their magnets', () => {
    const box = built(divided({ parallelTo: 'left', clearMm: 200 }, withDrivers(BARE_BOX, {})));
    // far: from -332 to 114
    expect(box.drivers[0]?.zMm).toBeCloseTo((-332 + 114) / 2, 9);
    expect(finding(box, 'driver-meets-divider')).toBeUndefined();
  });
});

describe('a divider that cannot be', () => {
  it('leaves no chamber', () => {
    expect(refusal(divided({ parallelTo: 'front', clearMm: 370 }))).toMatchObject({
      field: 'divider.clearMm',
      allowed: '10 to 356 mm, so that both chambers keep air',
    });
  });

  it('ends in a corner', () => {
    const shape = {
      kind: 'clipped-wedge' as const,
      widthMm: 700,
      heightMm: 400,
      depthBottomMm: 500,
      depthTopMm: 300,
      kneeHeightMm: 200,
      slopedFace: 'front' as const,
    };
    // The inside of the knee lies near y = 200; a divider 18 mm thick just there ends on both walls.
    const { field, why } = refusal(divided({ parallelTo: 'bottom', clearMm: 165 }, { ...BARE_BOX, shape }));
    expect(field).toBe('divider.clearMm');
    expect(why).toBe('parallel to the bottom it ends in a corner there, or meets a wall too flat');
  });

  it('carries drivers along the sides', () => {
    expect(refusal(divided({ parallelTo: 'left', clearMm: 200, drivers: 'divider' })).field).toBe(
      'divider.drivers',
    );
  });
});

const anyDivider = fc.record({
  parallelTo: fc.constantFrom(
    'front' as const,
    'back' as const,
    'bottom' as const,
    'left' as const,
    'right' as const,
  ),
  clearMm: fc.double({ min: 40, max: 300, noNaN: true }),
  drivers: fc.constantFrom('baffle' as const, 'divider' as const),
  magnets: fc.constantFrom('near' as const, 'far' as const),
});

const anyDividedDesign: fc.Arbitrary<BoxDesign> = fc
  .tuple(fc.oneof(anyDesign, anyPortedDesign), anyDivider)
  .map(([design, divider]) => ({ ...design, divider }));

describe('boxes of two chambers', () => {
  let wasm: ManifoldToplevel;
  beforeAll(async () => {
    wasm = await loadManifold();
    wasm.setup();
  });

  it('have nets that add up to the net of the box', () => {
    fc.assert(
      fc.property(anyDividedDesign, (design) => {
        const box = buildBox(design);
        fc.pre(!isRefusal(box));
        if (isRefusal(box)) return;
        expect(sum(chambers(box).map(({ netLitres }) => netLitres))).toBeCloseTo(box.volumes.netLitres, 7);
        // Of two equally free places a pipe takes the left one, in the mirror too.
        if (design.ports.some(({ kind }) => kind === 'tube')) return;
        const mirror = buildBox(mirrorDesign(design));
        if (isRefusal(mirror)) throw new Error(mirror.refusal.why);
        chambers(mirror).forEach(({ netLitres }, index) => {
          expect(netLitres).toBeCloseTo(chambers(box)[index]?.netLitres ?? Number.NaN, 7);
        });
      }),
      { numRuns: 500, seed: 61 },
    );
  });

  it('have nothing that stands in anything else, and air where they say so', () => {
    fc.assert(
      fc.property(anyDividedDesign, (design) => {
        const box = buildBox(design);
        fc.pre(!isRefusal(box));
        if (isRefusal(box)) return;
        fc.pre(!box.findings.some(({ code }) => /meet/u.test(code)));
        const solids = box.bodies
          .filter(
            ({ role, panelId }) =>
              role === 'brace' ||
              role === 'port' ||
              role === 'divider' ||
              panelId.startsWith('doubler-inside'),
          )
          .map((body) => solidOfBody(wasm, body));
        const air = sweptAcross(wasm, box.section.inner, box.plan.inner.zMinMm, box.plan.inner.zMaxMm);
        const together = wasm.Manifold.union(solids);
        const close = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-6 * air.volume());
        close(together.volume(), sum(solids.map((solid) => solid.volume())));
        close(together.subtract(air).volume(), 0);
        const bare = sum(chambers(box).map(({ airLitres }) => airLitres)) * 1e6;
        const taken = sum(
          box.volumes.deductions
            .filter(({ code }) => code === 'divider' || code === 'inside-doubler')
            .map(({ litres }) => litres * 1e6),
        );
        // A slot's mouth goes through doublers inside, which then are no wood there.
        if (box.ports === undefined) close(bare + taken, air.volume());
        for (const solid of [...solids, air, together]) solid.delete();
      }),
      { numRuns: 60, seed: 62 },
    );
  });
});
