// What was entered, the records it names and the sheets above -> the design that the enclosure engine builds.
import type {
  BoxFaceName,
  BoxFacts,
  BoxInput,
  BoxNote,
  BoxStock,
  DriverFact,
  SheetFact,
} from '@gusset/contracts/box';
import type {
  BoxDesign,
  BoxShape,
  DriverBody,
  Finish,
  MountedDrivers,
  PanelStock,
  TerminalCup,
  WallFace,
} from '@gusset/contracts/enclosure';
import type { SheetFigures } from '@gusset/contracts/records';
import type { SoundResult } from '@gusset/contracts/sound';
import type { SurveyResult } from '@gusset/contracts/survey';
import type { Missing } from '../sheet-definition.ts';
import { portsOf } from './box-ports.ts';

export type BoxUpstream = {
  readonly survey?: Pick<SurveyResult, 'cavity'> | null;
  readonly sound?: SoundResult | null;
};

/** Bending stiffness by kind of board, GPa: middle of the standards' ranges; plywood is the mean of both directions. */
const MODULUS_GPA: Readonly<Record<SheetFigures['material'], number>> = {
  mdf: 2.8,
  'light-mdf': 2.2, // EN 622-5 asks less of light boards: an estimate
  'birch-ply': 7.5,
  ply: 6, // softer veneers than birch: an estimate
  other: 2.8,
};
/** Wood kept of a window brace. */
const BRACE_SOLID_FRACTION = 0.45;
const SEALANT_LITRES = 0.1;
/** Carpet under a driver's flange is pressed to about this share of its thickness (4 mm to 1.5 mm). */
const CARPET_COMPRESSED_SHARE = 0.375;

export type DesignedBox = {
  readonly design: BoxDesign;
  readonly carcass: BoxStock;
  readonly baffle: BoxStock;
  readonly notes: readonly BoxNote[];
};

/** The design, or what is still missing for one. */
export function boxDesignOf(
  input: BoxInput,
  facts: BoxFacts,
  upstream: BoxUpstream,
): DesignedBox | { readonly missing: readonly Missing[] } {
  const sound = upstream.sound ?? null;
  const shape = shapeOf(input);
  const { carcass } = facts;
  const missing = missingIn(input, facts, sound);
  if (shape === null || carcass === null || missing.length > 0) return { missing };
  const baffle = facts.baffle ?? carcass;
  const driver = sound === null ? null : facts.driver;
  const body = driver === null ? null : bodyOf(driver);
  return {
    design: {
      shape,
      stock: {
        carcass: stockOf(carcass),
        baffle: facts.baffle === null ? null : stockOf(baffle),
        brace: null,
      },
      joints: {
        sides: 'through',
        bottomFront: 'bottom',
        bottomBack: 'bottom',
        topFront: 'top',
        topBack: 'top',
        kinds: {
          bottomFront: input.joints.corners,
          bottomBack: input.joints.corners,
          topFront: input.joints.corners,
          topBack: input.joints.corners,
          others: input.joints.corners,
          sides: input.joints.sides,
        },
        rabbetDepthMm: null,
      },
      baffle: { ...input.baffle, setBackMm: input.baffleSetBack?.mm ?? 0 },
      finish: finishOf(input, facts),
      drivers: sound === null || body === null ? null : mounted(input, sound.count, body.body),
      cutoutClearanceMm: input.drivers.cutoutClearance.mm,
      grilleStandOffMm: input.drivers.grilleStandOff?.mm ?? null,
      bracing: bracingOf(input),
      cornerBlocks:
        input.cornerBlocks === null
          ? null
          : { legMm: input.cornerBlocks.leg.mm, seams: input.cornerBlocks.seams },
      terminalCup: terminalOf(input),
      ports: portsOf(input, sound, shape.widthMm - 2 * stockOf(carcass).thicknessMm),
      roundOver:
        input.roundOver === null
          ? null
          : { radiusMm: input.roundOver.radius.mm, edges: input.roundOver.edges },
      divider: dividerOf(input),
      fittedParts: [],
      sealantLitres: SEALANT_LITRES,
      lining: input.lining,
      countCutoutAir: false,
      targetNetLitres: sound?.netLitres ?? null,
      lowPassHz: input.lowPassHz,
    },
    carcass: boardOf(carcass),
    baffle: boardOf(baffle),
    notes: [...thicknessNotes(carcass, facts.baffle), ...(body?.notes ?? [])],
  };
}

