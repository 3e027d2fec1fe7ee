import { describe, expect, it } from 'vitest';
import { flattenItem, flattenScene, keyedPlaces } from './flatten.ts';
import { hatch, polygon, region, text } from './items.ts';
import type { Scene, SceneItem } from './scene.ts';
import { rectangle, spot } from './spot.ts';

const scene = (...items: SceneItem[]): Scene => ({
  title: 'Test',
  description: '',
  widthPt: 100,
  heightPt: 100,
  world: null,
  scaleLabel: null,
  layers: [{ id: 'all', items }],
});

describe('flattenItem', () => {
  it('draws an outline with its hole as one even-odd path', () => {
    const { shapes } = flattenItem(
      region([rectangle(0, 0, 10, 10), rectangle(2, 2, 3, 3)], 'outline', 'sheet'),
    );
    expect(shapes).toHaveLength(1);
    expect(shapes[0]).toMatchObject({ kind: 'path', fill: 'sheet', pen: { widthPt: 1.5 } });
    expect(
      shapes[0]?.kind === 'path' && shapes[0].commands.filter(([letter]) => letter === 'Z'),
    ).toHaveLength(2);
  });

  it('wipes out what lies under backed words first', () => {
    const { shapes } = flattenItem(text(spot(10, 20), '438', { face: 'mono', sizePt: 10, backed: true }));
    expect(shapes.map(({ kind }) => kind)).toEqual(['path', 'text']);
    // 18 pt wide and 6.9 pt high, grown by 1.5 pt all round
    const corners = shapes[0]?.kind === 'path' ? shapes[0].commands.slice(0, 3) : [];
    const expected = [
      [8.5, 11.6],
      [29.5, 11.6],
      [29.5, 21.5],
    ];
    corners.forEach(([, x, y], index) => {
      expect(x).toBeCloseTo(expected[index]?.[0] ?? 0, 9);
      expect(y).toBeCloseTo(expected[index]?.[1] ?? 0, 9);
    });
    expect(corners).toHaveLength(3);
  });

  it('draws no empty words and no hatch of nothing', () => {
    expect(flattenItem(text(spot(0, 0), '', { backed: true })).shapes).toEqual([]);
    expect(flattenItem(hatch([rectangle(3, 0, 0.5, 0.5)], 'offcut')).shapes).toEqual([]);
  });

  it('sets a drawing into another at its scale', () => {
    const inner = scene(polygon(rectangle(0, 0, 10, 10), 'thin'));
    const { shapes } = flattenItem({ kind: 'inset', scene: inner, at: spot(50, 60), scale: 0.5, key: null });
    expect(shapes[0]).toMatchObject({
      pen: { widthPt: 0.375 },
      commands: [['M', 50, 60], ['L', 55, 60], ['L', 55, 65], ['L', 50, 65], ['Z']],
    });
  });

  it('draws an arc as curves from its beginning to its end', () => {
    const { shapes } = flattenItem({
      kind: 'arc',
      centre: spot(0, 0),
      radiusPt: 10,
      fromRad: 0,
      toRad: Math.PI,
      stroke: 'thin',
      key: null,
    });
    const commands = shapes[0]?.kind === 'path' ? shapes[0].commands : [];
    expect(commands.map(([letter]) => letter)).toEqual(['M', 'C', 'C', 'C', 'C']);
    expect(Number(commands.at(-1)?.[5])).toBeCloseTo(-10, 9);
  });
});

describe('flattenScene, keyedPlaces', () => {
  it('keep layers and items in order', () => {
    const flat = flattenScene(scene(text(spot(1, 1), 'a'), polygon(rectangle(0, 0, 5, 5), 'thin')));
    expect(flat[0]?.groups.map(({ kind }) => kind)).toEqual(['text', 'polyline']);
  });

  it('answer the box of turned words in their own direction', () => {
    const upright = text(spot(50, 50), '438', {
      face: 'mono',
      sizePt: 10,
      anchor: 'middle',
      turnRad: -Math.PI / 2,
      key: 'heightMm',
    });
    const [place] = keyedPlaces(scene(upright));
    expect(place?.widthPt).toBeCloseTo(18, 9);
    expect(place?.heightPt).toBeCloseTo(6.9, 9);
    expect(place?.centre.x).toBeCloseTo(50 - 3.45, 9);
    expect(place?.centre.y).toBeCloseTo(50, 9);
  });

  it('answer nothing for parts without a key', () => {
    expect(keyedPlaces(scene(text(spot(1, 1), 'a')))).toEqual([]);
  });
});
