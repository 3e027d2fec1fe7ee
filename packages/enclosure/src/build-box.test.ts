import { boxResultSchema } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyDesign } from './arbitrary-design.ts';
import { buildBox } from './build-box.ts';
import { built, panel, withDrivers } from './built-box.ts';
import { BARE_BOX, BARE_WEDGE, example, HALDEN_TWIN } from './example-designs.ts';

const DEGREE = Math.PI / 180;

describe('a rectangular box, 700 × 380 × 420 mm of 18 mm board', () => {
  const box = built(BARE_BOX);

  it('holds (W - 2t)(H - 2t)(D - 2t)', () => {
    // 664 × 344 × 384 mm = 87.711744 L; outside 0.7 × 0.38 × 0.42 m³ = 111.72 L
    expect(box.volumes.grossLitres).toBeCloseTo(87.711744, 9);
    expect(box.volumes.outsideLitres).toBeCloseTo(111.72, 9);
    expect(box.volumes.netLitres).toBeCloseTo(87.711744, 9);
  });

  it('has sides of the whole side view, bottom and top between them, front and back between those', () => {
    const sizes = box.panels.map(({ mark, name, lengthMm, widthMm }) => [mark, name, lengthMm, widthMm]);
    expect(sizes).toEqual([
      ['A', 'Bottom', 664, 420],
      ['B', 'Baffle', 664, 344],
      ['C', 'Top', 664, 420],
      ['D', 'Back', 664, 344],
      ['E', 'Left side', 420, 380],
      ['F', 'Right side', 420, 380],
    ]);
    expect(box.panels.every(({ edges }) => edges.every(({ bevelRad }) => bevelRad === 0))).toBe(true);
  });

  it('weighs its wood, and balances in the middle', () => {
    // 111.72 - 87.711744 = 24.008256 L at 720 kg/m³ = 17.28594 kg
    expect(box.mass.panelsKg).toBeCloseTo(17.28594432, 8);
    const { x, y, z } = box.mass.emptyCentreMm;
    expect([x, y, z].map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([210, 190, 0]);
  });

  it('has 2 × 2 × (344 + 384) + 4 × 664 mm of inside seam', () => {
    expect(box.joints.shellSeamMm).toBeCloseTo(2 * 2 * (344 + 384) + 4 * 664, 9);
  });

  it('puts screws 70 mm from the ends and at most 150 mm apart', () => {
    // 664 mm: 524 between the ends, 4 gaps, 5 screws; 384 mm: 244, 2 gaps, 3; 344 mm: 204, 2 gaps, 3
    expect(box.joints.screws).toBe(4 * 5 + 4 * 3 + 4 * 3);
  });

  it('shows its outer faces in square metres', () => {
    const areas = Object.fromEntries(box.finishAreas.map(({ face, areaM2 }) => [face, areaM2]));
    expect(areas.front).toBeCloseTo(0.7 * 0.38, 9);
    expect(areas.top).toBeCloseTo(0.7 * 0.42, 9);
    expect(areas.left).toBeCloseTo(0.38 * 0.42, 9);
  });
});

describe('a wedge with a sloped front, 400 high, 500 deep below, 300 above, 800 wide, 18 mm board', () => {
  // tan θ = (500 - 300) / 400 = 1/2, θ = 26.565°, cos θ = 2/√5.
  // The front wall is 18 / cos θ = 18 × √5/2 = 20.124612 mm deep along the floor.
  const box = built(BARE_WEDGE);
  const alongFloorMm = 9 * Math.sqrt(5);

  it('counts the sloped wall along the floor: t / cos θ', () => {
    const [backLow, frontLow, frontHigh, backHigh] = box.section.inner;
    // On the floor's inner face, y = 18, the outer face stands at 500 - 9 = 491.
    expect(backLow).toEqual({ xMm: 18, yMm: 18 });
    expect(frontLow?.xMm).toBeCloseTo(491 - alongFloorMm, 9);
    // Under the lid, y = 382, it stands at 500 - 191 = 309.
    expect(frontHigh?.xMm).toBeCloseTo(309 - alongFloorMm, 9);
    expect(backHigh?.yMm).toBeCloseTo(382, 9);
  });

  it('holds 764 × 364 × the mean inside depth', () => {
    // depths 491 - 20.124612 - 18 = 452.875388 and 270.875388, mean 361.875388: 100.636 098 L
    expect(box.volumes.grossLitres).toBeCloseTo((764 * 364 * (382 - alongFloorMm)) / 1e6, 9);
    expect(box.volumes.grossLitres).toBeCloseTo(100.636098, 6);
    expect(box.volumes.outsideLitres).toBeCloseTo(128, 9);
  });

  it('bevels the front at both ends by θ, and bottom and top where they meet it', () => {
    const bevels = (id: string) => panel(box, id).edges.map(({ bevelRad }) => bevelRad / DEGREE);
    const theta = Math.atan(0.5) / DEGREE;
    for (const [id, expected] of [
      ['wall-front', [theta, 0, theta, 0]],
      ['wall-bottom', [0, 0, theta, 0]],
      ['wall-top', [theta, 0, 0, 0]],
      ['wall-back', [0, 0, 0, 0]],
    ] as const) {
      bevels(id).forEach((bevel, edge) => {
        expect(bevel).toBeCloseTo(expected[edge] ?? Number.NaN, 9);
      });
    }
  });

  it('draws each panel by the blank that has to be cut for it', () => {
    // Bottom: outer face 500 is the larger. Top: outer face 300, inner face 309, so the inner is the larger.
    expect(panel(box, 'wall-bottom').widthMm).toBeCloseTo(500, 9);
    expect(panel(box, 'wall-top').widthMm).toBeCloseTo(309, 9);
    // Front: both faces 364 / cos θ = 406.964372 long, shifted by 18 tan θ = 9: a blank of 415.964372.
    expect(panel(box, 'wall-front').widthMm).toBeCloseTo(182 * Math.sqrt(5) + 9, 9);
    const front = box.bodies.find(({ panelId }) => panelId === 'wall-front');
    expect(front?.edgeLeans).toEqual(['outer', 'square', 'inner', 'square']);
  });

  it('cuts the sides as trapezoids of the outer size, square-edged', () => {
    const side = panel(box, 'side-left');
    expect(side.outline).toEqual([
      { xMm: 0, yMm: 0 },
      { xMm: 500, yMm: 0 },
      { xMm: 300, yMm: 400 },
      { xMm: 0, yMm: 400 },
    ]);
    // (500 + 300) / 2 × 400 × 18 mm³
    expect(side.solidMm3).toBeCloseTo(2_880_000, 3);
  });
});

describe('choices of joint', () => {
  it('let the walls run over covered sides', () => {
    const box = built({ ...BARE_BOX, joints: { ...BARE_BOX.joints, sides: 'covered' } });
    expect(panel(box, 'wall-front').lengthMm).toBe(700);
    expect(panel(box, 'side-left').lengthMm).toBe(384);
    expect(panel(box, 'side-left').widthMm).toBe(344);
  });

  it('let the front run past the top', () => {
    const box = built({ ...BARE_BOX, joints: { ...BARE_BOX.joints, topFront: 'front' } });
    expect(panel(box, 'wall-front').widthMm).toBe(362);
    expect(panel(box, 'wall-top').widthMm).toBe(402);
    expect(panel(box, 'wall-front').edges[2]?.runsThrough).toBe(true);
  });

  it('never change the volume', () => {
    const volumes = (['through', 'covered'] as const).flatMap((sides) =>
      (['top', 'front'] as const).map(
        (topFront) => built({ ...BARE_WEDGE, joints: { ...BARE_WEDGE.joints, sides, topFront } }).volumes,
      ),
    );
    for (const { grossLitres, shellLitres } of volumes) {
      expect(grossLitres).toBeCloseTo(100.636098, 6);
      expect(shellLitres).toBeCloseTo(128 - 100.636098, 6);
    }
  });

  it('give way to a mitre where a butt joint would end in a feather', () => {
    // knee at half height: 150 mm back over 200 mm, so the corner at the knee is 180° - 36.87° = 143.13°
    const box = built(
      example({
        ...BARE_WEDGE,
        shape: {
          kind: 'clipped-wedge',
          widthMm: 800,
          heightMm: 400,
          depthBottomMm: 450,
          depthTopMm: 300,
          kneeHeightMm: 200,
          slopedFace: 'front',
        },
      }),
    );
    const knee = panel(box, 'wall-front').edges[2];
    expect(knee?.joint).toBe('mitre');
    expect((knee?.bevelRad ?? 0) / DEGREE).toBeCloseTo(Math.atan(0.75) / DEGREE / 2, 9); // half the turn
  });
});

describe('doublers', () => {
  it('inside take their own volume from the air', () => {
    const box = built({
      ...BARE_BOX,
      baffle: { ...BARE_BOX.baffle, doubler: { at: 'inside', layers: 2 } },
    });
    // 664 × 344 × 36 mm = 8.222976 L
    expect(box.volumes.deductions.find(({ code }) => code === 'inside-doubler')?.litres).toBeCloseTo(
      8.222976,
      9,
    );
    expect(box.sizes.wood.depthMm).toBe(420);
    expect(box.volumes.netLitres).toBeCloseTo(87.711744 - 8.222976, 9);
  });

  it('outside add depth and leave the air alone', () => {
    const box = built({
      ...BARE_BOX,
      baffle: { ...BARE_BOX.baffle, doubler: { at: 'outside', layers: 1 } },
    });
    expect(box.sizes.wood.depthMm).toBe(438);
    expect(box.volumes.netLitres).toBeCloseTo(87.711744, 9);
    expect(panel(box, 'doubler-outside-1')).toMatchObject({ lengthMm: 700, widthMm: 380 });
  });
});

describe('bookkeeping', () => {
  it('lists every deduction of a fitted box by name', () => {
    const box = built({
      ...HALDEN_TWIN,
      fittedParts: [{ label: 'Amplifier', litres: 1.4, massKg: 2.1 }],
    });
    const { deductions } = box.volumes;
    expect(deductions.map(({ code, label, source }) => [code, label, source])).toEqual([
      ['driver', null, 'maker'],
      ['brace', null, 'computed'],
      ['corner-block', null, 'computed'],
      ['terminal-cup', null, 'computed'],
      ['fitted-part', 'Amplifier', 'typed'],
      ['sealant', null, 'typed'],
    ]);
    expect(deductions[0]?.litres).toBeCloseTo(2 * 1.9, 12);
    // 80 × 60 mm with corners of 8 mm, 45 mm deep: (4800 - 0.858407 × 64) × 45 mm³
    expect(deductions[3]?.litres).toBeCloseTo(0.213528, 6);
    expect(box.findings).toContainEqual({ code: 'lining-not-deducted', lining: 'walls' });
  });

  it('flags a driver without a stated displacement instead of guessing', () => {
    const box = built(withDrivers(BARE_BOX, { displacementLitres: null }));
    expect(box.volumes.deductions[0]).toMatchObject({ code: 'driver', litres: 0, source: 'missing' });
    expect(box.findings).toContainEqual({ code: 'driver-displacement-missing', count: 1 });
  });

  it('adds cut-out air only where asked, and says what it left out', () => {
    const plain = withDrivers(BARE_BOX, {});
    // one hole of 233.5 mm through 18 mm: π/4 × 233.5² × 18 mm³ = 0.77079 L
    const left = built(plain);
    expect(left.volumes.cutoutAirLitres).toBeCloseTo(0.77079, 5);
    expect(left.findings.some(({ code }) => code === 'cutout-air-left-out')).toBe(true);
    const counted = built({ ...plain, countCutoutAir: true });
    expect(counted.volumes.netLitres - left.volumes.netLitres).toBeCloseTo(0.77079, 5);
    expect(counted.findings.some(({ code }) => code === 'cutout-air-left-out')).toBe(false);
  });

  it('keeps wood strips of legs 20 mm in right corners at leg² / 2', () => {
    const box = built({ ...BARE_BOX, cornerBlocks: { legMm: 20, seams: 'across' } });
    // four strips of 664 mm × 200 mm²
    expect(box.volumes.deductions[0]).toMatchObject({ code: 'corner-block', count: 4 });
    expect(box.volumes.deductions[0]?.litres).toBeCloseTo(0.5312, 9);
  });
});

describe('weight', () => {
  it('asks for two people above 20 kg, drivers counted', () => {
    const box = built(withDrivers(BARE_BOX, {})); // about 17.0 kg of wood and 5.4 kg of driver
    const lift = box.findings.find(({ code }) => code === 'two-person-lift');
    expect(lift).toMatchObject({ limitKg: 20, emptyIsHeavy: false, hoist: false });
    expect(box.mass.withDriversKg - box.mass.emptyKg).toBeCloseTo(5.4, 12);
  });

  it('moves the balance toward the magnet, 0.6 of the mounting depth behind the seat', () => {
    const box = built(withDrivers(BARE_BOX, {}));
    const { emptyKg, emptyCentreMm, withDriversKg, withDriversCentreMm } = box.mass;
    const driverX = 420 - 0.6 * 128;
    const expected = (emptyKg * emptyCentreMm.x + 5.4 * driverX) / withDriversKg;
    expect(withDriversCentreMm.x).toBeCloseTo(expected, 9);
  });
});

describe('every result', () => {
  it('passes its own contract, panels included', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const box = buildBox(design);
        fc.pre(!isRefusal(box));
        expect(boxResultSchema.safeParse(box).error).toBeUndefined();
      }),
      { numRuns: 150, seed: 31 },
    );
  });

  it('keeps both faces of every panel within its outline, and the outline at the origin', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const box = buildBox(design);
        fc.pre(!isRefusal(box));
        if (isRefusal(box)) return;
        for (const body of box.bodies) {
          const { lengthMm, widthMm, outline, edges } = panel(box, body.panelId);
          expect(edges).toHaveLength(outline.length);
          expect(body.edgeLeans).toHaveLength(outline.length);
          for (const { xMm, yMm } of [...body.outerFace, ...body.innerFace, ...outline]) {
            expect(Math.min(xMm, yMm, lengthMm - xMm, widthMm - yMm)).toBeGreaterThan(-1e-6);
          }
        }
      }),
      { numRuns: 150, seed: 32 },
    );
  });

  it('is the same for the same design', () => {
    expect(JSON.stringify(built(HALDEN_TWIN))).toBe(JSON.stringify(built(HALDEN_TWIN)));
  });
});
