import { DEFAULT_CUT_SETTINGS } from '@gusset/contracts/cutting';
import { type Panel, panelSchema } from '@gusset/contracts/panel';
import { describe, expect, it } from 'vitest';
import { cutList, cutParts, groupCutList } from './cut-list.ts';

const RIGHT_ANGLE_CORNERS = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;

type Change = Partial<Panel> & {
  readonly bevelsDeg?: readonly number[];
  readonly through?: readonly boolean[];
};

/** A rectangle 600 x 400 x 18 unless changed; edges run lower, right, upper, left. */
function panel({ bevelsDeg = [], through = [], ...change }: Change): Panel {
  const lengthMm = change.lengthMm ?? 600;
  const widthMm = change.widthMm ?? 400;
  const outline =
    change.outline ?? RIGHT_ANGLE_CORNERS.map(([x, y]) => ({ xMm: x * lengthMm, yMm: y * widthMm }));
  return panelSchema.parse({
    id: 'baffle',
    mark: 'A',
    name: 'Baffle',
    materialId: 'mdf',
    thicknessMm: 18,
    lengthMm,
    widthMm,
    outline,
    edges: outline.map((_, index) => ({
      bevelRad: ((bevelsDeg[index] ?? 0) * Math.PI) / 180,
      joint: 'butt',
      runsThrough: through[index] ?? false,
    })),
    holes: [],
    grain: 'none',
    quantity: 1,
    solidMm3: 600 * 400 * 18,
    massKg: 3.11,
    ...change,
  });
}

const onlyRow = (one: Panel, settings = DEFAULT_CUT_SETTINGS) => {
  const [row] = cutList([one], settings);
  if (row === undefined) throw new Error('no row');
  return row;
};

describe('cutList', () => {
  it('cuts a square panel to its own size', () => {
    const row = onlyRow(panel({}));
    expect(row).toMatchObject({
      blankLengthMm: 600,
      blankWidthMm: 400,
      smallerFace: null,
      isRectangle: true,
    });
    expect(row.edges.map((edge) => [edge.lengthMm, edge.bevelDeg, edge.exceedsTilt])).toEqual([
      [600, 0, false],
      [400, 0, false],
      [600, 0, false],
      [400, 0, false],
    ]);
  });

  it('keeps the larger face as the blank and takes thickness x tan(bevel) off the smaller', () => {
    const row = onlyRow(panel({ bevelsDeg: [45, 0, 30, 0] }));
    expect([row.blankLengthMm, row.blankWidthMm]).toEqual([600, 400]);
    // 400 - 18 tan 45 - 18 tan 30 = 400 - 18 - 10.392
    expect(row.smallerFace?.widthMm).toBeCloseTo(371.608, 3);
    expect(row.smallerFace?.lengthMm).toBeCloseTo(600, 9);
    expect(row.edges.map((edge) => edge.bevelDeg)).toEqual([
      expect.closeTo(45, 9),
      0,
      expect.closeTo(30, 9),
      0,
    ]);
  });

  it('flags a bevel beyond the tilt of the saw, and none at it', () => {
    const row = onlyRow(panel({ bevelsDeg: [45, 52.5, 0, 0] }));
    expect(row.edges.map((edge) => edge.exceedsTilt)).toEqual([false, true, false, false]);
    const widerSaw = onlyRow(panel({ bevelsDeg: [45, 52.5, 0, 0] }), {
      ...DEFAULT_CUT_SETTINGS,
      bladeMaxTiltDeg: 60,
    });
    expect(widerSaw.edges.some((edge) => edge.exceedsTilt)).toBe(false);
  });

  it('adds oversize beyond the edges that run through, and nowhere else', () => {
    const settings = { ...DEFAULT_CUT_SETTINGS, oversizeMm: 1.5 };
    const row = onlyRow(panel({ through: [false, true, true, true] }), settings);
    expect([row.blankLengthMm, row.blankWidthMm]).toEqual([603, 401.5]);
    expect([row.finishedLengthMm, row.finishedWidthMm]).toEqual([600, 400]);
    expect(row.edges.map((edge) => edge.oversizeMm)).toEqual([0, 1.5, 1.5, 1.5]);
  });

  it('measures a wedge side by the rectangle round it', () => {
    const outline = [
      { xMm: 0, yMm: 0 },
      { xMm: 400, yMm: 0 },
      { xMm: 260, yMm: 380 },
      { xMm: 0, yMm: 380 },
    ];
    const row = onlyRow(panel({ lengthMm: 400, widthMm: 380, outline }));
    expect(row).toMatchObject({ isRectangle: false, blankLengthMm: 400, blankWidthMm: 380 });
    expect(row.edges[1]?.lengthMm).toBeCloseTo(404.969, 3); // √(140² + 380²)
  });

  it('leaves no smaller face where two bevels meet inside the board', () => {
    const row = onlyRow(panel({ widthMm: 30, bevelsDeg: [45, 0, 45, 0] }));
    expect(row.smallerFace).toEqual({ lengthMm: 0, widthMm: 0 });
  });

  it('orders by material, thick before thin, then by mark as people count', () => {
    const rows = cutList(
      [
        panel({ id: '1', mark: 'A10' }),
        panel({ id: '2', mark: 'A2' }),
        panel({ id: '3', mark: 'B', thicknessMm: 25 }),
        panel({ id: '4', mark: 'C', materialId: 'birch' }),
      ],
      DEFAULT_CUT_SETTINGS,
    );
    expect(rows.map((row) => row.mark)).toEqual(['C', 'B', 'A2', 'A10']);
  });
});