function missingIn(input: BoxInput, facts: BoxFacts, sound: SoundResult | null): readonly Missing[] {
  const missing: Missing[] = [];
  const { width, height, depth, depthTop, kneeHeight } = input.outside;
  if (width === null) missing.push({ field: 'outside.width', what: 'the outside width of the box' });
  if (height === null) missing.push({ field: 'outside.height', what: 'the outside height of the box' });
  if (depth === null) missing.push({ field: 'outside.depth', what: 'the outside depth of the box' });
  if (input.shape !== 'rectangular' && depthTop === null) {
    const what = input.shape === 'l' ? 'the depth above the foot' : 'the depth at the top of the wedge';
    missing.push({ field: 'outside.depthTop', what });
  }
  if ((input.shape === 'clipped-wedge' || input.shape === 'l') && kneeHeight === null) {
    const what = input.shape === 'l' ? 'the height of the foot' : 'the height of the knee';
    missing.push({ field: 'outside.kneeHeight', what });
  }
  if (input.divider !== null && input.divider.clear === null) {
    missing.push({ field: 'divider.clear', what: 'how far the divider stands behind its face' });
  }
  if (facts.carcass === null) missing.push({ field: 'carcassId', what: 'the board that it is built of' });
  if (input.baffleId !== null && facts.baffle === null) {
    missing.push({ field: 'baffleId', what: 'a baffle board that is in the catalogue' });
  }
  if (sound !== null && facts.driver === null) {
    missing.push({
      field: 'drivers',
      what: 'the driver of sheet 03, which is not in the catalogue any more',
    });
  }
  const known = new Set(facts.finishes.map((finish) => finish.id));
  if (Object.values(input.finishes).some((id) => id !== null && !known.has(id))) {
    missing.push({ field: 'finishes', what: 'a finish that is in the catalogue' });
  }
  return missing;
}

/** Null while a dimension is not entered. */
function shapeOf({ shape, outside, slopedFace }: BoxInput): BoxShape | null {
  const { width, height, depth, depthTop, kneeHeight } = outside;
  if (width === null || height === null || depth === null) return null;
  const sizes = { widthMm: width.mm, heightMm: height.mm };
  if (shape === 'rectangular') return { kind: 'rectangular', ...sizes, depthMm: depth.mm };
  if (depthTop === null) return null;
  const depths = { depthBottomMm: depth.mm, depthTopMm: depthTop.mm };
  if (shape === 'wedge') return { kind: 'wedge', ...sizes, ...depths, slopedFace };
  if (kneeHeight === null) return null;
  return shape === 'clipped-wedge'
    ? { kind: 'clipped-wedge', ...sizes, ...depths, kneeHeightMm: kneeHeight.mm, slopedFace }
    : ellOf({ ...sizes, ...depths, footMm: kneeHeight.mm, slopedFace });
}

type Ell = {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly depthBottomMm: number;
  readonly depthTopMm: number;
  readonly footMm: number;
  readonly slopedFace: 'front' | 'back';
};

/** Corners counter-clockwise, each with the wall that starts at it; the upright above the foot is `slope-1`. */
function ellOf({ widthMm, heightMm, depthBottomMm, depthTopMm, footMm, slopedFace }: Ell): BoxShape {
  const corner = (xMm: number, yMm: number, face: WallFace) => ({ xMm, yMm, face });
  const backMm = depthBottomMm - depthTopMm;
  const walls =
    slopedFace === 'front'
      ? [
          corner(0, 0, 'bottom'),
          corner(depthBottomMm, 0, 'front'),
          corner(depthBottomMm, footMm, 'slope-2'),
          corner(depthTopMm, footMm, 'slope-1'),
          corner(depthTopMm, heightMm, 'top'),
          corner(0, heightMm, 'back'),
        ]
      : [
          corner(0, 0, 'bottom'),
          corner(depthBottomMm, 0, 'front'),
          corner(depthBottomMm, heightMm, 'top'),
          corner(backMm, heightMm, 'slope-1'),
          corner(backMm, footMm, 'slope-2'),
          corner(0, footMm, 'back'),
        ];
  return { kind: 'profile', widthMm, walls };
}

function stockOf({ id, figures }: SheetFact): PanelStock {
  return {
    materialId: id,
    thicknessMm: figures.measuredThicknessMm ?? figures.nominalThicknessMm,
    densityKgM3: figures.densityKgPerM3,
    modulusGPa: MODULUS_GPA[figures.material],
    hasGrain: figures.grain !== 'none',
  };
}

function boardOf(sheet: SheetFact): BoxStock {
  const { measuredThicknessMm, nominalThicknessMm } = sheet.figures;
  return {
    partId: sheet.id,
    name: sheet.name,
    thicknessMm: measuredThicknessMm ?? nominalThicknessMm,
    isMeasured: measuredThicknessMm !== null,
  };
}

