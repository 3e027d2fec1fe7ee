import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenScene, keyedPlaces } from '../scene/flatten.ts';
import type { Scene, SceneItem } from '../scene/scene.ts';
import { doubleArea, rectangle, spot } from '../scene/spot.ts';
import {
  BOX_FRONT,
  BOX_ISOMETRIC,
  BOX_SECTION,
  CAVITY,
  PANEL,
  SHEET,
  SURVEY,
} from '../testing/sample-views.ts';
import { textWidthPt } from '../text/text-width.ts';
import { boltCentres, boxFront } from './box-front.ts';
import { boxIsometric, type DrawnFace } from './box-isometric.ts';
import { boxSection } from './box-view.ts';
import { cavitySection, posed } from './cavity-view.ts';
import { fitWorld, placeInFrame, readFromFrame, SCREEN_VIEW } from './drawing-view.ts';
import { segmentsCross } from './note-places.ts';
import { panelDrawing } from './panel-drawing.ts';
import { sheetMap } from './sheet-map.ts';
import { insideRing, wallBand } from './wall-band.ts';

const itemsOf = (scene: Scene, layer: string): readonly SceneItem[] =>
  scene.layers.find(({ id }) => id === layer)?.items ?? [];
const wordsOf = (scene: Scene): string[] =>
  flattenScene(scene).flatMap(({ groups }) =>
    groups.flatMap(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))),
  );

describe('fitWorld', () => {
  const corners = [
    { xMm: 0, yMm: 0 },
    { xMm: 1000, yMm: 500 },
  ];
  const view = { ...SCREEN_VIEW, widthPt: 600, heightPt: 400 };
  const margins = { left: 50, top: 50, right: 50, bottom: 50 };

  it('fills the room between the margins and turns y up', () => {
    const { place, frame } = fitWorld(corners, view, margins);
    expect(frame.ptPerMm).toBe(0.5); // 500 pt of room over 1000 mm; upright 300 pt would take 0.6
    expect(place({ xMm: 0, yMm: 0 })).toEqual(spot(50, 325)); // 250 pt high, in the middle of 400
    expect(place({ xMm: 1000, yMm: 500 })).toEqual(spot(550, 75));
  });

  it('takes the largest standard scale that fits', () => {
    const { frame, scaleLabel } = fitWorld(corners, { ...view, scale: 'standard' }, margins);
    expect(scaleLabel).toBe('1:10'); // 1:5 would need 567 pt of 500
    expect(frame.ptPerMm).toBeCloseTo(72 / 25.4 / 10, 12);
  });

  it('gives one point and no point a frame', () => {
    for (const points of [[], [{ xMm: 3, yMm: 4 }]]) {
      expect(Number.isFinite(fitWorld(points, view, margins).frame.ptPerMm)).toBe(true);
    }
  });

  it('reads back what it placed', () => {
    const coordinate = fc.double({ min: -5000, max: 5000, noNaN: true });
    fc.assert(
      fc.property(coordinate, coordinate, (xMm, yMm) => {
        const { frame } = fitWorld(corners, view, margins);
        const back = readFromFrame(frame, placeInFrame(frame, { xMm, yMm }));
        expect(back.xMm).toBeCloseTo(xMm, 6);
        expect(back.yMm).toBeCloseTo(yMm, 6);
      }),
    );
  });
});

describe('posed', () => {
  it('turns about the body’s own origin, then shifts', () => {
    const [corner] = posed([{ xMm: 10, yMm: 0 }], { xMm: 100, yMm: 50, thetaRad: Math.PI / 2, zMm: 0 });
    expect(corner?.xMm).toBeCloseTo(100, 9);
    expect(corner?.yMm).toBeCloseTo(60, 9);
  });
});

describe('wallBand', () => {
  const square = rectangle(0, 0, 100, 100);
  const edges = square.map((from, index) => ({ from, to: square[(index + 1) % 4] ?? from, solid: true }));

  it('lies outside and meets on mitres: a ring 10 pt wide round a square of 100', () => {
    const quads = wallBand(edges, 10);
    const area = quads.reduce((sum, quad) => sum + Math.abs(doubleArea(quad ?? [])) / 2, 0);
    expect(area).toBeCloseTo(120 * 120 - 100 * 100, 6);
    expect(quads[0]?.[3]).toEqual(spot(-10, -10));
  });

  it('lies outside whichever way the edges run', () => {
    const reversed = [...edges].reverse().map(({ from, to, solid }) => ({ from: to, to: from, solid }));
    for (const quad of wallBand(reversed, 10)) {
      expect(insideRing(square, quad?.[2] ?? spot(50, 50))).toBe(false);
    }
  });

  it('leaves open edges open and ends square beside them', () => {
    const quads = wallBand(
      edges.map((edge, index) => ({ ...edge, solid: index !== 1 })),
      10,
    );
    expect(quads[1]).toBeNull();
    expect(quads[0]?.[2]).toEqual(spot(100, -10));
  });
});

