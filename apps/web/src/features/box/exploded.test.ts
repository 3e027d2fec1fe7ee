import type { PanelBody } from '@gusset/contracts/enclosure';
import { describe, expect, it } from 'vitest';
import { explodedShift } from './exploded.ts';

/** An upright panel 300 wide and 200 high, its outer face at x = 320, looking along x. */
const front: PanelBody = {
  panelId: 'a',
  mark: 'A',
  role: 'wall',
  face: 'front',
  placement: {
    originMm: { x: 320, y: 0, z: -150 },
    xAxis: { x: 0, y: 0, z: 1 },
    yAxis: { x: 0, y: -1, z: 0 },
    normal: { x: 1, y: 0, z: 0 },
  },
  thicknessMm: 20,
  outerFace: [
    { xMm: 0, yMm: -200 },
    { xMm: 300, yMm: -200 },
    { xMm: 300, yMm: 0 },
    { xMm: 0, yMm: 0 },
  ],
  innerFace: [],
  edgeLeans: ['square', 'square', 'square', 'square'],
  section: null,
};
const MIDDLE = { x: 160, y: 100, z: 0 };

describe('explodedShift', () => {
  it('leaves the box together at the start of the slider', () => {
    const { x, y, z } = explodedShift(front, MIDDLE, 0);
    expect(Math.hypot(x, y, z)).toBe(0);
  });

  it('moves a wall straight out: its middle lies 150 mm in front of the middle of the box', () => {
    const shift = explodedShift(front, MIDDLE, 1);
    expect(shift.x).toBeCloseTo(135, 9);
    expect(shift.y).toBeCloseTo(0, 9);
    expect(shift.z).toBeCloseTo(0, 9);
  });

  it('parts the layers of one wall, the outer one further out', () => {
    const inner = { ...front, placement: { ...front.placement, originMm: { x: 300, y: 0, z: -150 } } };
    expect(explodedShift(front, MIDDLE, 0.5).x).toBeGreaterThan(explodedShift(inner, MIDDLE, 0.5).x);
  });
});
