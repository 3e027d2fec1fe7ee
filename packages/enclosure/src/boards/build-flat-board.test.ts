import {
  type FlatBoardDesignInput,
  flatBoardDesignSchema,
  flatBoardResultSchema,
} from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { buildFlatBoard } from './build-flat-board.ts';

const base: FlatBoardDesignInput = {
  kind: 'equipment-board',
  id: 'board-1',
  name: 'Equipment board',
  mark: 'E',
  stock: { materialId: 'mdf-12', thicknessMm: 12, densityKgM3: 720 },
  outline: { shape: 'rectangle', widthMm: 600, heightMm: 400 },
};

function built(change: Partial<FlatBoardDesignInput>) {
  const result = buildFlatBoard(flatBoardDesignSchema.parse({ ...base, ...change }));
  if (isRefusal(result)) throw new Error(result.refusal.why);
  return flatBoardResultSchema.parse(result);
}

function refused(change: Partial<FlatBoardDesignInput>) {
  const result = buildFlatBoard(flatBoardDesignSchema.parse({ ...base, ...change }));
  return isRefusal(result) ? result.refusal.field : null;
}

const hole = (xMm: number, yMm: number, diameterMm: number, depthMm: number | null = null) => ({
  shape: 'circle' as const,
  purpose: `hole ${xMm}`,
  centreXMm: xMm,
  centreYMm: yMm,
  diameterMm,
  depthMm,
});
const device = (id: string, xMm: number, massKg = 0) => ({
  id,
  name: id,
  centre: { xMm, yMm: 200 },
  widthMm: 200,
  heightMm: 150,
  massKg,
});
const codes = (change: Partial<FlatBoardDesignInput>) => built(change).findings.map(({ code }) => code);

describe('buildFlatBoard', () => {
  it('weighs a plain rectangle as length x width x thickness x density', () => {
    const { boardKg, faceAreaMm2, centreMm } = built({});
    expect(boardKg).toBeCloseTo(0.6 * 0.4 * 0.012 * 720, 12);
    expect(faceAreaMm2).toBeCloseTo(240_000, 6);
    expect(centreMm).toEqual({ xMm: 300, yMm: 200 });
  });

  it('takes (4 - pi) r^2 off a rectangle with round corners', () => {
    const { faceAreaMm2, panels } = built({
      outline: { shape: 'rectangle', widthMm: 600, heightMm: 400, cornerRadiusMm: 50 },
    });
    expect(faceAreaMm2).toBeCloseTo(240_000 - (4 - Math.PI) * 2_500, 6);
    expect(panels[0]?.cornerRadiiMm).toEqual([50, 50, 50, 50]);
  });

  it('makes an adapter ring of layers: annulus less its bolts', () => {
    const { faceAreaMm2, thicknessMm, panels, fixingCount, findings } = built({
      kind: 'adapter-ring',
      layers: 3,
      outline: { shape: 'circle', diameterMm: 200 },
      openings: [hole(100, 100, 140)],
      boltCircles: [{ centre: { xMm: 100, yMm: 100 }, diameterMm: 170, count: 4, holeDiaMm: 5 }],
    });
    expect(faceAreaMm2).toBeCloseTo((Math.PI / 4) * (200 ** 2 - 140 ** 2 - 4 * 25), 6);
    expect(thicknessMm).toBe(36);
    expect(panels.map(({ quantity }) => quantity)).toEqual([3]);
    expect(fixingCount).toBe(4);
    expect(findings).toEqual([]); // 100 - 85 - 2.5 = 12.5 mm of wood outside each bolt, 12 wanted
  });

  it('rounds sharp corners by their own angle, and balances a mirrored triangle on its mirror line', () => {
    const { faceAreaMm2, centreMm } = built({
      outline: {
        shape: 'polygon',
        corners: [
          { xMm: 0, yMm: 0 },
          { xMm: 300, yMm: 0 },
          { xMm: 0, yMm: 300 },
        ],
        cornerRadiusMm: 40,
      },
    });
    // r^2 (cot(a/2) - (pi - a)/2) at 90, 45 and 45 degrees
    const off = (a: number) => 1_600 * (1 / Math.tan(a / 2) - (Math.PI - a) / 2);
    expect(faceAreaMm2).toBeCloseTo(45_000 - off(Math.PI / 2) - 2 * off(Math.PI / 4), 6);
    expect(centreMm.xMm).toBeCloseTo(centreMm.yMm, 9); // mirror line
  });

  it('recesses the first layer only', () => {
    const { panels } = built({ layers: 2, openings: [hole(300, 200, 100, 4)] });
    expect(panels.map(({ holes, quantity }) => [holes.length, quantity])).toEqual([
      [1, 1],
      [0, 1],
    ]);
  });

  it('moves the balance towards a heavy device', () => {
    const { centreMm, boardKg, withDevicesKg } = built({ devices: [device('amp', 450, 3)] });
    expect(withDevicesKg).toBeCloseTo(boardKg + 3, 12);
    expect(centreMm.xMm).toBeCloseTo((boardKg * 300 + 3 * 450) / (boardKg + 3), 9);
  });

  it('finds devices closer than the air that they want, with the gap', () => {
    const { findings } = built({ devices: [device('amp', 150), device('dsp', 370)] });
    expect(findings).toMatchObject([{ code: 'devices-too-near', gotMm: 20, wantedMm: 25 }]);
    expect(codes({ devices: [device('amp', 150), device('dsp', 375)] })).toEqual([]);
  });

  it('finds a device whose plugs face another', () => {
    const amp = { ...device('amp', 150), access: { side: 'right' as const, roomMm: 60 } };
    expect(codes({ devices: [amp, device('dsp', 380)] })).toEqual(['access-blocked']);
  });

  it('finds what hangs over the edge or an opening', () => {
    expect(codes({ devices: [device('amp', 90)] })).toEqual(['device-off-board']);
    expect(codes({ devices: [device('amp', 300)], openings: [hole(300, 200, 50)] })).toEqual([
      'device-over-opening',
    ]);
  });

  it('finds holes off the board, near its edge, and in each other', () => {
    expect(codes({ openings: [hole(595, 200, 20)] })).toEqual(['hole-off-board']);
    expect(codes({ openings: [hole(580, 200, 20)] })).toEqual(['hole-near-edge']);
    expect(codes({ openings: [hole(300, 200, 20), hole(310, 200, 20)] })).toEqual(['holes-meet']);
  });

  it('counts a rounded corner as cut away', () => {
    const outline = { shape: 'rectangle' as const, widthMm: 600, heightMm: 400, cornerRadiusMm: 100 };
    expect(codes({ outline, openings: [hole(25, 25, 10)] })).toEqual(['hole-off-board']);
  });

  it('refuses what cannot be cut', () => {
    const crossed = [
      { xMm: 0, yMm: 0 },
      { xMm: 300, yMm: 300 },
      { xMm: 300, yMm: 0 },
      { xMm: 0, yMm: 200 },
    ];
    expect(refused({ outline: { shape: 'polygon', corners: crossed } })).toBe('outline.corners');
    expect(
      refused({ outline: { shape: 'rectangle', widthMm: 600, heightMm: 400, cornerRadiusMm: 201 } }),
    ).toBe('outline.cornerRadiusMm');
    expect(refused({ openings: [hole(300, 200, 50, 12)] })).toBe('openings[0].depthMm');
  });
});
