// First half of the door: every figure of a design on its own, against what a shop can mean by it.
import type { BoxDesign, MountedDrivers, PanelStock, TerminalCup } from '@gusset/contracts/enclosure';
import { type Refusal, refuse } from '@gusset/units';
import {
  DENSITY_KG_M3,
  FINISH_MM,
  MODULUS_GPA,
  OUTSIDE_MM,
  PORT_LENGTH_MM,
  SHORT_WALL_MM,
  SLOT_MM,
  TARGET_LITRES,
  THICKNESS_MM,
  TUBE_MM,
} from './limits.ts';

type Range = { readonly min: number; readonly max: number };
type Figure = {
  readonly field: string;
  readonly got: number;
  readonly range: Range;
  readonly unit: string;
  readonly what: string;
};

const mm = (field: string, what: string, got: number, range: Range): Figure => ({
  field,
  got,
  range,
  unit: 'mm',
  what,
});

function shapeFigures({ shape }: BoxDesign): Figure[] {
  const width = mm('shape.widthMm', 'box width', shape.widthMm, OUTSIDE_MM);
  if (shape.kind === 'profile') {
    const range = { min: -OUTSIDE_MM.max, max: OUTSIDE_MM.max };
    const corners = shape.walls.flatMap(({ xMm, yMm }, index) => [
      mm(`shape.walls[${index}].xMm`, 'corner', xMm, range),
      mm(`shape.walls[${index}].yMm`, 'corner', yMm, range),
    ]);
    return [width, ...corners];
  }
  const common = [width, mm('shape.heightMm', 'box height', shape.heightMm, OUTSIDE_MM)];
  if (shape.kind === 'rectangular') {
    return [...common, mm('shape.depthMm', 'box depth', shape.depthMm, OUTSIDE_MM)];
  }
  const wedge = [
    ...common,
    mm('shape.depthBottomMm', 'bottom depth', shape.depthBottomMm, OUTSIDE_MM),
    mm('shape.depthTopMm', 'top depth', shape.depthTopMm, SHORT_WALL_MM),
  ];
  return shape.kind === 'wedge'
    ? wedge
    : [...wedge, mm('shape.kneeHeightMm', 'knee height', shape.kneeHeightMm, SHORT_WALL_MM)];
}

function stockFigures(group: string, stock: PanelStock | null): Figure[] {
  if (stock === null) return [];
  const field = (name: string) => `stock.${group}.${name}`;
  return [
    mm(field('thicknessMm'), `${group} thickness`, stock.thicknessMm, THICKNESS_MM),
    {
      field: field('densityKgM3'),
      got: stock.densityKgM3,
      range: DENSITY_KG_M3,
      unit: 'kg/m³',
      what: 'density',
    },
    {
      field: field('modulusGPa'),
      got: stock.modulusGPa,
      range: MODULUS_GPA,
      unit: 'GPa',
      what: 'bending stiffness',
    },
  ];
}

/** Sizes of real drivers, from a 50 mm full-range to a 24-inch woofer. */
function driverFigures(drivers: MountedDrivers | null): Figure[] {
  if (drivers === null) return [];
  const { body, fixing } = drivers;
  const of = (name: keyof typeof body, what: string, got: number | null, min: number, max: number) =>
    got === null ? [] : [mm(`drivers.body.${name}`, what, got, { min, max })];
  const figures = [
    ...of('overallDiaMm', 'flange', body.overallDiaMm, 25, 700),
    ...of('cutoutDiaMm', 'cut-out', body.cutoutDiaMm, 20, 690),
    ...of('boltCircleDiaMm', 'bolt circle', body.boltCircleDiaMm, 20, 700),
    ...of('mountingDepthMm', 'mounting depth', body.mountingDepthMm, 10, 500),
    ...of('magnetDiaMm', 'magnet', body.magnetDiaMm, 10, 500),
    ...of('flangeThicknessMm', 'flange thickness', body.flangeThicknessMm, 0, 60),
    ...of('gasketThicknessMm', 'gasket', body.gasketThicknessMm, 0, 20),
    ...of('poleVentDiaMm', 'pole vent', body.poleVentDiaMm, 1, 200),
    ...of('xmechMm', 'travel', body.xmechMm, 0, 200),
    { ...count('drivers.count', drivers.count, 1, 6), what: 'number of drivers' },
    { ...count('drivers.body.boltCount', body.boltCount, 0, 24), what: 'number of bolts' },
    ...amount('drivers.body.displacementLitres', 'displacement', body.displacementLitres, 50, 'L'),
    ...amount('drivers.body.massKg', 'driver mass', body.massKg, 100, 'kg'),
  ];
  if (fixing === null) return figures;
  const flange =
    fixing.flangeDiaMm === null
      ? []
      : [mm('drivers.fixing.flangeDiaMm', 'T-nut flange', fixing.flangeDiaMm, { min: 3, max: 60 })];
  return [
    ...figures,
    mm('drivers.fixing.holeDiaMm', 'fixing hole', fixing.holeDiaMm, { min: 1, max: 25 }),
    ...flange,
  ];
}

