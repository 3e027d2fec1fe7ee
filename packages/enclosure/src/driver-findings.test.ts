// Checks on drivers: each with a box where the numbers can be followed on paper.
import type { BoxDesign, BoxResult } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDesign } from './arbitrary-design.ts';
import { buildBox } from './build-box.ts';
import { built, finding, withDrivers } from './built-box.ts';
import { BARE_BOX, BARE_WEDGE, MEDLAR_12 } from './example-designs.ts';

const depth = (depthMm: number): BoxDesign => ({
  ...BARE_BOX,
  shape: { kind: 'rectangular', widthMm: 700, heightMm: 380, depthMm },
});

describe('room behind a driver', () => {
  // Seat on the outer face, so the back wall stands depth - 18 behind it; the driver is 128 deep.
  it('meets an upright back by what the depth is short', () => {
    const found = finding(built(withDrivers(depth(140), {})), 'driver-meets-wall');
    expect(found).toMatchObject({ part: 'magnet', face: 'back', driver: 1 });
    expect(found?.byMm).toBeCloseTo(128 - (140 - 18), 9);
  });

  it('wants 12 mm behind a closed magnet', () => {
    const found = finding(built(withDrivers(depth(150), {})), 'magnet-room-short');
    expect(found).toMatchObject({ face: 'back', vented: false, neededMm: 12 });
    expect(found?.roomMm).toBeCloseTo(150 - 18 - 128, 9);
    expect(finding(built(withDrivers(depth(158), {})), 'magnet-room-short')).toBeUndefined();
  });

  it('wants 25 mm behind a vented pole, or the vent’s own diameter', () => {
    const small = finding(built(withDrivers(depth(160), { poleVentDiaMm: 20 })), 'magnet-room-short');
    expect(small).toMatchObject({ vented: true, neededMm: 25 });
    const large = finding(built(withDrivers(depth(160), { poleVentDiaMm: 40 })), 'magnet-room-short');
    expect(large?.neededMm).toBe(40);
  });

  it('is measured at the magnet’s upper edge under a sloped back, where the axis still has room', () => {
    // Back from (0, 0) to (160, 400): tan θ = 0.4, inner face 18 / cos θ = 18 × √1.16 in front of it.
    // Front upright at x = 400. Driver halfway up the clear front: y = 200; magnet of radius 75.
    // On the axis the back's inner face stands at 0.4 × 200 + 19.38659 = 99.38659, at y = 275 at 129.38659.
    const design: BoxDesign = {
      ...BARE_WEDGE,
      shape: {
        kind: 'wedge',
        widthMm: 800,
        heightMm: 400,
        depthBottomMm: 400,
        depthTopMm: 240,
        slopedFace: 'back',
      },
    };
    const innerMm = 18 * Math.sqrt(1.16);
    const box = built(withDrivers(design, { mountingDepthMm: 275, magnetDiaMm: 150 }));
    expect(box.drivers[0]?.depthAtMagnetEdgeMm).toBeCloseTo(400 - (0.4 * 275 + innerMm), 9);
    // On the axis 300.6 mm deep: 275 + 12 would pass there.
    const found = finding(box, 'driver-meets-wall');
    expect(found).toMatchObject({ part: 'magnet', face: 'back', edge: 'upper' });
    // 275 - 270.61341 = 4.38659 too deep along the axis; square to the wall that is × cos θ.
    expect(found?.byMm).toBeCloseTo((275 - (400 - 110 - innerMm)) / Math.sqrt(1.16), 9);
    expect(found?.at).toEqual({ xMm: 125, yMm: 275 });
  });

  it('counts a recess, which lets the driver in deeper', () => {
    const flush = built(withDrivers(depth(180), {}, { mount: 'flush' }));
    // recess = 6 + 2 gasket, seat 8 mm deeper
    expect(flush.drivers[0]?.recessDepthMm).toBeCloseTo(8, 9);
    expect(flush.drivers[0]?.depthAtMagnetEdgeMm).toBeCloseTo(180 - 18 - 8, 9);
  });

  it('sees a magnet against the side', () => {
    const positions = [{ zMm: 280, upMm: 190 }];
    const found = finding(built(withDrivers(BARE_BOX, {}, { positions })), 'driver-meets-wall');
    // inside ends at 332; the frame of 232 mm reaches 280 + 116
    expect(found).toMatchObject({ part: 'frame', face: 'left' });
    expect(found?.byMm).toBeCloseTo(280 + 116 - 332, 9);
  });

  it('wants 25 mm beside a frame that breathes sideways', () => {
    const low: BoxDesign = {
      ...BARE_BOX,
      shape: { kind: 'rectangular', widthMm: 700, heightMm: 300, depthMm: 420 },
    };
    const found = finding(built(withDrivers(low, { sideVents: true })), 'side-vent-room-short');
    // 264 mm clear, 232 mm frame: 16 above and below
    expect(found?.roomMm).toBeCloseTo(16, 9);
    expect(
      finding(built(withDrivers(BARE_BOX, { sideVents: true })), 'side-vent-room-short'),
    ).toBeUndefined();
  });
});

