import { describe, expect, it } from 'vitest';
import { driverOutline, mountingDoubts, VIEW_HEIGHT, VIEW_WIDTH } from './driver-outline.ts';

const QUINCE = {
  overallDiaMm: 269,
  cutoutDiaMm: 236,
  flangeThicknessMm: 7,
  mountingDepthMm: 141,
  magnetDiaMm: 156,
  poleVentDiaMm: 25,
};

describe('driverOutline', () => {
  it('is nothing before cut-out, diameter and depth are known', () => {
    expect(driverOutline({ ...QUINCE, cutoutDiaMm: null })).toBeNull();
    expect(driverOutline({})).toBeNull();
  });

  it('keeps proportions and stays inside its place', () => {
    for (const figures of [QUINCE, { ...QUINCE, mountingDepthMm: 600 }, { ...QUINCE, overallDiaMm: 800 }]) {
      const view = driverOutline(figures);
      if (view === null) throw new Error('no outline');
      expect(view.backX - view.faceX).toBeCloseTo(figures.mountingDepthMm * view.scale, 6);
      expect(2 * view.overallHalf).toBeCloseTo(figures.overallDiaMm * view.scale, 6);
      expect(view.frontX).toBeGreaterThan(0);
      expect(view.backX).toBeLessThan(VIEW_WIDTH);
      expect(view.axisY + view.overallHalf).toBeLessThan(VIEW_HEIGHT);
    }
  });

  it('says where it draws the usual instead of a figure', () => {
    expect(driverOutline(QUINCE)?.isGuessed).toBe(false);
    expect(driverOutline({ ...QUINCE, magnetDiaMm: null })?.isGuessed).toBe(true);
  });
});

describe('mountingDoubts', () => {
  it('finds nothing wrong with a driver that can be built in', () => {
    expect(mountingDoubts(QUINCE)).toEqual([]);
  });

  it('names what cannot be', () => {
    expect(mountingDoubts({ ...QUINCE, cutoutDiaMm: 270 })[0]).toContain('nothing to rest on');
    expect(mountingDoubts({ ...QUINCE, magnetDiaMm: 240 })[0]).toContain('from the front');
    expect(mountingDoubts({ ...QUINCE, flangeThicknessMm: 150 })[0]).toContain('thicker');
  });
});