function thicknessNotes(carcass: SheetFact, baffle: SheetFact | null): readonly BoxNote[] {
  const nominal = (stock: 'carcass' | 'baffle', sheet: SheetFact | null): readonly BoxNote[] =>
    sheet === null || sheet.figures.measuredThicknessMm !== null
      ? []
      : [{ code: 'thickness-nominal', stock, name: sheet.name }];
  return [...nominal('carcass', carcass), ...(baffle?.id === carcass.id ? [] : nominal('baffle', baffle))];
}

function finishOf({ finishes, finishWrapsOpenings, baffle }: BoxInput, facts: BoxFacts): Finish {
  const figuresOf = (face: BoxFaceName) =>
    facts.finishes.find((finish) => finish.id === finishes[face])?.figures ?? null;
  const mm = (face: BoxFaceName) => figuresOf(face)?.thicknessMm ?? 0;
  const onBaffle = figuresOf(finishedFace(baffle.face));
  const share = onBaffle?.finish === 'carpet' ? CARPET_COMPRESSED_SHARE : 1;
  return {
    bottomMm: mm('bottom'),
    frontMm: mm('front'),
    topMm: mm('top'),
    backMm: mm('back'),
    slopesMm: mm('slopes'),
    leftMm: mm('left'),
    rightMm: mm('right'),
    compressedMm: mm(finishedFace(baffle.face)) * share,
    wrapsOpenings: finishWrapsOpenings,
  };
}

const finishedFace = (face: BoxInput['baffle']['face']): BoxFaceName =>
  face === 'slope-1' ? 'slopes' : face;

/** A maker's sheet may leave figures out: a magnet is then taken as wide as goes through the cut-out. */
function bodyOf({ figures }: DriverFact): { readonly body: DriverBody; readonly notes: readonly BoxNote[] } {
  const { overallDiaMm, cutoutDiaMm, magnetDiaMm, flangeThicknessMm, boltCircleDiaMm } = figures;
  const notes: BoxNote[] = [];
  if (magnetDiaMm === null) notes.push({ code: 'driver-figure-assumed', figure: 'magnet', mm: cutoutDiaMm });
  if (flangeThicknessMm === null) notes.push({ code: 'driver-figure-assumed', figure: 'flange', mm: 0 });
  const body: DriverBody = {
    overallDiaMm,
    cutoutDiaMm,
    // Only its holes are drawn from it, and there are none where the circle is not stated.
    boltCircleDiaMm: boltCircleDiaMm ?? (overallDiaMm + cutoutDiaMm) / 2,
    boltCount: boltCircleDiaMm === null ? 0 : (figures.boltCount ?? 0),
    mountingDepthMm: figures.mountingDepthMm,
    magnetDiaMm: magnetDiaMm ?? cutoutDiaMm,
    flangeThicknessMm: flangeThicknessMm ?? 0,
    gasketThicknessMm: 0,
    poleVentDiaMm: figures.poleVentDiaMm === 0 ? null : figures.poleVentDiaMm,
    sideVents: figures.sideVents,
    displacementLitres: figures.dataSheet.displacementLitres,
    massKg: figures.massKg,
    xmechMm: figures.xmechMm,
  };
  return { body, notes };
}

function mounted({ drivers }: BoxInput, count: number, body: DriverBody): MountedDrivers {
  const { fixing } = drivers;
  return {
    count,
    body,
    mount: drivers.mount,
    fixing:
      fixing === null
        ? null
        : { kind: fixing.kind, holeDiaMm: fixing.hole.mm, flangeDiaMm: fixing.flange?.mm ?? null },
    positions: drivers.positions?.map(({ across, up }) => ({ zMm: across.mm, upMm: up.mm })) ?? null,
  };
}

function dividerOf({ divider }: BoxInput): BoxDesign['divider'] {
  if (divider === null || divider.clear === null) return null;
  const { parallelTo, clear, drivers, magnets } = divider;
  return { parallelTo, clearMm: clear.mm, drivers, magnets };
}

function bracingOf({ bracing }: BoxInput): BoxDesign['bracing'] {
  if (bracing.kind === 'none') return bracing;
  return { ...bracing, solidFraction: BRACE_SOLID_FRACTION, offCentre: 'left' };
}

function terminalOf({ terminalCup: cup }: BoxInput): TerminalCup | null {
  if (cup === null) return null;
  const { cutout, at } = cup;
  return {
    face: cup.face,
    cutout:
      cutout.shape === 'circle'
        ? { shape: 'circle', diameterMm: cutout.diameter.mm }
        : {
            shape: 'rectangle',
            widthMm: cutout.width.mm,
            heightMm: cutout.height.mm,
            cornerRadiusMm: 0,
          },
    insideDepthMm: cup.insideDepth.mm,
    displacementLitres: null,
    massKg: 0,
    at: at === null ? null : { acrossMm: at.across.mm, upMm: at.up.mm },
  };
}