describe('a driver on its baffle', () => {
  it('is larger than the baffle by so much', () => {
    const low: BoxDesign = {
      ...BARE_BOX,
      shape: { kind: 'rectangular', widthMm: 700, heightMm: 250, depthMm: 420 },
    };
    const box = built(withDrivers(low, {}));
    // flange 262 on a face of 250: 12 over. Cut-out 233.5 in 214 clear: 19.5 over, and that is the worse.
    expect(finding(box, 'driver-larger-than-baffle')).toMatchObject({ measure: 'cut-out', direction: 'up' });
    expect(finding(box, 'driver-larger-than-baffle')?.byMm).toBeCloseTo(19.5, 9);
  });

  it('keeps its recess t + 20 mm from the edge of the face', () => {
    const positions = [{ zMm: 0, upMm: 160 }];
    const found = finding(
      built(withDrivers(BARE_BOX, {}, { mount: 'flush', positions })),
      'driver-near-edge',
    );
    // recess 262 + 2 = 264: its edge is 160 - 132 = 28 from the lower edge, where 38 are needed
    expect(found).toMatchObject({ edge: 'lower', neededMm: 38 });
    expect(found?.distanceMm).toBeCloseTo(28, 9);
    expect(found?.byMm).toBeCloseTo(10, 9);
  });

  it('needs t / cos θ + 20 mm where the panel round the corner meets the face at a slant', () => {
    const positions = [{ zMm: 0, upMm: 100 }];
    const found = finding(built(withDrivers(BARE_WEDGE, {}, { positions })), 'driver-near-edge');
    expect(found?.neededMm).toBeCloseTo(9 * Math.sqrt(5) + 20, 9);
  });

  it('keeps 20 mm to its neighbour', () => {
    const positions = [
      { zMm: -138, upMm: 190 },
      { zMm: 138, upMm: 190 },
    ];
    const found = finding(built(withDrivers(BARE_BOX, {}, { count: 2, positions })), 'drivers-close');
    expect(found).toMatchObject({ drivers: [1, 2], neededMm: 20 });
    expect(found?.gapMm).toBeCloseTo(276 - 262, 9);
  });

  it('spaces a row evenly: inner face, gap, driver, gap, …', () => {
    const box = built(withDrivers(BARE_BOX, {}, { count: 2 }));
    // (664 - 2 × 262) / 3 = 46.667 each gap
    expect(box.drivers[0]?.zMm).toBeCloseTo(-(131 + 46.6666666667 / 2), 6);
    expect(box.drivers[1]?.zMm).toBeCloseTo(131 + 46.6666666667 / 2, 6);
  });

  it('wants 12 mm of wood under the recess, and a doubler mends it', () => {
    const thin = {
      ...BARE_BOX,
      stock: { ...BARE_BOX.stock, carcass: { ...BARE_BOX.stock.carcass, thicknessMm: 15 } },
    };
    const found = finding(built(withDrivers(thin, {}, { mount: 'flush' })), 'recess-thin');
    expect(found).toEqual({ code: 'recess-thin', leftMm: 7, neededMm: 12, byMm: 5 });
    const doubled: BoxDesign = {
      ...thin,
      baffle: { ...BARE_BOX.baffle, doubler: { at: 'inside', layers: 1 } },
    };
    expect(finding(built(withDrivers(doubled, {}, { mount: 'flush' })), 'recess-thin')).toBeUndefined();
  });

  it('tells when a T-nut’s flange reaches into the cut-out', () => {
    const fixing = { kind: 't-nut' as const, holeDiaMm: 6.5, flangeDiaMm: 17 };
    const found = finding(built(withDrivers(BARE_BOX, {}, { fixing })), 'fixing-at-cutout');
    // bolt circle 247, cut-out 233.5: 6.75 mm of wood, half a flange is 8.5
    expect(found).toEqual({
      code: 'fixing-at-cutout',
      fixing: 't-nut',
      roomMm: 6.75,
      neededMm: 8.5,
      byMm: 1.75,
    });
  });

  it('wants xmech + 6 mm and the flange’s height under a grille', () => {
    const design = withDrivers({ ...BARE_BOX, grilleStandOffMm: 30 }, {});
    // 20 travel + 6 + flange and gasket 8, standing proud of the bare wood
    expect(finding(built(design), 'grille-close')).toMatchObject({ neededMm: 34, byMm: 4 });
    const flush = withDrivers({ ...BARE_BOX, grilleStandOffMm: 30 }, {}, { mount: 'flush' });
    expect(finding(built(flush), 'grille-close')).toBeUndefined();
  });
});

