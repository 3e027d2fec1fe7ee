// Braces, terminal, panel resonance and saw angles.
import type { BoxFinding, PanelMode, Vector } from '@gusset/contracts/enclosure';
import type { BoxPlan } from './box-plan.ts';
import { driverReachMm, targetModeHz, wallPlate } from './bracing.ts';
import { driversChamber } from './chambers.ts';
import { chamberAt } from './divider.ts';
import { SAW_TILT_RAD } from './limits.ts';
import type { MarkedBoard } from './panel-list.ts';
import { firstModeHz, type Plate, thicknessForModeMm, widestSpanMm } from './panel-mode.ts';
import { polygonAreaMm2, polygonExtent } from './plane.ts';
import { terminalRadiusMm } from './terminal-place.ts';
import { reach } from './vector.ts';

const TOUCH_MM = 1e-6; // touching is not meeting

function sideMode(plan: BoxPlan, { board, mark }: MarkedBoard): PanelMode {
  const { carcass } = plan;
  const { yMinMm, yMaxMm } = polygonExtent(carcass.free);
  const upMm = yMaxMm - yMinMm;
  const acrossMm = polygonAreaMm2(carcass.free) / upMm; // the rectangle of the same height and area
  const plate = { stock: carcass.sideStock, thicknessMm: carcass.sideStock.thicknessMm };
  return mode(plan, { board, mark }, plate, { acrossMm, upMm });
}

function mode(
  { design }: BoxPlan,
  { board, mark }: Pick<MarkedBoard, 'board' | 'mark'>,
  plate: Plate,
  { acrossMm, upMm }: { readonly acrossMm: number; readonly upMm: number },
): PanelMode {
  const targetHz = targetModeHz(design);
  const modeHz = firstModeHz(plate, acrossMm, upMm);
  const low = modeHz < targetHz;
  return {
    panelId: board.id,
    mark,
    acrossMm,
    upMm,
    thicknessMm: plate.thicknessMm,
    firstModeHz: modeHz,
    targetHz,
    bracesNeeded: null,
    thicknessNeededMm: low ? thicknessForModeMm(plate, modeHz, targetHz) : null,
  };
}

function wallMode(plan: BoxPlan, marked: MarkedBoard, index: number): PanelMode {
  const { carcass, braces } = plan;
  const { plate, upMm } = wallPlate(carcass, index);
  const acrossMm = Math.max(...braces.baysMm);
  const found = mode(plan, marked, plate, { acrossMm, upMm });
  const spanMm = widestSpanMm(plate, upMm, found.targetHz);
  if (found.thicknessNeededMm === null || spanMm === null) return found;
  // n braces make n + 1 bays of (inside − n t) / (n + 1)
  const { thicknessMm } = carcass.braceStock;
  const needed = Math.ceil((carcass.innerWidthMm - spanMm) / (spanMm + thicknessMm));
  return { ...found, bracesNeeded: Math.max(needed, braces.frames.length + 1) };
}

/** First mode of every wall, in its widest bay, and of both sides. */
export function panelModes(plan: BoxPlan, boards: readonly MarkedBoard[]): PanelMode[] {
  const walls = plan.carcass.walls.flatMap(({ face }, index) =>
    boards.filter(({ board }) => board.id === `wall-${face}`).map((marked) => wallMode(plan, marked, index)),
  );
  const sides = boards.filter(({ board }) => board.role === 'side').map((marked) => sideMode(plan, marked));
  return [...walls, ...sides];
}

export function modeFindings(modes: readonly PanelMode[]): BoxFinding[] {
  return modes.flatMap(({ panelId, mark, firstModeHz: hz, targetHz, bracesNeeded, thicknessNeededMm }) =>
    thicknessNeededMm === null
      ? []
      : [
          {
            code: 'panel-mode-low',
            panelId,
            mark,
            firstModeHz: hz,
            targetHz,
            bracesNeeded,
            thicknessNeededMm,
          },
        ],
  );
}

