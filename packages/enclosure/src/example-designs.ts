// Boxes of the shop's own scenario, for tests and the bench. Drivers and vehicles are invented.
import { type BoxDesign, type BoxDesignInput, boxDesignSchema } from '@gusset/contracts/enclosure';

export const MDF_18 = { materialId: 'mdf-18', thicknessMm: 18, densityKgM3: 720, modulusGPa: 2.8 };

/** A 10-inch driver: 262 mm flange, 128 mm deep, 1.9 L. */
export const QUINCE_10 = {
  overallDiaMm: 262,
  cutoutDiaMm: 232,
  boltCircleDiaMm: 247,
  boltCount: 8,
  mountingDepthMm: 128,
  magnetDiaMm: 150,
  flangeThicknessMm: 6,
  gasketThicknessMm: 2,
  displacementLitres: 1.9,
  massKg: 5.4,
  xmechMm: 20,
};

/** A 12-inch driver with a vented pole. */
export const MEDLAR_12 = {
  overallDiaMm: 318,
  cutoutDiaMm: 283,
  boltCircleDiaMm: 300,
  boltCount: 8,
  mountingDepthMm: 165,
  magnetDiaMm: 190,
  flangeThicknessMm: 8,
  gasketThicknessMm: 2,
  poleVentDiaMm: 32,
  displacementLitres: 3.1,
  massKg: 9.2,
  xmechMm: 26,
};

export function example(input: BoxDesignInput): BoxDesign {
  return boxDesignSchema.parse(input);
}

/** Bare carcass, nothing inside: 700 × 380 × 420 mm outside. */
export const BARE_BOX = example({
  shape: { kind: 'rectangular', widthMm: 700, heightMm: 380, depthMm: 420 },
  stock: { carcass: MDF_18 },
  baffle: { face: 'front' },
  bracing: { kind: 'none' },
  sealantLitres: 0,
});

/** Worked by hand in `box-volumes.test.ts`. */
export const BARE_WEDGE = example({
  shape: {
    kind: 'wedge',
    widthMm: 800,
    heightMm: 400,
    depthBottomMm: 500,
    depthTopMm: 300,
    slopedFace: 'front',
  },
  stock: { carcass: MDF_18 },
  baffle: { face: 'front' },
  bracing: { kind: 'none' },
  sealantLitres: 0,
});

/** Two 10-inch drivers for the Halden estate: a wedge against the seat backs, carpeted. */
export const HALDEN_TWIN = example({
  shape: {
    kind: 'wedge',
    widthMm: 940,
    heightMm: 370,
    depthBottomMm: 400,
    depthTopMm: 250,
    slopedFace: 'back',
  },
  stock: { carcass: MDF_18 },
  baffle: { face: 'front', doubler: { at: 'outside', layers: 1 } },
  finish: {
    bottomMm: 4,
    frontMm: 4,
    topMm: 4,
    backMm: 4,
    leftMm: 4,
    rightMm: 4,
    compressedMm: 1.5,
    wrapsOpenings: true,
  },
  drivers: {
    count: 2,
    body: QUINCE_10,
    mount: 'flush',
    fixing: { kind: 't-nut', holeDiaMm: 6.5, flangeDiaMm: 17 },
  },
  cornerBlocks: { legMm: 22, seams: 'all' },
  terminalCup: {
    face: 'left',
    cutout: { shape: 'rectangle', widthMm: 80, heightMm: 60, cornerRadiusMm: 8 },
    insideDepthMm: 45,
    massKg: 0.2,
  },
  lining: 'walls',
  targetNetLitres: 60,
});

/** The bench's measure of a full box: 14 panels, two chambers, braces in both, a slot with cheeks, strips. */
export const TWO_CHAMBERS = example({
  shape: { kind: 'rectangular', widthMm: 900, heightMm: 420, depthMm: 560 },
  stock: { carcass: MDF_18 },
  baffle: { face: 'front' },
  joints: { kinds: { topFront: 'rabbet', bottomBack: 'rabbet' } },
  drivers: { count: 2, body: QUINCE_10, mount: 'flush', fixing: { kind: 'insert', holeDiaMm: 7 } },
  divider: { parallelTo: 'back', clearMm: 200 },
  ports: [{ kind: 'slot', face: 'front', along: 'bottom', heightMm: 28, widthMm: 300, lengthMm: 270 }],
  bracing: { kind: 'count', count: 2 },
  cornerBlocks: { legMm: 20 },
});