describe('holes', () => {
  const carpeted: BoxDesign = {
    ...BARE_BOX,
    finish: { ...BARE_BOX.finish, frontMm: 4, compressedMm: 1.5, wrapsOpenings: true },
  };

  it('grow by carpet that is tucked into them', () => {
    const box = built(withDrivers(carpeted, {}, { mount: 'flush' }));
    // cut-out 232 + 1.5 + 2 × 4; recess 262 + 2 × 4 + 2 × 1; depth 6 + 2 - 4 + 1.5
    expect(box.drivers[0]).toMatchObject({
      cutoutDiaMm: 241.5,
      recessDiaMm: 272,
      recessDepthMm: 5.5,
      proudMm: 0,
    });
  });

  it('go through every layer, the recess only as deep as it is', () => {
    const design: BoxDesign = {
      ...BARE_BOX,
      baffle: { ...BARE_BOX.baffle, doubler: { at: 'outside', layers: 1 } },
    };
    const fixing = { kind: 'insert' as const, holeDiaMm: 6, flangeDiaMm: null };
    const box = built(withDrivers(design, {}, { mount: 'flush', fixing }));
    const holes = (id: string) =>
      box.panels
        .find((panel) => panel.id === id)
        ?.holes.map((hole) => [hole.purpose.split(' ')[0], hole.depthMm]);
    expect(holes('doubler-outside-1')).toEqual([
      ['recess', 8],
      ['cut-out', null],
      ...Array.from({ length: 8 }, () => ['bolt', null]),
    ]);
    expect(holes('wall-front')?.slice(0, 2)).toEqual([
      ['cut-out', null],
      ['bolt', null],
    ]);
  });

  it('that run off a panel are left off it and reported', () => {
    const positions = [{ zMm: 0, upMm: 60 }];
    const box = built(withDrivers(BARE_BOX, {}, { positions }));
    // The baffle starts 18 mm up; the hole's edge would be at 60 - 116.75.
    expect(finding(box, 'opening-off-panel')).toMatchObject({ panelId: 'wall-front', mark: 'B' });
    expect(finding(box, 'opening-off-panel')?.byMm).toBeCloseTo(116.75 - 42, 9);
    expect(box.panels.find(({ id }) => id === 'wall-front')?.holes).toEqual([]);
  });
});

describe('findings as a whole', () => {
  it('never grow when the driver gets shallower', () => {
    fc.assert(
      fc.property(anyDesign, fc.double({ min: 0.5, max: 1, noNaN: true }), (design, share) => {
        fc.pre(design.drivers !== null);
        if (design.drivers === null) return;
        const { drivers } = design;
        const body = { ...drivers.body, mountingDepthMm: drivers.body.mountingDepthMm * share };
        const deep = buildBox(design);
        const shallow = buildBox({ ...design, drivers: { ...drivers, body } });
        fc.pre(!isRefusal(deep) && !isRefusal(shallow));
        if (isRefusal(deep) || isRefusal(shallow)) return;
        const short = (box: BoxResult) =>
          box.findings.filter(({ code }) => code === 'magnet-room-short' || code === 'driver-meets-wall')
            .length;
        expect(short(shallow)).toBeLessThanOrEqual(short(deep));
      }),
      { numRuns: 150, seed: 41 },
    );
  });

  it('name the deeper driver of the two makes as the one in the way', () => {
    const quince = built(withDrivers(depth(180), {}));
    const medlar = built(withDrivers(depth(180), MEDLAR_12));
    expect(finding(quince, 'driver-meets-wall')).toBeUndefined();
    expect(finding(medlar, 'driver-meets-wall')?.byMm).toBeCloseTo(165 - 162, 9);
  });
});
