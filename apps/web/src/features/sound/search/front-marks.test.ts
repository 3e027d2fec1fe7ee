import { describe, expect, it } from 'vitest';
import { chartedDesigns, frontChart, markRadius, steppedMark } from './front-marks.ts';
import { FOUND } from './search-design.fixture.ts';

const small = { ...FOUND, key: 'small', netLitres: 20, lowCornerHz: 38, outputDb: 112 };
const deep = { ...FOUND, key: 'deep', netLitres: 80, lowCornerHz: 22, outputDb: 114 };

describe('frontChart', () => {
  const chart = frontChart([deep, FOUND, small], { width: 600, height: 320, numbered: [FOUND] });
  it('stands lower corners further left and louder ones higher, inside the frame', () => {
    const [a, b, c] = chart.marks;
    expect(a?.x ?? 0).toBeLessThan(b?.x ?? 0);
    expect(b?.x ?? 0).toBeLessThan(c?.x ?? 0);
    expect(b?.y ?? 0).toBeLessThan(a?.y ?? 0);
    for (const { x, y } of chart.marks) {
      expect(x > chart.box.left && x < chart.box.right && y > chart.box.top && y < chart.box.bottom).toBe(
        true,
      );
    }
  });
  it('numbers the winners beside their marks', () => {
    expect(chart.numbers.map(({ label }) => label)).toEqual(['1']);
    expect(chart.numbers[0]?.x ?? 0).toBeGreaterThan(chart.marks[1]?.x ?? 0);
  });
  it('draws one design alone too', () => {
    const alone = frontChart([FOUND], { width: 600, height: 320, numbered: [] });
    expect(Number.isFinite(alone.marks[0]?.x) && Number.isFinite(alone.marks[0]?.y)).toBe(true);
    expect(alone.decibels.length).toBeGreaterThan(1);
  });
});

describe('markRadius', () => {
  it('gives twice the air twice the ink', () => {
    expect(markRadius(80, 80) ** 2 / markRadius(40, 80) ** 2).toBeCloseTo(2, 9);
  });
  it('leaves a trunk wall in sight', () => {
    expect(markRadius(0, 80)).toBeGreaterThan(2);
  });
});

describe('chartedDesigns', () => {
  it('holds front and winners once each, by corner', () => {
    const charted = chartedDesigns({ ranked: [FOUND, deep], front: [small, deep] });
    expect(charted.map(({ key }) => key)).toEqual(['deep', FOUND.key, 'small']);
  });
});

describe('steppedMark', () => {
  it('goes along the designs and stays at both ends', () => {
    expect(steppedMark('ArrowRight', 1, 3)).toBe(2);
    expect(steppedMark('ArrowRight', 2, 3)).toBe(2);
    expect(steppedMark('ArrowUp', 0, 3)).toBe(0);
    expect([steppedMark('Home', 2, 3), steppedMark('End', 0, 3)]).toEqual([0, 2]);
    expect(steppedMark('a', 0, 3)).toBeNull();
  });
});