describe('cavitySection', () => {
  it('hatches solid walls, and draws the opening, the way out and the box', () => {
    const scene = cavitySection(CAVITY);
    expect(scene.layers.map(({ id }) => id)).toEqual([
      'vehicle',
      'box',
      'way-out',
      'opening',
      'obstructions',
      'clearances',
    ]);
    const walls = itemsOf(scene, 'vehicle').filter((item) => item.kind === 'hatch');
    expect(walls).toHaveLength(6); // five solid edges, one obstruction
    expect(wordsOf(scene)).toEqual(expect.arrayContaining(['opening 597', 'tightest 6.2', 'jack well']));
  });

  it('keeps every word on the sheet, on a desk and on a phone', () => {
    for (const view of [{}, { widthPt: 390, heightPt: 260 }]) {
      const scene = cavitySection(SURVEY, view);
      for (const { centre, widthPt, heightPt } of keyedPlaces(scene)) {
        expect(centre.x - widthPt / 2).toBeGreaterThan(0);
        expect(centre.x + widthPt / 2).toBeLessThan(scene.widthPt);
        expect(centre.y - heightPt / 2).toBeGreaterThan(0);
        expect(centre.y + heightPt / 2).toBeLessThan(scene.heightPt);
      }
    }
  });

  it('leads the name out of a frame that leans: its bounding box has room, the frame has none', () => {
    const frame = {
      name: 'frame of the lid',
      outline: [
        { xMm: 700, yMm: 0 },
        { xMm: 720, yMm: 0 },
        { xMm: 520, yMm: 500 },
        { xMm: 500, yMm: 500 },
      ],
    };
    const scene = cavitySection({ ...CAVITY, obstructions: [frame] });
    expect(itemsOf(scene, 'obstructions')[0]?.kind).toBe('leader');
  });

  it('moves the size of the opening in where the sheet ends', () => {
    const scene = cavitySection(CAVITY, { widthPt: 300, heightPt: 260 });
    const size = itemsOf(scene, 'opening').find((item) => item.kind === 'text');
    if (size === undefined) throw new Error('the opening says no size');
    expect(size.at.x).toBeGreaterThanOrEqual(0);
    expect(size.at.x + textWidthPt(size.text, 'mono', size.sizePt)).toBeLessThanOrEqual(300.01);
  });

  it('sets survey dimensions outside along a wall and in place across the space', () => {
    const offsets = itemsOf(cavitySection(SURVEY), 'labels').map((item) =>
      item.kind === 'dimension' ? item.offsetPt : null,
    );
    expect(offsets).toHaveLength(5);
    expect(offsets[4]).toBe(0); // E: height at mid depth
    expect(offsets.slice(0, 4).every((offset) => offset !== null && Math.abs(offset) >= 20)).toBe(true);
  });

  it('draws nothing from nothing', () => {
    const empty = { ...SURVEY, edges: [], obstructions: [], labels: [] };
    expect(cavitySection(empty).layers).toEqual([]);
  });
});

describe('boxSection', () => {
  it('hatches neighbouring panels in opposite directions', () => {
    const kinds = itemsOf(boxSection(BOX_SECTION), 'parts').flatMap((item) =>
      item.kind === 'hatch' ? [item.hatch] : [],
    );
    expect(kinds).toEqual(['panel', 'counter-panel', 'panel', 'counter-panel']);
  });

  it('measures what it is not told', () => {
    expect(wordsOf(boxSection(BOX_SECTION))).toEqual(expect.arrayContaining(['584', '402', '322', '18']));
  });

  it('says where an input must stand to change a dimension', () => {
    const scene = boxSection(BOX_SECTION);
    const depth = keyedPlaces(scene).find(({ key }) => key === 'depthMm');
    const { originX, originY, ptPerMm } = scene.world ?? { originX: 0, originY: 0, ptPerMm: 0 };
    expect(depth?.centre.x).toBeCloseTo(originX + 292 * ptPerMm, 6); // middle of 584
    expect(depth?.centre.y).toBeGreaterThan(originY + 20); // below the floor
    expect(depth?.turnRad).toBe(0);
  });
});

describe('boxFront', () => {
  it('spaces bolts evenly, anticlockwise from their start', () => {
    const centres = boltCentres({ diameterMm: 20, count: 4, holeDiameterMm: 5, startRad: 0 }, spot(0, 0), 1);
    const rounded = centres.map(({ x, y }) => [Math.round(x) + 0, Math.round(y) + 0]);
    expect(rounded).toEqual([
      [10, 0],
      [0, -10],
      [-10, 0],
      [0, 10],
    ]);
  });

  it('notes name, diameter and bolt circle', () => {
    expect(wordsOf(boxFront(BOX_FRONT))).toEqual(
      expect.arrayContaining(['Quince 12', '⌀ 283', '8 × ⌀ 5.5 on ⌀ 302', 'port', '60 × 320']),
    );
  });
});

