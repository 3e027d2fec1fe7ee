import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDesign } from './arbitrary-design.ts';
import { boxForNetVolume } from './box-for-net-volume.ts';
import { buildBox } from './build-box.ts';
import { BARE_BOX, BARE_WEDGE, HALDEN_TWIN } from './example-designs.ts';

describe('boxForNetVolume', () => {
  it('finds the depth of a plain box: V / ((W - 2t)(H - 2t)) + 2t', () => {
    const found = boxForNetVolume({ design: BARE_BOX, targetNetLitres: 60, vary: 'depth' });
    if (isRefusal(found) || found.shape.kind !== 'rectangular') throw new Error('a rectangular box');
    expect(found.shape.depthMm).toBeCloseTo(60e6 / (664 * 344) + 36, 6);
    expect(found.shape.widthMm).toBe(700);
  });

  it('moves both depths of a wedge, so that the slope stays', () => {
    const found = boxForNetVolume({ design: BARE_WEDGE, targetNetLitres: 80, vary: 'depth' });
    if (isRefusal(found) || found.shape.kind !== 'wedge') throw new Error('a wedge');
    expect(found.shape.depthBottomMm - found.shape.depthTopMm).toBeCloseTo(200, 9);
    // mean inside depth = V / (764 × 364), and the mean outside depth is 18 + 9√5 more
    const meanMm = (found.shape.depthBottomMm + found.shape.depthTopMm) / 2;
    expect(meanMm).toBeCloseTo(80e6 / (764 * 364) + 18 + 9 * Math.sqrt(5), 6);
  });

  it('settles a suggested bracing, so that the box built from it has the volume', () => {
    for (const vary of ['depth', 'height', 'width'] as const) {
      const found = boxForNetVolume({ design: HALDEN_TWIN, targetNetLitres: 60, vary });
      if (isRefusal(found)) throw new Error(found.refusal.why);
      const box = buildBox(found);
      if (isRefusal(box)) throw new Error(box.refusal.why);
      expect(box.volumes.netLitres).toBeCloseTo(60, 6);
    }
  });

  it('hits the target for any design, or says that no size does', () => {
    let hits = 0;
    fc.assert(
      fc.property(
        anyDesign,
        fc.double({ min: 15, max: 120, noNaN: true }),
        fc.constantFrom('depth', 'height', 'width'),
        (design, targetNetLitres, vary) => {
          const found = boxForNetVolume({ design, targetNetLitres, vary });
          if (isRefusal(found)) return;
          const box = buildBox(found);
          if (isRefusal(box)) throw new Error(box.refusal.why);
          expect(box.volumes.netLitres).toBeCloseTo(targetNetLitres, 6);
          hits += 1;
        },
      ),
      { numRuns: 60, seed: 61 },
    );
    expect(hits).toBeGreaterThan(30);
  });

  it('refuses a volume that the largest box does not hold', () => {
    const found = boxForNetVolume({ design: BARE_BOX, targetNetLitres: 4_000, vary: 'depth' });
    expect(isRefusal(found) && found.refusal).toMatchObject({
      field: 'targetNetLitres',
      why: 'the largest depth the shop can build is still too small',
    });
  });

  it('refuses a volume below that of the smallest box', () => {
    const found = boxForNetVolume({ design: BARE_BOX, targetNetLitres: 1, vary: 'depth' });
    // 60 mm deep: 664 × 344 × 24 mm = 5.48 L
    expect(isRefusal(found) && found.refusal.why).toBe(
      'the smallest depth that can be built already gives 5.48 L',
    );
  });

  it('passes on what is wrong with the design itself', () => {
    const found = boxForNetVolume({
      design: { ...BARE_BOX, lowPassHz: Number.NaN },
      targetNetLitres: 40,
      vary: 'depth',
    });
    expect(isRefusal(found) && found.refusal.field).toBe('lowPassHz');
  });
});
