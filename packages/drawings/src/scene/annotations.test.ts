import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  balloonItems,
  breakItems,
  centreLineItems,
  dimensionItems,
  leaderItems,
  readable,
} from './annotations.ts';
import { dimension } from './items.ts';
import type { LineItem, TextItem } from './scene.ts';
import { spot } from './spot.ts';

const lines = (items: readonly { kind: string }[]): LineItem[] =>
  items.filter((item): item is LineItem => item.kind === 'line');
const words = (items: readonly { kind: string }[]): TextItem[] =>
  items.filter((item): item is TextItem => item.kind === 'text');

describe('dimensionItems', () => {
  const level = dimension({
    from: spot(0, 0),
    to: spot(100, 0),
    offsetPt: 20,
    text: '584',
    sizePt: 10,
    key: 'depthMm',
  });

  it('stands off to the left of the way from → to: above a line drawn to the right', () => {
    const [firstExtension, secondExtension, along] = lines(dimensionItems(level));
    expect(firstExtension).toMatchObject({ from: spot(0, -3), to: spot(0, -24) }); // gap 3, overrun 4
    expect(secondExtension).toMatchObject({ from: spot(100, -3), to: spot(100, -24) });
    expect(along).toMatchObject({ from: spot(-3, -20), to: spot(103, -20) });
  });

  it('ends in strokes at 45° that rise to the right', () => {
    const ticks = lines(dimensionItems(level)).slice(3);
    expect(ticks).toHaveLength(2);
    for (const { from, to } of ticks) {
      expect(to.x - from.x).toBeCloseTo(6.8, 9);
      expect(to.y - from.y).toBeCloseTo(-6.8, 9);
    }
  });

  it('writes its figure above the middle of the line and passes its key on', () => {
    const [figure] = words(dimensionItems(level));
    expect(figure).toMatchObject({
      at: spot(50, -23),
      text: '584',
      anchor: 'middle',
      key: 'depthMm',
      turnRad: 0,
    });
  });

  it('writes an upright figure to be read from the right', () => {
    const [figure] = words(dimensionItems({ ...level, to: spot(0, 100), offsetPt: 20 }));
    expect(figure?.turnRad).toBeCloseTo(-Math.PI / 2, 12);
    expect(figure?.at.x).toBeCloseTo(20 - 3, 9); // 20 to the left of downwards is +x; the figure stands left of its line
    expect(figure?.at.y).toBeCloseTo(50, 9);
  });

  it('sets a figure beside the ticks when the line is too short for it', () => {
    const [figure] = words(dimensionItems({ ...level, to: spot(8, 0) }));
    expect(figure?.anchor).toBe('start');
    expect(figure?.at.x).toBeGreaterThan(8);
  });

  it('needs no extension lines in place', () => {
    expect(lines(dimensionItems({ ...level, offsetPt: 0 }))).toHaveLength(3);
  });

  it('never writes upside down', () => {
    fc.assert(
      fc.property(fc.double({ min: -7, max: 7, noNaN: true }), (angle) => {
        const along = readable({ x: Math.cos(angle), y: Math.sin(angle) });
        const turn = Math.atan2(along.y, along.x);
        expect(turn).toBeGreaterThan(-Math.PI / 2 - 1e-5);
        expect(turn).toBeLessThan(Math.PI / 2 - 1e-7);
      }),
    );
  });
});

describe('leaderItems', () => {
  it('writes on the side away from its target', () => {
    const base = {
      kind: 'leader',
      target: spot(50, 50),
      lines: ['6.2', 'seat back'],
      sizePt: 10,
      tone: 'plain',
      key: null,
    } as const;
    const [right] = words(leaderItems({ ...base, elbow: spot(80, 20) }));
    const [left] = words(leaderItems({ ...base, elbow: spot(20, 20) }));
    expect(right).toMatchObject({ anchor: 'start', text: '6.2' });
    expect(right?.at.x).toBe(94); // elbow 80, shelf 10, gap 4
    expect(left).toMatchObject({ anchor: 'end' });
    expect(left?.at.x).toBe(6);
  });
});

describe('balloonItems, centreLineItems, breakItems', () => {
  it('centres the letter and fills an active balloon', () => {
    const [ring, letter] = balloonItems({
      kind: 'balloon',
      centre: spot(9, 9),
      letter: 'C',
      radiusPt: 10,
      active: true,
      key: null,
    });
    expect(ring).toMatchObject({ kind: 'circle', fill: 'mark' });
    expect(letter).toMatchObject({ text: 'C', anchor: 'middle', ink: 'sheet' });
  });

  it('runs a centre line 6 pt past both ends', () => {
    const [axis] = centreLineItems({ kind: 'centre-line', from: spot(0, 5), to: spot(40, 5), key: null });
    expect(axis).toMatchObject({ from: spot(-6, 5), to: spot(46, 5) });
  });

  it('puts one zigzag in the middle of a break', () => {
    const [zigzag] = breakItems({ kind: 'break', from: spot(0, 0), to: spot(100, 0), key: null });
    const ys = zigzag?.kind === 'polyline' ? zigzag.points.map(({ y }) => Math.round(y)) : [];
    expect(ys.map((y) => y + 0)).toEqual([0, 0, -5, 5, 0, 0]);
  });
});
