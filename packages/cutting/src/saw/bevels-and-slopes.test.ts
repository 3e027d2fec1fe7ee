import type { CutListRow } from '@gusset/contracts/cutting';
import { describe, expect, it } from 'vitest';
import { askewCuts } from './askew-cuts.ts';
import { bevelSetUps } from './bevel-set-ups.ts';

const SQUARE = { bevelDeg: 0, exceedsTilt: false, oversizeMm: 0 };

function row(
  mark: string,
  outline: readonly (readonly [number, number])[],
  bevels: readonly number[],
): CutListRow {
  const corners = outline.map(([xMm, yMm]) => ({ xMm, yMm }));
  const lengthMm = Math.max(...outline.map(([x]) => x));
  const widthMm = Math.max(...outline.map(([, y]) => y));
  return {
    panelId: mark.toLowerCase(),
    mark,
    name: mark,
    materialId: 'mdf',
    thicknessMm: 18,
    quantity: 1,
    finishedLengthMm: lengthMm,
    finishedWidthMm: widthMm,
    smallerFace: null,
    blankLengthMm: lengthMm,
    blankWidthMm: widthMm,
    isRectangle: outline.every(([x, y]) => (x === 0 || x === lengthMm) && (y === 0 || y === widthMm)),
    outline: corners,
    edges: corners.map((from, index) => {
      const to = corners[(index + 1) % corners.length] ?? from;
      return {
        ...SQUARE,
        lengthMm: Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm),
        bevelDeg: bevels[index] ?? 0,
      };
    }),
    holes: [],
    grain: 'none',
    mirror: null,
    massKg: 1,
    totalMassKg: 1,
  };
}

const rectangle = (lengthMm: number, widthMm: number) =>
  [
    [0, 0],
    [lengthMm, 0],
    [lengthMm, widthMm],
    [0, widthMm],
  ] as const;

describe('bevel set-ups', () => {
  it('tilts once for all panels of one angle and one width', () => {
    const rows = [
      row('A', rectangle(800, 400), [26.565, 0, 0, 0]),
      row('B', rectangle(700, 400), [26.565, 0, 26.565, 0]),
      row('C', rectangle(700, 300), [0, 0, 26.565, 0]),
    ];
    const setUps = bevelSetUps(rows, 45);
    expect(
      setUps.map(({ fenceMm, cuts }) => [fenceMm, cuts.map(({ mark, edge }) => `${mark}${edge}`)]),
    ).toEqual([
      [400, ['A0', 'B0', 'B2']],
      [300, ['C2']],
    ]);
    expect(setUps.every(({ how, tiltDeg }) => how === 'flat' && tiltDeg === 26.565)).toBe(true);
  });

  it('stands the panel on edge beyond the tilt of the saw', () => {
    const [setUp] = bevelSetUps([row('A', rectangle(800, 400), [60, 0, 0, 0])], 45);
    expect(setUp).toMatchObject({ how: 'on-edge', bevelDeg: 60, tiltDeg: 30 });
    // 47° leaves 43° on edge; a saw that tilts by 30° only does neither.
    expect(bevelSetUps([row('A', rectangle(800, 400), [47, 0, 0, 0])], 30)[0]).toMatchObject({
      how: 'other-way',
      tiltDeg: null,
    });
  });

  it('has no fence for an edge without one across', () => {
    const clipped = row(
      'A',
      [
        [0, 0],
        [400, 0],
        [400, 300],
        [300, 400],
        [0, 400],
      ],
      [0, 0, 20, 0, 0],
    );
    expect(bevelSetUps([clipped], 45)[0]?.fenceMm).toBeNull();
  });
});

describe('cuts askew', () => {
  it('lays the straightedge on the wood that stays', () => {
    // A 45° corner: the guide lies 100 mm in, so 100 / sqrt 2 = 70.71 mm each way.
    const clipped = row(
      'A',
      [
        [0, 0],
        [400, 0],
        [400, 300],
        [300, 400],
        [0, 400],
      ],
      [],
    );
    const [cut, ...more] = askewCuts([clipped], 100);
    expect(more).toEqual([]);
    expect(cut).toMatchObject({ edge: 2, angleDeg: 135, stopsAtStart: false, stopsAtEnd: false });
    expect(cut?.lengthMm).toBeCloseTo(141.421, 3);
    expect(cut?.guideFrom.xMm).toBeCloseTo(400 - 70.7107, 3);
    expect(cut?.guideFrom.yMm).toBeCloseTo(300 - 70.7107, 3);
  });

  it('stops in the hollow corner of an L', () => {
    const ell = row(
      'A',
      [
        [0, 0],
        [600, 0],
        [600, 200],
        [300, 200],
        [300, 500],
        [0, 500],
      ],
      [],
    );
    const cuts = askewCuts([ell], 0);
    expect(cuts.map(({ edge, stopsAtStart, stopsAtEnd }) => [edge, stopsAtStart, stopsAtEnd])).toEqual([
      [2, false, true],
      [3, true, false],
    ]);
  });
});
