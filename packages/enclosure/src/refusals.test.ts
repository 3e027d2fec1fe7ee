import type { BoxDesign } from '@gusset/contracts/enclosure';
import { isRefusal, type RefusalDetail } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxForNetVolume } from './box-for-net-volume.ts';
import { buildBox } from './build-box.ts';
import { BARE_BOX, BARE_WEDGE, example, HALDEN_TWIN, MDF_18, QUINCE_10 } from './example-designs.ts';
import { mirrorDesign } from './mirror-design.ts';

function refusal(design: BoxDesign): RefusalDetail {
  const box = buildBox(design);
  if (!isRefusal(box)) throw new Error('this box was built');
  return box.refusal;
}

const board = (thicknessMm: number): BoxDesign => ({
  ...BARE_BOX,
  stock: { ...BARE_BOX.stock, carcass: { ...BARE_BOX.stock.carcass, thicknessMm } },
});

const rectangular = (widthMm: number, heightMm: number, depthMm: number): BoxDesign => ({
  ...BARE_BOX,
  shape: { kind: 'rectangular', widthMm, heightMm, depthMm },
});

describe('the door refuses', () => {
  it('a board of 0.1 mm', () => {
    expect(refusal(board(0.1))).toEqual({
      field: 'stock.carcass.thicknessMm',
      allowed: '3 to 60 mm',
      got: 0.1,
      why: 'carcass thickness is 2.9 mm too small',
    });
  });

  it('a box 10 m wide', () => {
    expect(refusal(rectangular(10_000, 380, 420))).toMatchObject({
      field: 'shape.widthMm',
      got: 10_000,
      why: 'box width is 7000 mm too large',
    });
  });

  it('walls thicker than half the box', () => {
    const { field, why } = refusal({
      ...board(60),
      shape: { kind: 'rectangular', widthMm: 700, heightMm: 380, depthMm: 100 },
    });
    expect(field).toBe('shape.depthMm');
    // 100 - 120 leaves -20, and 10 mm have to stay clear
    expect(why).toBe('the boards leave -20 mm of 100 mm, 30 mm too little');
  });

  it('sides that leave no width', () => {
    const design: BoxDesign = {
      ...board(50),
      shape: { kind: 'rectangular', widthMm: 105, heightMm: 380, depthMm: 420 },
    };
    expect(refusal(design)).toMatchObject({
      field: 'shape.widthMm',
      allowed: 'at least 110 mm with sides of 50 mm',
      got: 105,
    });
  });

  it('a wedge deeper above than below', () => {
    const design = example({
      ...BARE_WEDGE,
      shape: {
        kind: 'wedge',
        widthMm: 800,
        heightMm: 400,
        depthBottomMm: 500,
        depthTopMm: 520,
        slopedFace: 'front',
      },
    });
    expect(refusal(design)).toMatchObject({
      field: 'shape.depthTopMm',
      got: 520,
      why: 'the top is 20 mm deeper than the bottom',
    });
  });

  it('a baffle on a wall that the box lacks', () => {
    expect(refusal({ ...BARE_BOX, baffle: { face: 'slope-1', doubler: null, setBackMm: 0 } })).toMatchObject({
      field: 'baffle.face',
      allowed: 'bottom, front, top, back',
    });
  });

  it('doublers that fill the box', () => {
    const design: BoxDesign = {
      ...rectangular(700, 380, 90),
      baffle: { ...BARE_BOX.baffle, doubler: { at: 'inside', layers: 3 } },
    };
    // 90 - 4 × 18 - 18 = 0
    expect(refusal(design)).toMatchObject({ field: 'baffle.doubler.layers', got: 3 });
  });

  it('boards of unlike thickness that would end in a feather', () => {
    // The knee turns by 4.76°: a baffle of 40 mm beside 9 mm board would bevel that board by over 88°.
    const design = example({
      ...BARE_BOX,
      shape: {
        kind: 'clipped-wedge',
        widthMm: 700,
        heightMm: 1_200,
        depthBottomMm: 420,
        depthTopMm: 370,
        kneeHeightMm: 600,
        slopedFace: 'front',
      },
      stock: { carcass: { ...MDF_18, thicknessMm: 9 }, baffle: { ...MDF_18, thicknessMm: 40 } },
    });
    expect(refusal(design)).toMatchObject({
      field: 'stock.baffle.thicknessMm',
      why: 'the slope 1 meets a board of another thickness at a flat corner',
    });
  });

  it('deductions larger than the box', () => {
    const design = example({
      ...rectangular(200, 200, 200),
      drivers: { count: 1, body: { ...QUINCE_10, displacementLitres: 6 }, mount: 'surface' },
    });
    // 0.164³ m³ = 4.410944 L inside
    expect(refusal(design)).toMatchObject({
      field: 'shape',
      got: 4.41,
      why: 'what stands inside takes 6 L of 4.41 L',
    });
  });

  it('a side view that turns the wrong way or crosses itself', () => {
    const clockwise = example({
      ...BARE_BOX,
      shape: {
        kind: 'profile',
        widthMm: 700,
        walls: [
          { xMm: 0, yMm: 0, face: 'back' },
          { xMm: 0, yMm: 380, face: 'top' },
          { xMm: 420, yMm: 380, face: 'front' },
          { xMm: 420, yMm: 0, face: 'bottom' },
        ],
      },
    });
    expect(refusal(clockwise).field).toMatch(/^shape\.walls/);
  });

  it('a cut-out that no flange covers, and bolts outside it', () => {
    const body = (over: Partial<typeof QUINCE_10>) =>
      example({
        ...BARE_BOX,
        stock: { carcass: MDF_18 },
        drivers: { count: 1, body: { ...QUINCE_10, ...over }, mount: 'surface' },
      });
    expect(refusal(body({ cutoutDiaMm: 262 })).field).toBe('drivers.body.cutoutDiaMm');
    expect(refusal(body({ boltCircleDiaMm: 270 })).field).toBe('drivers.body.boltCircleDiaMm');
  });

  it('as many positions as there are drivers, and no fewer', () => {
    const design = example({
      ...BARE_BOX,
      drivers: { count: 2, body: QUINCE_10, mount: 'surface', positions: [{ zMm: 0, upMm: 190 }] },
    });
    expect(refusal(design)).toMatchObject({ field: 'drivers.positions', allowed: '2 positions', got: 1 });
  });
});

