import type { BoxDesign } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDesign } from './arbitrary-design.ts';
import { buildBox } from './build-box.ts';
import { built, finding, panel, withDrivers } from './built-box.ts';
import { BARE_BOX } from './example-designs.ts';

const setBack = (setBackMm: number, design: BoxDesign = BARE_BOX): BoxDesign => ({
  ...design,
  baffle: { ...design.baffle, setBackMm },
});

describe('a baffle set back by 25 mm', () => {
  const box = built(setBack(25));

  it('takes 25 mm of the depth inside and leaves the outside', () => {
    expect(box.sizes.wood).toEqual({ depthMm: 420, heightMm: 380, widthMm: 700 });
    expect(box.volumes.grossLitres).toBeCloseTo((664 * 344 * (384 - 25)) / 1e6, 9);
    expect(box.volumes.recessLitres).toBeCloseTo((664 * 344 * 25) / 1e6, 9);
  });

  it('stands between panels that run out past it', () => {
    expect(panel(box, 'wall-front')).toMatchObject({ lengthMm: 664, widthMm: 344 });
    expect(panel(box, 'wall-bottom').widthMm).toBe(420);
    expect(box.bodies.find(({ role }) => role === 'baffle')?.section).toContainEqual({ xMm: 395, yMm: 18 });
  });

  it('seats its driver behind the edges, with as much less room behind it', () => {
    const [flush, deep] = [0, 25].map((mm) => built(setBack(mm, withDrivers(BARE_BOX, {}))).drivers[0]);
    expect(deep?.seatMm.x).toBeCloseTo(395, 9);
    expect((flush?.depthAtMagnetEdgeMm ?? 0) - (deep?.depthAtMagnetEdgeMm ?? 0)).toBeCloseTo(25, 9);
  });

  it('shows only what lies between the panels round it', () => {
    // 344 mm clear; a flange of 360 mm lies on a flush baffle of 380 mm
    const wide = { overallDiaMm: 360, cutoutDiaMm: 300, boltCircleDiaMm: 330 };
    const found = finding(built(setBack(25, withDrivers(BARE_BOX, wide))), 'driver-larger-than-baffle');
    expect(found).toMatchObject({ measure: 'flange', direction: 'up', haveMm: 344 });
  });

  it('is refused with a doubler outside', () => {
    const design = {
      ...BARE_BOX,
      baffle: { ...BARE_BOX.baffle, doubler: { at: 'outside' as const, layers: 1 } },
    };
    const refused = buildBox(setBack(25, design));
    expect(isRefusal(refused) && refused.refusal.why).toBe('a doubler outside lies over its edges');
  });
});

describe('any box with its baffle set back', () => {
  it('adds up: outside = shell + recess + gross', () => {
    fc.assert(
      fc.property(anyDesign, fc.double({ min: 1, max: 60, noNaN: true }), (design, mm) => {
        const box = buildBox(setBack(mm, design));
        fc.pre(!isRefusal(box));
        if (isRefusal(box)) return;
        const { outsideLitres, shellLitres, grossLitres, recessLitres } = box.volumes;
        const whole = shellLitres + grossLitres + (recessLitres ?? Number.NaN);
        expect(Math.abs(whole - outsideLitres)).toBeLessThan(1e-9 * outsideLitres);
      }),
      { numRuns: 500, seed: 81 },
    );
  });
});
