import type { PanelBody } from '@gusset/contracts/enclosure';
import type { Panel } from '@gusset/contracts/panel';
import { describe, expect, it } from 'vitest';
import { panelMesh } from './panel-mesh.ts';

const square = [
  { xMm: 0, yMm: 0 },
  { xMm: 300, yMm: 0 },
  { xMm: 300, yMm: 200 },
  { xMm: 0, yMm: 200 },
];
const body: PanelBody = {
  panelId: 'a',
  mark: 'A',
  role: 'wall',
  face: 'front',
  placement: {
    originMm: { x: 0, y: 0, z: 0 },
    xAxis: { x: 1, y: 0, z: 0 },
    yAxis: { x: 0, y: 1, z: 0 },
    normal: { x: 0, y: 0, z: 1 },
  },
  thicknessMm: 18,
  outerFace: square,
  innerFace: square,
  edgeLeans: ['square', 'square', 'square', 'square'],
  section: null,
};
const edge = { bevelRad: 0, joint: 'butt' as const, runsThrough: false };
const panel = (holes: Panel['holes']): Panel => ({
  id: 'a',
  mark: 'A',
  name: 'Baffle',
  materialId: 'mdf',
  thicknessMm: 18,
  lengthMm: 300,
  widthMm: 200,
  outline: square,
  edges: [edge, edge, edge, edge],
  holes,
  grain: 'none',
  quantity: 1,
  solidMm3: 0,
  massKg: 0,
});

/** Six times the volume under each triangle, added up: the volume of a closed body whose faces all look out. */
function volumeMm3(positions: Float32Array): number {
  let six = 0;
  for (let i = 0; i < positions.length; i += 9) {
    const [ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0, cx = 0, cy = 0, cz = 0] = positions.slice(
      i,
      i + 9,
    );
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

describe('panelMesh', () => {
  it('is closed and looks outward: it holds length × width × thickness', () => {
    expect(volumeMm3(panelMesh(body, panel([])).positions)).toBeCloseTo(300 * 200 * 18, 0);
  });
  it('goes right through its cut-outs', () => {
    const hole = {
      shape: 'rectangle' as const,
      purpose: 'window',
      centreXMm: 150,
      centreYMm: 100,
      widthMm: 100,
      heightMm: 50,
      cornerRadiusMm: 0,
      depthMm: null,
    };
    const { positions } = panelMesh(body, panel([hole]));
    expect(volumeMm3(positions)).toBeCloseTo((300 * 200 - 100 * 50) * 18, 0);
  });
  it('leaves a recess as wood', () => {
    const recess = {
      shape: 'circle' as const,
      purpose: 'recess',
      centreXMm: 150,
      centreYMm: 100,
      diameterMm: 80,
      depthMm: 6,
    };
    expect(volumeMm3(panelMesh(body, panel([recess])).positions)).toBeCloseTo(300 * 200 * 18, 0);
  });
  it('is a frustum where the edges are bevelled', () => {
    const innerFace = [
      { xMm: 18, yMm: 18 },
      { xMm: 282, yMm: 18 },
      { xMm: 282, yMm: 182 },
      { xMm: 18, yMm: 182 },
    ];
    const [big, small, middle] = [300 * 200, 264 * 164, 282 * 182];
    const { positions } = panelMesh({ ...body, innerFace }, panel([]));
    expect(volumeMm3(positions)).toBeCloseTo((18 / 6) * (big + 4 * middle + small), -1);
  });
});
