// The box as others know it, and its facts in words: what a revision delta compares.
import type { BoxFacts, BoxSheetResult, DriverFact, SheetFact } from '@gusset/contracts/box';
import type { BoxShape } from '@gusset/contracts/enclosure';
import type { KeyFigure } from '../sheet-definition.ts';

const mm = (value: number) => `${Number(value.toFixed(1))} mm`;
const mmOrNone = (value: number | null) => (value === null ? 'not given' : mm(value));

export function boxKeyFigures(result: BoxSheetResult): readonly KeyFigure[] {
  const { box, carcass, baffle, driver, place } = result;
  const tightest = place?.placement.clearances.find((clearance) => !clearance.rests) ?? null;
  const figures: KeyFigure[] = [
    { key: 'shape', label: 'Shape', value: SHAPE_WORDS[result.design.shape.kind] },
    { key: 'width', label: 'Outside width', value: mm(box.sizes.carcass.widthMm) },
    { key: 'height', label: 'Outside height', value: mm(box.sizes.carcass.heightMm) },
    { key: 'depth', label: 'Outside depth', value: mm(box.sizes.carcass.depthMm) },
  ];
  const { shape } = result.design;
  if (shape.kind === 'wedge' || shape.kind === 'clipped-wedge') {
    figures.push({ key: 'depthTop', label: 'Depth at the top', value: mm(shape.depthTopMm) });
  }
  if (shape.kind === 'clipped-wedge') {
    figures.push({ key: 'kneeHeight', label: 'Height of the knee', value: mm(shape.kneeHeightMm) });
  }
  if (shape.kind === 'profile') {
    const corners = shape.walls.map(({ xMm, yMm }) => `${Number(xMm.toFixed(1))}/${Number(yMm.toFixed(1))}`);
    figures.push({ key: 'corners', label: 'Corners of the side view', value: corners.join(', ') });
  }
  figures.push(
    { key: 'carcass', label: 'Board', value: boardWords(carcass) },
    { key: 'baffle', label: 'Baffle', value: boardWords(baffle) },
    {
      key: 'drivers',
      label: 'Drivers',
      value: driver === null ? 'none' : `${driver.count} × ${driver.name}`,
    },
    ...(box.chambers ?? []).map((chamber) => ({
      key: `chamber.${chamber.place}`,
      label: chamber.place === 'near' ? 'Chamber by the divider’s face' : 'Chamber behind the divider',
      value: `${chamber.netLitres.toFixed(2)} L`,
    })),
    { key: 'net', label: 'Net volume', value: `${box.volumes.netLitres.toFixed(2)} L` },
    { key: 'braces', label: 'Braces', value: String(box.braces.zMm.length) },
    {
      key: 'panels',
      label: 'Panels',
      value: String(box.panels.reduce((sum, panel) => sum + panel.quantity, 0)),
    },
    { key: 'mass', label: 'Mass with drivers', value: `${box.mass.withDriversKg.toFixed(1)} kg` },
  );
  for (const { partId, name, areaM2 } of result.finishTotals) {
    figures.push({ key: `finish.${partId}`, label: name, value: `${areaM2.toFixed(2)} m²` });
  }
  if (tightest !== null) {
    const value = `${mm(tightest.clearanceMm)} to ${tightest.surface.name}`;
    figures.push({ key: 'tightest', label: 'Tightest', value });
  }
  return figures;
}

const SHAPE_WORDS: Readonly<Record<BoxShape['kind'], string>> = {
  rectangular: 'rectangular',
  wedge: 'wedge',
  'clipped-wedge': 'clipped wedge',
  profile: 'free profile',
};

const boardWords = ({ name, thicknessMm, isMeasured }: BoxSheetResult['carcass']) =>
  `${name}, ${mm(thicknessMm)}${isMeasured ? '' : ' nominal'}`;

export function boxFactFigures(facts: BoxFacts): readonly KeyFigure[] {
  const { clearances } = facts;
  return [
    ...sheetFigures('carcass', 'Board', facts.carcass),
    ...sheetFigures('baffle', 'Baffle board', facts.baffle),
    ...facts.finishes.map(({ id, name, figures }) => ({
      key: `finish.${id}`,
      label: `${name} · thickness`,
      value: mm(figures.thicknessMm),
    })),
    ...driverFigures(facts.driver),
    { key: 'clearance.sides', label: 'Wanted at the sides', value: mm(clearances.sidesMm) },
    { key: 'clearance.back', label: 'Wanted at the seat back', value: mm(clearances.seatBackMm) },
    { key: 'clearance.above', label: 'Wanted above', value: mm(clearances.aboveMm) },
    { key: 'clearance.metal', label: 'Wanted at moving metal', value: mm(clearances.movingMetalMm) },
    { key: 'clearance.opening', label: 'Wanted at the opening', value: mm(clearances.openingMm) },
    {
      key: 'payload',
      label: 'Payload of the vehicle',
      value: facts.payloadKg === null ? 'not read' : `${facts.payloadKg} kg`,
    },
  ];
}

function sheetFigures(key: string, label: string, sheet: SheetFact | null): readonly KeyFigure[] {
  if (sheet === null) return [];
  const { name, figures } = sheet;
  return [
    { key, label, value: name },
    {
      key: `${key}.thickness`,
      label: `${name} · thickness`,
      value:
        figures.measuredThicknessMm === null
          ? `${mm(figures.nominalThicknessMm)} nominal`
          : `${mm(figures.measuredThicknessMm)} measured`,
    },
    { key: `${key}.density`, label: `${name} · density`, value: `${figures.densityKgPerM3} kg/m³` },
    { key: `${key}.material`, label: `${name} · kind`, value: figures.material },
    { key: `${key}.grain`, label: `${name} · grain`, value: figures.grain },
  ];
}

function driverFigures(driver: DriverFact | null): readonly KeyFigure[] {
  if (driver === null) return [];
  const { name, figures } = driver;
  const figure = (key: string, what: string, value: string): KeyFigure => ({
    key: `driver.${key}`,
    label: `${name} · ${what}`,
    value,
  });
  const { displacementLitres } = figures.dataSheet;
  return [
    { key: 'driver', label: 'Driver', value: name },
    figure('overall', 'overall diameter', mm(figures.overallDiaMm)),
    figure('cutout', 'cut-out', mm(figures.cutoutDiaMm)),
    figure('boltCircle', 'bolt circle', mmOrNone(figures.boltCircleDiaMm)),
    figure('bolts', 'bolts', figures.boltCount === null ? 'not given' : String(figures.boltCount)),
    figure('depth', 'mounting depth', mm(figures.mountingDepthMm)),
    figure('magnet', 'magnet', mmOrNone(figures.magnetDiaMm)),
    figure('flange', 'flange thickness', mmOrNone(figures.flangeThicknessMm)),
    figure('vent', 'pole vent', mmOrNone(figures.poleVentDiaMm)),
    figure('xmech', 'mechanical travel', mmOrNone(figures.xmechMm)),
    figure('mass', 'mass', figures.massKg === null ? 'not given' : `${figures.massKg} kg`),
    figure(
      'displacement',
      'displacement',
      displacementLitres === null ? 'not given' : `${displacementLitres} L`,
    ),
  ];
}
