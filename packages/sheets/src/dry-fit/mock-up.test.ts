import { describe, expect, it } from 'vitest';
import { clip, mockUpDocument } from './mock-up.ts';

const at = (xMm: number, yMm: number) => ({ xMm, yMm });
const SQUARE = [at(0, 0), at(250, 0), at(250, 330), at(0, 330)];
const PT_PER_MM = 72 / 25.4;

const document = mockUpDocument({
  paper: 'A4',
  title: 'Mock-up',
  author: 'Quarry Road Sound',
  facts: 'job 2404',
  parts: [{ name: 'Side profile', outline: SQUARE }],
});
const lines = document.pages.map(({ blocks }) =>
  blocks.flatMap((block) =>
    block.kind === 'furniture' ? block.items.flatMap((item) => (item.kind === 'line' ? [item] : [])) : [],
  ),
);

describe('a mock-up at full size', () => {
  it('takes as many pages as the profile is large', () => {
    // A4 leaves 184.6 × 255 mm: two across, two down.
    expect(document.pages).toHaveLength(4);
    expect(document.pages.map(({ bookmark }) => bookmark)).toEqual(['Side profile', null, null, null]);
  });

  it('shows every millimetre of the outline, overlaps twice', () => {
    const drawnPt = lines
      .flat()
      .filter(({ stroke }) => stroke === 'outline')
      .reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);
    // 2 × (250 + 330) mm, and four lines that cross 10 mm of overlap.
    expect(drawnPt / PT_PER_MM).toBeCloseTo(1160 + 40, 6);
  });

  it('puts the crosses of neighbours on one another', () => {
    // A1 and B1 are one page less the overlap apart: 184.6 − 10 mm, in points.
    const crossesOf = (page: number) =>
      (lines[page] ?? []).filter(({ stroke, from, to }) => stroke === 'grid' && from.x === to.x);
    const xs = (page: number) =>
      [...new Set(crossesOf(page).map(({ from }) => from.x))].sort((a, b) => a - b);
    const stepPt = 595.2756 - 72 - 10 * PT_PER_MM;
    expect((xs(0)[1] ?? 0) - stepPt).toBeCloseTo(xs(1)[0] ?? Number.NaN, 3);
  });

  it('carries a bar of 100 mm and one of 4 in on every page', () => {
    for (const page of lines) {
      const lengths = page.filter(({ stroke }) => stroke === 'thin').map(({ from, to }) => to.x - from.x);
      expect(lengths.some((length) => Math.abs(length - 100 * PT_PER_MM) < 0.05 * PT_PER_MM)).toBe(true);
      expect(lengths.some((length) => Math.abs(length - 288) < 0.05 * PT_PER_MM)).toBe(true);
    }
  });
});

describe('clipping', () => {
  const room = { xMm: 0, topMm: 10, widthMm: 10, heightMm: 10 };
  it('keeps what lies within', () => {
    expect(clip(at(-5, 5), at(15, 5), room)).toEqual([at(0, 5), at(10, 5)]);
    expect(clip(at(2, 2), at(4, 4), room)).toEqual([at(2, 2), at(4, 4)]);
  });
  it('drops what passes by', () => {
    expect(clip(at(-5, 11), at(15, 11), room)).toBeNull();
    expect(clip(at(-5, 0), at(0, -5), room)).toBeNull();
  });
});