describe('boxIsometric', () => {
  const outlines = (scene: Scene) =>
    itemsOf(scene, 'faces').filter((item) => item.kind === 'polyline' && item.stroke === 'outline');

  it('shows three of the six faces of a box from either side', () => {
    expect(outlines(boxIsometric(BOX_ISOMETRIC))).toHaveLength(3);
    expect(outlines(boxIsometric({ ...BOX_ISOMETRIC, from: 'left' }))).toHaveLength(3);
  });

  it('swaps the ends when the reader changes sides', () => {
    const marks = (from: 'left' | 'right') =>
      itemsOf(boxIsometric({ ...BOX_ISOMETRIC, from }), 'marks').map((item) =>
        item.kind === 'balloon' ? item.letter : '',
      );
    expect(marks('right')).toEqual(expect.arrayContaining(['C', 'D', 'E']));
    expect(marks('left')).toEqual(expect.arrayContaining(['C', 'D', 'F']));
  });

  it('shortens all three axes alike: a cube is a regular hexagon', () => {
    const corner = (xMm: number, yMm: number, zMm: number) => ({ xMm, yMm, zMm });
    const face = (name: string, corners: DrawnFace['corners']): DrawnFace => ({
      name,
      corners,
      openings: [],
      mark: null,
      hatched: false,
    });
    const cube = [
      face('front', [corner(1, 0, 1), corner(1, 0, 0), corner(1, 1, 0), corner(1, 1, 1)]),
      face('top', [corner(0, 1, 0), corner(0, 1, 1), corner(1, 1, 1), corner(1, 1, 0)]),
      face('end', [corner(0, 0, 1), corner(1, 0, 1), corner(1, 1, 1), corner(0, 1, 1)]),
    ];
    const rings = outlines(boxIsometric({ ...BOX_ISOMETRIC, faces: cube, notes: [] }));
    expect(rings).toHaveLength(3);
    const lengths = rings.flatMap((item) => {
      const points = item.kind === 'polyline' ? item.points : [];
      return points.map((from, index) => {
        const to = points[(index + 1) % points.length] ?? from;
        return Math.hypot(to.x - from.x, to.y - from.y);
      });
    });
    for (const length of lengths) expect(length).toBeCloseTo(lengths[0] ?? 0, 6);
  });
});

describe('panelDrawing', () => {
  it('gives overall sizes and hole centres from the lower left corner', () => {
    const words = wordsOf(panelDrawing(PANEL));
    expect(words).toEqual(expect.arrayContaining(['900', '425', '290', '470', '212'])); // 760 − 290 = 470
  });

  it('says bevels in degrees and joints in words', () => {
    const words = wordsOf(panelDrawing(PANEL));
    expect(words).toEqual(
      expect.arrayContaining(['bevel 18.9° · mitre', 'rabbet · runs through', 'bevel 18.9°']),
    ); // 0.33 rad
  });

  it('tells in words what it shows', () => {
    expect(panelDrawing(PANEL).description).toBe(
      'Panel D, Baffle: 1 off, 900 × 425 × 18, 2 cut-outs. Larger face towards the reader.',
    );
  });
});

describe('sheetMap', () => {
  it('lays panels from the lower left corner of the sheet', () => {
    const scene = sheetMap(SHEET);
    const { originX, originY, ptPerMm } = scene.world ?? { originX: 0, originY: 0, ptPerMm: 0 };
    const panel = itemsOf(scene, 'panels').find((item) => item.key === 'd');
    const points = panel?.kind === 'polyline' ? panel.points : [];
    expect(points[0]?.x).toBeCloseTo(originX + 10 * ptPerMm, 6);
    expect(points[0]?.y).toBeCloseTo(originY - (598 + 425) * ptPerMm, 6);
    expect(points[2]?.x).toBeCloseTo(originX + 910 * ptPerMm, 6);
  });

  it('numbers the cuts in their order and marks turned panels', () => {
    const words = wordsOf(sheetMap(SHEET));
    expect(words.filter((word) => /^[1-3]$/.test(word))).toEqual(['1', '2', '3']);
    expect(words).toEqual(expect.arrayContaining(['E↻', 'D', '1516 × 468', 'G1  900 × 60']));
  });

  it('lets each panel be picked by its key', () => {
    expect(keyedPlaces(sheetMap(SHEET)).map(({ key }) => key)).toEqual(['a', 'd', 'c', 'e', 'f', 'g']);
  });
});

describe('segmentsCross', () => {
  it('counts crossings inside both segments only', () => {
    expect(segmentsCross(spot(0, 0), spot(10, 10), spot(0, 10), spot(10, 0))).toBe(true);
    expect(segmentsCross(spot(0, 0), spot(4, 4), spot(0, 10), spot(10, 0))).toBe(false);
    expect(segmentsCross(spot(0, 0), spot(0, 0), spot(0, 10), spot(10, 0))).toBe(false);
  });
});