const PIECES = 'pieces';

const count = (field: string, got: number, min: number, max: number) => ({
  field,
  got,
  range: { min, max },
  unit: PIECES,
});

const amount = (field: string, what: string, got: number | null, max: number, unit: string): Figure[] =>
  got === null ? [] : [{ field, what, got, range: { min: 0, max }, unit }];

const place = (field: string, got: number) =>
  mm(field, 'position', got, { min: -OUTSIDE_MM.max, max: OUTSIDE_MM.max });

function placeFigures({ drivers, terminalCup, bracing }: BoxDesign): Figure[] {
  const at = terminalCup?.at ?? null;
  return [
    ...(drivers?.positions ?? []).flatMap(({ zMm, upMm }, index) => [
      place(`drivers.positions[${index}].zMm`, zMm),
      place(`drivers.positions[${index}].upMm`, upMm),
    ]),
    ...(at === null
      ? []
      : [place('terminalCup.at.acrossMm', at.acrossMm), place('terminalCup.at.upMm', at.upMm)]),
    ...(bracing.kind === 'placed'
      ? bracing.zMm.map((zMm, index) => place(`bracing.zMm[${index}]`, zMm))
      : []),
  ];
}

function terminalFigures(cup: TerminalCup | null): Figure[] {
  if (cup === null) return [];
  const hole = { min: 5, max: 600 };
  const { cutout } = cup;
  const cut =
    cutout.shape === 'circle'
      ? [mm('terminalCup.cutout.diameterMm', 'terminal cut-out', cutout.diameterMm, hole)]
      : [
          mm('terminalCup.cutout.widthMm', 'terminal cut-out', cutout.widthMm, hole),
          mm('terminalCup.cutout.heightMm', 'terminal cut-out', cutout.heightMm, hole),
          mm('terminalCup.cutout.cornerRadiusMm', 'corner radius', cutout.cornerRadiusMm, {
            min: 0,
            max: Math.min(cutout.widthMm, cutout.heightMm) / 2,
          }),
        ];
  return [
    ...cut,
    mm('terminalCup.insideDepthMm', 'terminal depth', cup.insideDepthMm, { min: 0, max: 300 }),
    ...amount('terminalCup.displacementLitres', 'terminal displacement', cup.displacementLitres, 50, 'L'),
    ...amount('terminalCup.massKg', 'terminal mass', cup.massKg, 50, 'kg'),
  ];
}

function finishFigures({ finish }: BoxDesign): Figure[] {
  const { wrapsOpenings: _, ...thicknesses } = finish;
  return Object.entries(thicknesses).map(([name, got]) => mm(`finish.${name}`, 'finish', got, FINISH_MM));
}

function bracingFigures({ bracing }: BoxDesign): Figure[] {
  if (bracing.kind === 'none') return [];
  const wood: Figure = {
    field: 'bracing.solidFraction',
    got: bracing.solidFraction,
    range: { min: 0.05, max: 1 },
    unit: 'of the frame',
    what: 'wood left in a window brace',
  };
  if (bracing.kind !== 'count') return [wood];
  return [wood, { ...count('bracing.count', bracing.count, 1, 6), what: 'braces' }];
}

