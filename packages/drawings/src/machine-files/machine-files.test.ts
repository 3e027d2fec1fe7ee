// Read back by a DXF parser of another family.
import * as dxf from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { outlinesDxf, partDxf, sheetDxf } from './dxf-file.ts';
import type { MachinePart } from './machine-part.ts';
import { partSvg } from './svg-file.ts';

type ICircleEntity = dxf.ICircleEntity;
type ILwpolylineEntity = dxf.ILwpolylineEntity;
// The package's types describe its module build; Node loads the other one, whose default is the class itself.
const Parser: unknown = dxf.default;
const DxfParser = Parser as typeof dxf.DxfParser;

const PART: MachinePart = {
  mark: 'B',
  name: 'Baffle <front>',
  thicknessMm: 18,
  outline: [
    { xMm: 0, yMm: 0 },
    { xMm: 800, yMm: 0 },
    { xMm: 800, yMm: 400 },
    { xMm: 0, yMm: 400 },
  ],
  edges: [
    { bevelDeg: 26.565 },
    { bevelDeg: 0, rebate: { widthMm: 18, depthMm: 9 } },
    { bevelDeg: 0 },
    { bevelDeg: 0 },
  ],
  holes: [
    {
      shape: 'circle',
      purpose: 'cut-out of driver 1',
      centreXMm: 300,
      centreYMm: 200,
      diameterMm: 282,
      depthMm: null,
    },
    {
      shape: 'circle',
      purpose: 'recess of driver 1',
      centreXMm: 300,
      centreYMm: 200,
      diameterMm: 320,
      depthMm: 9,
    },
    {
      shape: 'circle',
      purpose: 'bolt 1 of driver 1',
      centreXMm: 450,
      centreYMm: 200,
      diameterMm: 6.5,
      depthMm: null,
    },
    {
      shape: 'rectangle',
      purpose: 'terminal cup',
      centreXMm: 650,
      centreYMm: 100,
      widthMm: 90,
      heightMm: 60,
      cornerRadiusMm: 10,
      depthMm: null,
    },
  ],
};

function read(text: string) {
  const file = new DxfParser().parseSync(text);
  if (file === null) throw new Error('not readable');
  const on = (layer: string) => file.entities.filter((entity) => entity.layer === layer);
  return { file, on };
}

const circles = (entities: readonly { readonly type: string }[]) => entities as readonly ICircleEntity[];
const polylines = (entities: readonly { readonly type: string }[]) =>
  entities as readonly ILwpolylineEntity[];

/** Shoelace with the segment of each arc: (c²/4 b)... by bulge, area between chord and arc. */
function areaMm2({ vertices }: ILwpolylineEntity): number {
  return vertices.reduce((sum, from, index) => {
    const to = vertices[(index + 1) % vertices.length] ?? from;
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    const angle = 4 * Math.atan(from.bulge ?? 0);
    const radius = angle === 0 ? 0 : chord / (2 * Math.sin(Math.abs(angle) / 2));
    const segment = (Math.sign(angle) * radius ** 2 * (Math.abs(angle) - Math.sin(Math.abs(angle)))) / 2;
    return sum + (from.x * to.y - to.x * from.y) / 2 + segment;
  }, 0);
}

describe('a panel as DXF', () => {
  const { file, on } = read(partDxf(PART));

  it('is in millimetres, with a layer for each operation', () => {
    expect(file.header.$INSUNITS).toBe(4);
    const layers = Object.keys(file.tables.layer.layers);
    expect(layers).toEqual(expect.arrayContaining(['OUTLINE', 'THROUGH', 'RECESS_9_0', 'DRILL', 'NOTES']));
  });

  it('keeps circles as circles, at their place and size', () => {
    const [through] = circles(on('THROUGH').filter(({ type }) => type === 'CIRCLE'));
    expect(through).toMatchObject({ center: { x: 300, y: 200 }, radius: 141 });
    expect(circles(on('RECESS_9_0'))[0]?.radius).toBe(160);
    expect(circles(on('DRILL'))[0]?.radius).toBe(3.25);
  });

  it('closes its outlines, arcs as arcs', () => {
    const [outline] = polylines(on('OUTLINE'));
    expect(outline?.shape).toBe(true);
    expect(outline === undefined ? 0 : areaMm2(outline)).toBeCloseTo(320_000, 6);
    const [cup] = polylines(on('THROUGH').filter(({ type }) => type === 'LWPOLYLINE'));
    expect(cup?.shape).toBe(true);
    expect(cup?.vertices).toHaveLength(8);
    // 90 x 60 less what four round corners of 10 leave out: (4 - pi) 100.
    expect(cup === undefined ? 0 : areaMm2(cup)).toBeCloseTo(90 * 60 - (4 - Math.PI) * 100, 3);
  });

  it('notes bevels and steps, which the lines do not show', () => {
    const words = on('NOTES').map((entity) => ('text' in entity ? String(entity.text) : ''));
    expect(words.join('\n')).toContain('edge 1: bevel 26.6 deg');
    expect(words.join('\n')).toContain('edge 2: step 18 x 9, inner face');
  });
});

describe('a sheet as DXF', () => {
  it('turns a part within its blank, and draws only the blank of one that is trimmed later', () => {
    const at = { xMm: 100, yMm: 50, blankLengthMm: 800, blankWidthMm: 400 };
    const { on } = read(
      sheetDxf({
        lengthMm: 2440,
        widthMm: 1220,
        placed: [
          { ...at, part: PART, turned: true, isFinished: true },
          { ...at, xMm: 700, part: PART, turned: false, isFinished: false },
        ],
      }),
    );
    const [outline] = polylines(on('OUTLINE'));
    const xs = outline?.vertices.map(({ x }) => x) ?? [];
    const ys = outline?.vertices.map(({ y }) => y) ?? [];
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([100, 500, 50, 850]);
    // (300, 200) turned a quarter: 400 - 200 along x, 300 along y.
    const [cutOut] = circles(on('THROUGH').filter(({ type }) => type === 'CIRCLE'));
    expect(cutOut?.center).toMatchObject({ x: 300, y: 350 });
    // Still counter-clockwise: turned, not mirrored.
    expect(outline === undefined ? 0 : areaMm2(outline)).toBeGreaterThan(0);
    expect(polylines(on('BLANK'))).toHaveLength(1);
    expect(polylines(on('SHEET'))).toHaveLength(1);
  });
});

describe('a panel as SVG', () => {
  const svg = partSvg(PART);

  it('is as large as the panel, in millimetres', () => {
    expect(svg).toContain('width="800mm" height="400mm" viewBox="0 0 800 400"');
    expect(svg).toContain('<circle cx="300" cy="200" r="141"/>');
    expect(svg).toContain('A 10 10 0 0 0');
    expect(svg).toContain('Baffle &lt;front&gt;');
  });
});

describe('outlines side by side', () => {
  it('keep their size and do not meet', () => {
    const { on } = read(outlinesDxf([PART, { ...PART, name: 'Opening' }]));
    const [first, second] = polylines(on('OUTLINE'));
    const span = (outline: ILwpolylineEntity | undefined) => {
      const xs = outline?.vertices.map(({ x }) => x) ?? [];
      return [Math.min(...xs), Math.max(...xs)];
    };
    expect(span(first)).toEqual([0, 800]);
    expect(span(second)).toEqual([900, 1700]);
  });
});