describe('mirror notes', () => {
  const left = panel({ id: 'l', mark: 'L', bevelsDeg: [0, 20, 0, 0] });
  const holeAt = (centreXMm: number, depthMm: number | null): Panel['holes'] => [
    { shape: 'circle', purpose: 'terminal', centreXMm, centreYMm: 90, diameterMm: 52, depthMm },
  ];
  const noteOf = (one: Panel, two: Panel) =>
    cutList([one, two], DEFAULT_CUT_SETTINGS).map((row) => row.mirror);

  it('point from the second of a pair to the first', () => {
    const right = panel({ id: 'r', mark: 'R', bevelsDeg: [30, 20, 0, 0] });
    const other = panel({ id: 'l', mark: 'L', bevelsDeg: [30, 0, 0, 20] });
    expect(noteOf(other, right)).toEqual([null, { mark: 'L', sameWhenTurnedOver: false }]);
  });

  it('say nothing where a turn of the same piece does', () => {
    expect(noteOf(left, panel({ id: 'r', mark: 'R', bevelsDeg: [0, 0, 0, 20] }))).toEqual([null, null]);
  });

  it('tell that a square-edged pair with through holes is one piece turned over', () => {
    const one = panel({ id: 'l', mark: 'L', holes: holeAt(100, null) });
    const two = panel({ id: 'r', mark: 'R', holes: holeAt(500, null) });
    expect(noteOf(one, two)).toEqual([null, { mark: 'L', sameWhenTurnedOver: true }]);
  });

  it('keep blind holes on their face', () => {
    const one = panel({ id: 'l', mark: 'L', holes: holeAt(100, 6) });
    const two = panel({ id: 'r', mark: 'R', holes: holeAt(500, 6) });
    expect(noteOf(one, two)).toEqual([null, { mark: 'L', sameWhenTurnedOver: false }]);
  });

  it('need the same size and board', () => {
    const one = panel({ id: 'l', mark: 'L', holes: holeAt(100, null) });
    const two = panel({ id: 'r', mark: 'R', holes: holeAt(500, null), widthMm: 401 });
    expect(noteOf(one, two)).toEqual([null, null]);
  });
});

describe('groupCutList', () => {
  it('sums pieces, blanks and mass of each board', () => {
    const rows = cutList(
      [panel({ id: '1', mark: 'A', quantity: 2 }), panel({ id: '2', mark: 'B', thicknessMm: 25 })],
      DEFAULT_CUT_SETTINGS,
    );
    const groups = groupCutList(rows);
    expect(groups.map((group) => [group.thicknessMm, group.pieces, group.blankAreaMm2])).toEqual([
      [25, 1, 240_000],
      [18, 2, 480_000],
    ]);
    expect(groups[1]?.massKg).toBeCloseTo(6.22, 9);
  });
});

describe('cutParts', () => {
  it('makes one blank a piece with an id of its own', () => {
    const rows = cutList([panel({ id: 'brace', quantity: 3, grain: 'length' })], DEFAULT_CUT_SETTINGS);
    const parts = cutParts(rows);
    expect(parts.map((part) => part.id)).toEqual(['brace', 'brace#2', 'brace#3']);
    expect(parts[2]).toMatchObject({ lengthMm: 600, widthMm: 400, grain: 'length', mayTurn: true });
  });
});