/** Every number in a JSON-like value, by path. */
function numbersIn(value: unknown, path = ''): { readonly path: string; readonly value: number }[] {
  if (typeof value === 'number') return [{ path, value }];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, member]) => numbersIn(member, `${path}/${key}`));
}

function replaced(value: unknown, keys: readonly string[], number: number): unknown {
  const [key, ...rest] = keys;
  if (key === undefined || typeof value !== 'object' || value === null) return number;
  if (Array.isArray(value)) {
    return value.map((member, index) => (String(index) === key ? replaced(member, rest, number) : member));
  }
  return { ...value, [key]: replaced(Reflect.get(value, key), rest, number) };
}

/** The design with the number at `path` replaced: the same shape, so still a design to the compiler. */
const withNumber = (design: BoxDesign, path: string, number: number) =>
  replaced(design, path.split('/').slice(1), number) as BoxDesign;

const CROWDED: BoxDesign = {
  ...HALDEN_TWIN,
  bracing: { kind: 'placed', zMm: [-200, 10], solidFraction: 0.45 },
  fittedParts: [{ label: 'Amplifier', litres: 1, massKg: 2 }],
  grilleStandOffMm: 40,
};

const CLIPPED: BoxDesign = {
  ...HALDEN_TWIN,
  shape: {
    kind: 'clipped-wedge',
    widthMm: 900,
    heightMm: 380,
    depthBottomMm: 420,
    depthTopMm: 260,
    kneeHeightMm: 120,
    slopedFace: 'back',
  },
};

const FREE: BoxDesign = {
  ...CROWDED,
  shape: {
    kind: 'profile',
    widthMm: 900,
    walls: [
      { xMm: 0, yMm: 0, face: 'bottom' },
      { xMm: 420, yMm: 0, face: 'front' },
      { xMm: 400, yMm: 380, face: 'top' },
      { xMm: 90, yMm: 380, face: 'slope-1' },
      { xMm: 0, yMm: 200, face: 'back' },
    ],
  },
};

const odd = fc.oneof(
  fc.constantFrom(
    Number.NaN,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    0,
    -0,
    -1,
    1e-9,
    1e9,
    1e300,
    0.5,
  ),
  fc.double(),
  fc.double({ min: -3_000, max: 3_000, noNaN: true }),
  fc.double({ min: 0, max: 60, noNaN: true }),
);

describe('whatever is typed', () => {
  const paths = fc
    .constantFrom(CROWDED, CLIPPED, FREE, HALDEN_TWIN)
    .chain((design) =>
      fc.record({
        design: fc.constant(design),
        changes: fc.array(
          fc.record({ path: fc.constantFrom(...numbersIn(design).map((it) => it.path)), number: odd }),
          {
            minLength: 1,
            maxLength: 2,
          },
        ),
      }),
    )
    .map(({ design, changes }) =>
      changes.reduce((changed, { path, number }) => withNumber(changed, path, number), design),
    );

  it('gives a box or a refusal, never NaN and never an exception', () => {
    let built = 0;
    fc.assert(
      fc.property(paths, (design) => {
        const box = buildBox(design);
        if (!isRefusal(box)) built += 1;
        const wrong = numbersIn(box).filter(({ value }) => !Number.isFinite(value));
        expect(wrong).toEqual([]);
        if (isRefusal(box)) {
          expect(box.refusal.field).not.toBe('');
          expect(box.refusal.why).not.toBe('');
        }
      }),
      { numRuns: 3_000, seed: 51 },
    );
    expect(built).toBeGreaterThan(400); // the fuzz reaches past the door
  });

  it('gives a design or a refusal when a volume is asked for', () => {
    fc.assert(
      fc.property(
        paths,
        odd,
        fc.constantFrom('depth', 'height', 'width'),
        (design, targetNetLitres, vary) => {
          const found = boxForNetVolume({ design, targetNetLitres, vary });
          const wrong = numbersIn(found).filter(({ value }) => !Number.isFinite(value));
          expect(wrong).toEqual([]);
        },
      ),
      { numRuns: 40, seed: 52 },
    );
  });
});

describe('mirrorDesign', () => {
  it('gives the design back when done twice', () => {
    for (const design of [CROWDED, CLIPPED, FREE, HALDEN_TWIN]) {
      expect(mirrorDesign(mirrorDesign(design))).toEqual(design);
    }
  });

  it('keeps volumes and masses, and turns the balance over', () => {
    for (const design of [CROWDED, CLIPPED, FREE, HALDEN_TWIN]) {
      const box = buildBox(design);
      const mirrored = buildBox(mirrorDesign(design));
      if (isRefusal(box) || isRefusal(mirrored)) throw new Error('both are built');
      expect(mirrored.volumes.netLitres).toBeCloseTo(box.volumes.netLitres, 9);
      expect(mirrored.mass.withDriversKg).toBeCloseTo(box.mass.withDriversKg, 9);
      expect(mirrored.mass.withDriversCentreMm.z).toBeCloseTo(-box.mass.withDriversCentreMm.z, 9);
      expect(mirrored.braces.zMm).toEqual(box.braces.zMm.map((zMm) => -zMm).reverse());
    }
  });
});
