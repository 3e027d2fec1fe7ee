// Random designs for the tests: mostly buildable, of every shape, with everything that a box can carry.
import type { BoxDesign, BoxShape } from '@gusset/contracts/enclosure';
import fc from 'fast-check';
import { example, MEDLAR_12, QUINCE_10 } from './example-designs.ts';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const rectangular = fc.record({
  kind: fc.constant('rectangular' as const),
  heightMm: mm(250, 700),
  depthMm: mm(250, 700),
  widthMm: mm(300, 1_400),
});

const wedgeFigures = {
  heightMm: mm(250, 600),
  depthTopMm: mm(150, 400),
  extraMm: mm(0, 400),
  widthMm: mm(300, 1_400),
  slopedFace: fc.constantFrom('front' as const, 'back' as const),
};

const wedge = fc.record(wedgeFigures).map(({ extraMm, ...rest }) => ({
  kind: 'wedge' as const,
  ...rest,
  depthBottomMm: rest.depthTopMm + extraMm,
}));

const clipped = fc
  .record({ ...wedgeFigures, extraMm: mm(60, 400), kneeShare: mm(0.2, 0.7) })
  .map(({ extraMm, kneeShare, ...rest }) => ({
    kind: 'clipped-wedge' as const,
    ...rest,
    depthBottomMm: rest.depthTopMm + extraMm,
    kneeHeightMm: kneeShare * rest.heightMm,
  }));

/** A hexagon with a slope on each upper corner. */
const profile = fc
  .record({
    d: mm(400, 800),
    h: mm(300, 600),
    cut: mm(60, 140),
    cutBack: mm(60, 140),
    widthMm: mm(300, 1_200),
  })
  .map(({ d, h, cut, cutBack, widthMm }) => ({
    kind: 'profile' as const,
    widthMm,
    walls: [
      { xMm: 0, yMm: 0, face: 'bottom' as const },
      { xMm: d, yMm: 0, face: 'front' as const },
      { xMm: d, yMm: h - cut, face: 'slope-1' as const },
      { xMm: d - cut, yMm: h, face: 'top' as const },
      { xMm: cutBack, yMm: h, face: 'slope-2' as const },
      { xMm: 0, yMm: h - cutBack, face: 'back' as const },
    ],
  }));

export const anyShape: fc.Arbitrary<BoxShape> = fc.oneof(rectangular, wedge, clipped, profile);

const stock = fc
  .record({ thicknessMm: mm(9, 25), densityKgM3: mm(500, 800), modulusGPa: mm(2, 9) })
  .map((figures) => ({ materialId: 'sheet', ...figures }));

const drivers = fc.record({
  count: fc.integer({ min: 1, max: 3 }),
  body: fc.constantFrom(QUINCE_10, MEDLAR_12),
  mount: fc.constantFrom('surface' as const, 'flush' as const),
  fixing: fc.constantFrom(null, { kind: 'insert' as const, holeDiaMm: 7 }),
});

const bracing = fc.oneof(
  fc.constant({ kind: 'none' as const }),
  fc.record({
    kind: fc.constant('suggested' as const),
    solidFraction: mm(0.3, 0.7),
    offCentre: fc.constantFrom('left' as const, 'right' as const),
  }),
  fc.record({ kind: fc.constant('count' as const), count: fc.integer({ min: 1, max: 3 }) }),
);

const terminalCup = fc.record({
  face: fc.constantFrom('back' as const, 'left' as const, 'right' as const, 'front' as const),
  cutout: fc.constantFrom(
    { shape: 'circle' as const, diameterMm: 76 },
    { shape: 'rectangle' as const, widthMm: 90, heightMm: 60, cornerRadiusMm: 6 },
  ),
  insideDepthMm: mm(10, 60),
});

/** Everything but the shape. */
const fittings = fc.record({
  carcass: stock,
  baffleStock: fc.option(stock),
  sides: fc.constantFrom('through' as const, 'covered' as const),
  topFront: fc.constantFrom('top' as const, 'front' as const),
  bottomFront: fc.constantFrom('bottom' as const, 'front' as const),
  topBack: fc.constantFrom('top' as const, 'back' as const),
  bottomBack: fc.constantFrom('bottom' as const, 'back' as const),
  face: fc.constantFrom('front' as const, 'back' as const, 'top' as const),
  doubler: fc.option(
    fc.record({
      at: fc.constantFrom('inside' as const, 'outside' as const),
      layers: fc.integer({ min: 1, max: 2 }),
    }),
  ),
  drivers: fc.option(drivers),
  bracing,
  cornerBlocks: fc.option(
    fc.record({
      legMm: mm(10, 25),
      seams: fc.constantFrom('across' as const, 'sides' as const, 'all' as const),
    }),
  ),
  terminalCup: fc.option(terminalCup),
  finishMm: mm(0, 4),
  wrapsOpenings: fc.boolean(),
});

/** An L: the upper front is left out, its step level or leaning. */
export const anyLProfile: fc.Arbitrary<BoxShape> = fc
  .record({
    d: mm(500, 900),
    h: mm(350, 600),
    low: mm(0.35, 0.65),
    back: mm(0.35, 0.65),
    leanMm: mm(-40, 40),
    widthMm: mm(300, 1_200),
  })
  .map(({ d, h, low, back, leanMm, widthMm }) => ({
    kind: 'profile' as const,
    widthMm,
    walls: [
      { xMm: 0, yMm: 0, face: 'bottom' as const },
      { xMm: d, yMm: 0, face: 'front' as const },
      { xMm: d, yMm: low * h, face: 'slope-1' as const },
      { xMm: back * d + leanMm, yMm: low * h + leanMm, face: 'slope-2' as const },
      { xMm: back * d, yMm: h, face: 'top' as const },
      { xMm: 0, yMm: h, face: 'back' as const },
    ],
  }));

/** Everything but the shape, ready for one. */
export const anyFittings: fc.Arbitrary<(shape: BoxShape) => BoxDesign> = fittings.map(
  (it) => (shape) =>
    example({
      shape,
      stock: { carcass: it.carcass, baffle: it.baffleStock },
      joints: {
        sides: it.sides,
        topFront: it.topFront,
        topBack: it.topBack,
        bottomFront: it.bottomFront,
        bottomBack: it.bottomBack,
      },
      baffle: { face: it.face, doubler: it.doubler },
      drivers: it.drivers,
      bracing: it.bracing,
      cornerBlocks: it.cornerBlocks,
      terminalCup: it.terminalCup,
      finish: { frontMm: it.finishMm, topMm: it.finishMm, wrapsOpenings: it.wrapsOpenings },
    }),
);

export const anyDesign: fc.Arbitrary<BoxDesign> = fc
  .tuple(anyShape, anyFittings)
  .map(([shape, fitted]) => fitted(shape));