function insideFigures({ baffle, cornerBlocks, fittedParts, sealantLitres }: BoxDesign): Figure[] {
  const layers = baffle.doubler?.layers;
  return [
    ...(layers === undefined
      ? []
      : [{ ...count('baffle.doubler.layers', layers, 1, 3), what: 'doubler layers' }]),
    ...(cornerBlocks === null
      ? []
      : [mm('cornerBlocks.legMm', 'corner block', cornerBlocks.legMm, { min: 5, max: 100 })]),
    ...fittedParts.flatMap((part, index) => [
      ...amount(`fittedParts[${index}].litres`, part.label, part.litres, 500, 'L'),
      ...amount(`fittedParts[${index}].massKg`, part.label, part.massKg, 500, 'kg'),
    ]),
    ...amount('sealantLitres', 'sealant', sealantLitres, 5, 'L'),
  ];
}

function goalFigures(design: BoxDesign) {
  const { targetNetLitres: target, lowPassHz, cutoutClearanceMm, grilleStandOffMm, baffle } = design;
  const figures: Figure[] = [
    {
      field: 'lowPassHz',
      got: lowPassHz,
      range: { min: 20, max: 5_000 },
      unit: 'Hz',
      what: 'low-pass corner',
    },
    mm('baffle.setBackMm', 'set-back of the baffle', baffle.setBackMm, { min: 0, max: 300 }),
    mm('cutoutClearanceMm', 'cut-out clearance', cutoutClearanceMm, { min: 0, max: 10 }),
  ];
  if (target !== null) {
    figures.push({ field: 'targetNetLitres', got: target, range: TARGET_LITRES, unit: 'L', what: 'target' });
  }
  if (grilleStandOffMm !== null) {
    figures.push(mm('grilleStandOffMm', 'grille stand-off', grilleStandOffMm, { min: 0, max: 300 }));
  }
  return figures;
}

/** Written so that NaN fails it too. */
const within = ({ got, range, unit }: Figure) =>
  got >= range.min && got <= range.max && (unit !== PIECES || Number.isInteger(got));

function whyOutside({ got, range, unit, what }: Figure): string {
  if (!Number.isFinite(got)) return `${what} is not a number`;
  if (unit === PIECES && !Number.isInteger(got)) return `${what} is not a whole number`;
  const byHow = got < range.min ? range.min - got : got - range.max;
  return `${what} is ${Number(byHow.toPrecision(4))} ${unit} too ${got < range.min ? 'small' : 'large'}`;
}

function portFigures({ ports }: BoxDesign): Figure[] {
  return ports.flatMap((port, index) => {
    const of = (name: string, what: string, got: number, range: Range) =>
      mm(`ports[${index}].${name}`, what, got, range);
    const length = of('lengthMm', 'port length', port.lengthMm, PORT_LENGTH_MM);
    if (port.kind === 'slot') {
      const width = port.widthMm === null ? [] : [of('widthMm', 'slot width', port.widthMm, OUTSIDE_SLOT_MM)];
      return [of('heightMm', 'slot height', port.heightMm, SLOT_MM), ...width, length];
    }
    return [
      of('insideDiaMm', 'pipe', port.insideDiaMm, TUBE_MM),
      of('wallMm', 'pipe wall', port.wallMm, { min: 0.5, max: 30 }),
      of('outerFlareMm', 'outer flare', port.outerFlareMm, { min: 0, max: 150 }),
      of('innerFlareMm', 'inner flare', port.innerFlareMm, { min: 0, max: 150 }),
      amountKg(`ports[${index}].massKg`, port.massKg),
      length,
    ];
  });
}

const OUTSIDE_SLOT_MM = { min: SLOT_MM.min, max: OUTSIDE_MM.max };
const amountKg = (field: string, got: number): Figure => ({
  field,
  what: 'mass',
  got,
  range: { min: 0, max: 100 },
  unit: 'kg',
});

/** The first figure that no shop could mean, or null. */
export function refuseFigures(design: BoxDesign): Refusal | null {
  const wrong = [
    ...shapeFigures(design),
    ...stockFigures('carcass', design.stock.carcass),
    ...stockFigures('baffle', design.stock.baffle),
    ...stockFigures('brace', design.stock.brace),
    ...finishFigures(design),
    ...driverFigures(design.drivers),
    ...terminalFigures(design.terminalCup),
    ...placeFigures(design),
    ...bracingFigures(design),
    ...insideFigures(design),
    ...goalFigures(design),
    ...portFigures(design),
  ].find((figure) => !within(figure));
  if (wrong === undefined) return null;
  const { field, got, range, unit } = wrong;
  return refuse(field, {
    allowed: `${range.min} to ${range.max} ${unit}`,
    got,
    why: whyOutside(wrong),
  });
}
