import { describe, expect, it } from 'vitest';
import { notchWords } from './notch-words.ts';

const outline = (corners: readonly (readonly [number, number])[]) =>
  corners.map(([xMm, yMm]) => ({ xMm, yMm }));
const words = (corners: readonly (readonly [number, number])[]) =>
  notchWords(outline(corners), (mm) => mm.toFixed(0));

describe('notchWords', () => {
  it('has nothing to say of a rectangle or of a wedge', () => {
    expect(
      words([
        [0, 0],
        [600, 0],
        [600, 400],
        [0, 400],
      ]),
    ).toEqual([]);
    expect(
      words([
        [0, 0],
        [600, 0],
        [450, 400],
        [0, 400],
      ]),
    ).toEqual([]);
  });

  it('tells the mouth of a slot in the middle of an edge once, width first', () => {
    const mouth = [
      [0, 0],
      [112, 0],
      [112, 42],
      [472, 42],
      [472, 0],
      [584, 0],
      [584, 484],
      [0, 484],
    ] as const;
    expect(words(mouth)).toEqual(['notch 360 × 42']);
  });

  it('leaves a leaning L to its drawing', () => {
    expect(
      words([
        [0, 0],
        [364, 0],
        [364, 42],
        [60, 42],
        [110, 258],
        [70, 258],
      ]),
    ).toEqual([]);
  });

  it('tells a mouth that runs out at the side', () => {
    expect(
      words([
        [0, 0],
        [224, 0],
        [224, 42],
        [584, 42],
        [584, 484],
        [0, 484],
      ]),
    ).toEqual(['notch 360 × 42']);
  });
});
