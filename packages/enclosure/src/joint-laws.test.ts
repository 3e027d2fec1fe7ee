// Rabbets and mitres: worked by hand in the box of 700 × 380 × 420 mm of 18 mm board, and closed for any choice.
import type { BoxDesign } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import loadManifold, { type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { anyDesign } from './arbitrary-design.ts';
import { buildBox } from './build-box.ts';
import { built, panel } from './built-box.ts';
import { BARE_BOX } from './example-designs.ts';
import { solidOfBody, sweptAcross } from './solid-of-body.ts';

type Kinds = BoxDesign['joints']['kinds'];

const joined = (kinds: Partial<Kinds>, design: BoxDesign = BARE_BOX): BoxDesign => ({
  ...design,
  joints: { ...design.joints, kinds: { ...design.joints.kinds, ...kinds } },
});
const sum = (parts: readonly number[]) => parts.reduce((total, part) => total + part, 0);

describe('rabbets of half the board', () => {
  const box = built(joined({ bottomFront: 'rabbet', topFront: 'rabbet' }));

  it('make the panel that is let in longer by their depth at each end', () => {
    expect(panel(box, 'wall-front').widthMm).toBeCloseTo(344 + 2 * 9, 9);
    expect(panel(box, 'wall-back').widthMm).toBeCloseTo(344, 9);
    expect(panel(box, 'wall-front').edges[0]).toMatchObject({ joint: 'rabbet', runsThrough: false });
  });

  it('take a step of 18 × 9 mm out of the panel that runs through', () => {
    expect(panel(box, 'wall-bottom').solidMm3).toBeCloseTo((420 * 18 - 18 * 9) * 664, 3);
    const stepped = panel(box, 'wall-bottom').edges.filter(({ rabbet }) => rabbet !== undefined);
    expect(stepped).toEqual([
      { bevelRad: 0, joint: 'rabbet', runsThrough: true, rabbet: { widthMm: 18, depthMm: 9 } },
    ]);
  });

  it('in the sides let every wall in', () => {
    const inSides = built(joined({ sides: 'rabbet' }));
    expect(panel(inSides, 'wall-front').lengthMm).toBeCloseTo(664 + 2 * 9, 9);
    // 420 × 380 × 18 less 9 mm deep all round 384 × 344
    expect(panel(inSides, 'side-left').solidMm3).toBeCloseTo(420 * 380 * 18 - (420 * 380 - 384 * 344) * 9, 3);
    expect(inSides.volumes.grossLitres).toBeCloseTo(87.711744, 9);
  });
});

describe('mitres', () => {
  it('at every corner of a right-angled box are 45°', () => {
    const all = { bottomFront: 'mitre', bottomBack: 'mitre', topFront: 'mitre', topBack: 'mitre' } as const;
    const box = built(joined(all));
    for (const id of ['wall-bottom', 'wall-front', 'wall-top', 'wall-back']) {
      const ends = panel(box, id).edges.filter(({ joint }) => joint === 'mitre');
      expect(ends.map(({ bevelRad }) => bevelRad)).toEqual([
        expect.closeTo(Math.PI / 4, 9),
        expect.closeTo(Math.PI / 4, 9),
      ]);
    }
    expect(panel(box, 'wall-bottom').widthMm).toBe(420);
    expect(box.volumes.grossLitres).toBeCloseTo(87.711744, 9);
  });
});

describe('a rabbet that leaves too little wood', () => {
  it('is refused with what would do', () => {
    const design = joined({ topFront: 'rabbet' });
    const box = buildBox({ ...design, joints: { ...design.joints, rabbetDepthMm: 16 } });
    expect(isRefusal(box) && box.refusal).toEqual({
      field: 'joints.rabbetDepthMm',
      allowed: '1 to 15 mm',
      got: 16,
      why: 'a board of 18 mm keeps 2 mm under it',
    });
  });
});

const kind = fc.constantFrom('butt' as const, 'rabbet' as const, 'mitre' as const);
const anyKinds = fc.record({
  bottomFront: kind,
  bottomBack: kind,
  topFront: kind,
  topBack: kind,
  others: kind,
  sides: fc.constantFrom('butt' as const, 'rabbet' as const),
});
const anyJoinedDesign = fc
  .tuple(anyDesign, anyKinds)
  .map(([design, kinds]) =>
    joined({ ...kinds, sides: design.joints.sides === 'covered' ? 'butt' : kinds.sides }, design),
  );

describe('boxes of any joints', () => {
  let wasm: ManifoldToplevel;
  beforeAll(async () => {
    wasm = await loadManifold();
    wasm.setup();
  });

  it('add up: outside = shell + gross', () => {
    fc.assert(
      fc.property(anyJoinedDesign, (design) => {
        const box = buildBox(design);
        fc.pre(!isRefusal(box));
        if (isRefusal(box)) return;
        const { outsideLitres, shellLitres, grossLitres } = box.volumes;
        expect(Math.abs(shellLitres + grossLitres - outsideLitres)).toBeLessThan(1e-9 * outsideLitres);
      }),
      { numRuns: 2_000, seed: 71 },
    );
  });

  it('are filled by their panels without gap or overlap', () => {
    fc.assert(
      fc.property(anyJoinedDesign, (design) => {
        const box = buildBox(design);
        fc.pre(!isRefusal(box));
        if (isRefusal(box)) return;
        const half = box.sizes.wood.widthMm / 2;
        const outside = sweptAcross(wasm, box.section.wood, -half, half);
        const { zMinMm, zMaxMm } = box.plan.inner;
        const air = sweptAcross(wasm, box.section.inner, zMinMm, zMaxMm);
        const hollow = outside.subtract(air);
        const depthMm = design.joints.kinds.sides === 'rabbet' ? design.stock.carcass.thicknessMm / 2 : 0;
        const solids = box.bodies
          .filter(({ panelId }) => !/^(brace|doubler-inside)/u.test(panelId))
          .map((body) => {
            const { lengthMm } = panel(box, body.panelId);
            if (body.section !== null) return sweptAcross(wasm, body.section, -lengthMm / 2, lengthMm / 2);
            // The rabbet of a side: its inner layer is as large as the inside.
            const whole = solidOfBody(wasm, body);
            if (depthMm === 0) return whole;
            const sign = body.face === 'left' ? 1 : -1;
            const [floor, inside] = [sign * (zMaxMm + depthMm), sign * zMaxMm];
            const layer = sweptAcross(
              wasm,
              box.section.wood,
              Math.min(floor, inside),
              Math.max(floor, inside),
            );
            const kept = sweptAcross(
              wasm,
              box.section.inner,
              Math.min(floor, inside),
              Math.max(floor, inside),
            );
            return whole.subtract(layer).add(kept);
          });
        const together = wasm.Manifold.union(solids);
        const close = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-6 * outside.volume());
        close(together.volume(), sum(solids.map((solid) => solid.volume())));
        close(together.volume(), box.volumes.shellLitres * 1e6);
        close(together.subtract(hollow).volume(), 0);
        close(hollow.subtract(together).volume(), 0);
        for (const solid of [...solids, outside, air, hollow, together]) solid.delete();
      }),
      { numRuns: 60, seed: 72, endOnFailure: true },
    );
  });
});
