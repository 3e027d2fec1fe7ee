import { DEFAULT_CUT_SETTINGS, DEFAULT_ROUTER_TOOLS } from '@gusset/contracts/cutting';
import type { Panel, PanelHole } from '@gusset/contracts/panel';
import { describe, expect, it } from 'vitest';
import { cutList } from '../cut-list.ts';
import { benchWork } from './bench-work.ts';

const circle = (
  purpose: string,
  x: number,
  y: number,
  diameterMm: number,
  depthMm: number | null,
): PanelHole => ({
  shape: 'circle',
  purpose,
  centreXMm: x,
  centreYMm: y,
  diameterMm,
  depthMm,
});

const BOLTS = Array.from({ length: 8 }, (_, index) => {
  const angle = (index * Math.PI) / 4;
  return circle(
    `bolt ${index + 1} of driver 1`,
    400 + 150 * Math.cos(angle),
    200 + 150 * Math.sin(angle),
    6.5,
    null,
  );
});

const BAFFLE: Panel = {
  id: 'baffle',
  mark: 'A',
  name: 'Baffle',
  materialId: 'mdf',
  thicknessMm: 18,
  lengthMm: 800,
  widthMm: 400,
  outline: [
    { xMm: 0, yMm: 0 },
    { xMm: 800, yMm: 0 },
    { xMm: 800, yMm: 400 },
    { xMm: 0, yMm: 400 },
  ],
  edges: [
    { bevelRad: 0, joint: 'butt', runsThrough: true },
    { bevelRad: 0, joint: 'rabbet', runsThrough: false, rabbet: { widthMm: 18, depthMm: 9 } },
    { bevelRad: 0, joint: 'butt', runsThrough: false },
    { bevelRad: 0, joint: 'butt', runsThrough: false },
  ],
  holes: [
    circle('cut-out of driver 1', 400, 200, 282, null),
    circle('recess of driver 1', 400, 200, 320, 9),
    ...BOLTS,
    {
      shape: 'rectangle',
      purpose: 'terminal cup',
      centreXMm: 100,
      centreYMm: 100,
      widthMm: 90,
      heightMm: 60,
      cornerRadiusMm: 0,
      depthMm: null,
    },
  ],
  grain: 'none',
  quantity: 1,
  solidMm3: 1,
  massKg: 1,
};

const rows = cutList([BAFFLE], { ...DEFAULT_CUT_SETTINGS, oversizeMm: 1.5 });
const work = benchWork(rows, DEFAULT_ROUTER_TOOLS);

describe('router and drill', () => {
  it('cuts the recess before the hole, about one centre', () => {
    // Half-inch bit: (320 - 12.7) / 2 and (282 - 12.7) / 2; 30 mm bush: 17.3 mm larger templates.
    expect(work.circles).toHaveLength(1);
    expect(work.circles[0]).toMatchObject({ xMm: 400, yMm: 200 });
    const figures = work.circles[0]?.circles.map((one) => [
      one.diameterMm,
      one.pivotMm,
      one.templateDiaMm,
      one.passes,
    ]);
    expect(figures?.[0]?.[0]).toBe(320);
    expect(figures?.[0]?.[1]).toBeCloseTo(153.65, 9);
    expect(figures?.[0]?.[2]).toBeCloseTo(337.3, 9);
    expect(figures?.map((one) => one[3])).toEqual([2, 3]);
    expect(figures?.[1]?.[1]).toBeCloseTo(134.65, 9);
  });

  it('knows the bolts as one circle', () => {
    expect(work.holes).toHaveLength(1);
    expect(work.holes[0]).toMatchObject({ purpose: 'bolts of driver 1', diameterMm: 6.5 });
    expect(work.holes[0]?.ring?.diameterMm).toBeCloseTo(300, 9);
    expect(work.holes[0]?.centres).toHaveLength(8);
  });

  it('flags corners that the bit cannot leave square', () => {
    expect(work.openings[0]).toMatchObject({ isCornerBelowBit: true, passes: 3 });
    expect(work.openings[0]?.templateMm?.lengthMm).toBeCloseTo(107.3, 9);
  });

  it('lists steps and flush trims by edge', () => {
    expect(work.rebates).toEqual([
      { panelId: 'baffle', mark: 'A', pieces: 1, edge: 1, lengthMm: 400, widthMm: 18, depthMm: 9, passes: 2 },
    ]);
    expect(work.flushTrims).toMatchObject([{ edge: 0, lengthMm: 800, oversizeMm: 1.5 }]);
  });

  it('has no template without a bush', () => {
    const bare = benchWork(rows, { ...DEFAULT_ROUTER_TOOLS, bushDiaMm: null });
    expect(bare.circles[0]?.circles.every(({ templateDiaMm }) => templateDiaMm === null)).toBe(true);
    expect(bare.openings[0]?.templateMm).toBeNull();
  });
});
