// Where a person finds the figure that an engine refused: the engine's path -> the field of this sheet.
import type { RefusalDetail } from '@gusset/units';

const EXACT: Readonly<Record<string, string>> = {
  shape: 'outside.depth',
  'shape.widthMm': 'outside.width',
  'shape.heightMm': 'outside.height',
  'shape.depthMm': 'outside.depth',
  'shape.depthBottomMm': 'outside.depth',
  'shape.depthTopMm': 'outside.depthTop',
  'shape.kneeHeightMm': 'outside.kneeHeight',
  'baffle.doubler.layers': 'baffle.doubler',
  'baffle.setBackMm': 'baffleSetBack',
  'roundOver.radiusMm': 'roundOver.radius',
  'divider.clearMm': 'divider.clear',
  'cornerBlocks.legMm': 'cornerBlocks.leg',
  'terminalCup.cutout.diameterMm': 'terminalCup.cutout.diameter',
  'terminalCup.cutout.widthMm': 'terminalCup.cutout.width',
  'terminalCup.cutout.heightMm': 'terminalCup.cutout.height',
  'terminalCup.insideDepthMm': 'terminalCup.insideDepth',
  'drivers.fixing.holeDiaMm': 'drivers.fixing.hole',
  'drivers.fixing.flangeDiaMm': 'drivers.fixing.flange',
  cutoutClearanceMm: 'drivers.cutoutClearance',
  grilleStandOffMm: 'drivers.grilleStandOff',
};

/** By the beginning of the path, where the rest of it means nothing to this sheet. */
const BEGINNINGS: readonly (readonly [string, string])[] = [
  ['shape.walls', 'outside.depthTop'],
  ['stock.carcass', 'carcassId'],
  ['stock.baffle', 'baffleId'],
  ['stock.brace', 'carcassId'],
  ['joints.', 'joints'],
  ['finish.', 'finishes'],
  ['drivers.positions', 'drivers.positions'],
  ['drivers.', 'drivers'],
  ['bracing', 'bracing'],
  ['terminalCup.at', 'terminalCup.at'],
  ['ports', 'outside.depth'],
];

/** Ports come from sheet 03; here it is the box that can make room for them. */
const PORT_FIGURES: Readonly<Record<string, string>> = {
  widthMm: 'outside.width',
  acrossMm: 'outside.width',
  heightMm: 'outside.height',
};

const portField = (path: string) =>
  path.startsWith('ports[') ? PORT_FIGURES[path.slice(path.lastIndexOf('.') + 1)] : undefined;

export function atBoxField(refusal: RefusalDetail): RefusalDetail {
  const field =
    EXACT[refusal.field] ??
    portField(refusal.field) ??
    BEGINNINGS.find(([beginning]) => refusal.field.startsWith(beginning))?.[1] ??
    refusal.field;
  return { ...refusal, field };
}