/** Whether a brace stands in the chamber that the drivers are not in. */
function standsElsewhere(plan: BoxPlan, centreMm: Vector): boolean {
  const { divider } = plan;
  const chamber = driversChamber(plan);
  if (divider === null || divider.section === null || chamber === null) return false;
  return chamberAt(divider, centreMm) !== chamber;
}

function braceInDrivers(plan: BoxPlan, { board, mark }: MarkedBoard, zMm: number): BoxFinding[] {
  if (standsElsewhere(plan, board.blankCentreMm)) return [];
  const half = plan.carcass.braceStock.thicknessMm / 2;
  const reachMm = driverReachMm(plan.drivers);
  return (plan.drivers?.seats ?? []).flatMap(({ number, position }): BoxFinding[] => {
    const byMm = reachMm + half - Math.abs(position.zMm - zMm);
    return byMm <= TOUCH_MM
      ? []
      : [{ code: 'brace-meets-driver', panelId: board.id, mark, driver: number, byMm }];
  });
}

function braceInTerminal(
  { terminal, carcass }: BoxPlan,
  { board, mark }: MarkedBoard,
  zMm: number,
): BoxFinding[] {
  if (terminal === null || terminal.halfAcrossMm === 0) return [];
  const half = carcass.braceStock.thicknessMm / 2;
  const byMm = terminal.halfAcrossMm + half - Math.abs(terminal.centreMm.z - zMm);
  return byMm <= TOUCH_MM ? [] : [{ code: 'brace-meets-terminal', panelId: board.id, mark, byMm }];
}

export function braceFindings(plan: BoxPlan, boards: readonly MarkedBoard[]): BoxFinding[] {
  const { braces, design } = plan;
  const frames = boards.filter(({ board }) => board.role === 'brace');
  const meetings = frames.flatMap((marked) => {
    const zMm = marked.board.blankCentreMm.z;
    return [...braceInDrivers(plan, marked, zMm), ...braceInTerminal(plan, marked, zMm)];
  });
  const { wantedFraction, solidFraction, outOfRoomHz } = braces;
  const tight: BoxFinding[] =
    wantedFraction !== null && frames.length > 0 && solidFraction > wantedFraction + FRACTION_HAIR
      ? [{ code: 'brace-window-small', solidFraction, wantedFraction }]
      : [];
  const noRoom: BoxFinding[] =
    outOfRoomHz === null
      ? []
      : [{ code: 'no-room-for-braces', firstModeHz: outOfRoomHz, targetHz: targetModeHz(design) }];
  return [...meetings, ...tight, ...noRoom];
}

const FRACTION_HAIR = 1e-9; // rounding of a share of the frame

/** A terminal cup on the baffle against the drivers beside it. */
export function terminalFindings({ terminal, drivers, carcass, mount }: BoxPlan): BoxFinding[] {
  if (terminal === null || drivers === null || mount !== carcass) return [];
  if (terminal.cup.face !== carcass.baffle.face) return [];
  const cupMm = terminalRadiusMm(terminal.cup);
  return drivers.seats.flatMap(({ number, faceMm }): BoxFinding[] => {
    const up = reach(faceMm, terminal.centreMm, { x: drivers.axis.up.x, y: drivers.axis.up.y, z: 0 });
    const apartMm = Math.hypot(up, terminal.centreMm.z - faceMm.z);
    const byMm = drivers.holes.faceDiaMm / 2 + cupMm - apartMm;
    return byMm <= TOUCH_MM ? [] : [{ code: 'terminal-meets-driver', driver: number, byMm }];
  });
}

export function bevelFindings(boards: readonly MarkedBoard[]): BoxFinding[] {
  return boards.flatMap(({ board, mark }): BoxFinding[] => {
    const bevelRad = Math.max(...board.edges.map((edge) => edge.bevelRad));
    return bevelRad <= SAW_TILT_RAD
      ? []
      : [{ code: 'bevel-steep', panelId: board.id, mark, bevelRad, limitRad: SAW_TILT_RAD }];
  });
}
