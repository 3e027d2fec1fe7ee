// From a design to the box: panels, air, weight, joints, checks and drawing lines.
import type { BoxDesign, BoxFinding, BoxResult, PlacedDriver } from '@gusset/contracts/enclosure';
import { isRefusal, type Refusal } from '@gusset/units';
import { boxMass, massFindings } from './box-mass.ts';
import { type BoxPlan, planBox } from './box-plan.ts';
import { boxChambers } from './chambers.ts';
import { dividerFindings } from './divider-checks.ts';
import { baffleFindings } from './driver-checks.ts';
import { placedDriver } from './driver-layout.ts';
import { driverDepth, magnetRoomFindings, sideVentFindings, wallMeetings } from './driver-room.ts';
import { uncutFindings } from './openings.ts';
import { boxFaces, boxPlanView, boxSection, boxSizes, finishAreas } from './outside.ts';
import { type MarkedBoard, markedBoards, toBody, toPanel } from './panel-list.ts';
import { portFindings } from './port-checks.ts';
import { boxJoints } from './seams.ts';
import { bevelFindings, braceFindings, modeFindings, panelModes, terminalFindings } from './wood-checks.ts';

/** Cut-out air is worth a word from this share of the net volume on. */
const CUTOUT_AIR_PERCENT = 0.5;
/** Off the target by more than this is worth a word: a third of what an alignment forgives. */
const TARGET_PERCENT = 1;

function placedDrivers({ mount, drivers }: BoxPlan): PlacedDriver[] {
  if (drivers === null) return [];
  return drivers.seats.map((seat) => {
    const { depthAtMagnetEdgeMm, neededDepthMm } = driverDepth(mount, drivers, seat);
    return placedDriver(drivers, seat, { depthAtMagnetEdgeMm, neededDepthMm });
  });
}

function driverFindings({ mount, drivers, design }: BoxPlan): BoxFinding[] {
  if (drivers === null) return [];
  return [
    ...wallMeetings(mount, drivers),
    ...magnetRoomFindings(mount, drivers),
    ...sideVentFindings(mount, drivers),
    ...baffleFindings(mount, drivers, design.grilleStandOffMm),
  ];
}

function volumeFindings({ volumes, design }: BoxPlan): BoxFinding[] {
  const { netLitres, cutoutAirLitres, targetNetLitres, overTargetLitres } = volumes;
  const findings: BoxFinding[] = [];
  const percentOfNet = (100 * cutoutAirLitres) / netLitres;
  if (!design.countCutoutAir && percentOfNet > CUTOUT_AIR_PERCENT) {
    findings.push({ code: 'cutout-air-left-out', litres: cutoutAirLitres, percentOfNet });
  }
  if (design.lining !== 'none') findings.push({ code: 'lining-not-deducted', lining: design.lining });
  if (targetNetLitres !== null && overTargetLitres !== null) {
    const percent = (100 * overTargetLitres) / targetNetLitres;
    if (Math.abs(percent) > TARGET_PERCENT) {
      findings.push({ code: 'net-off-target', overLitres: overTargetLitres, percent });
    }
  }
  return findings;
}

function openingFindings(plan: BoxPlan, boards: readonly MarkedBoard[]): BoxFinding[] {
  const markOf = (boardId: string) => boards.find(({ board }) => board.id === boardId)?.mark ?? '';
  return uncutFindings(plan.cuts, markOf);
}

/**
 * Builds the box on paper, or refuses with the field that cannot be. What does not fit, or should be looked at, is
 * in `findings`. Pure: the same design gives the same box.
 */
export function buildBox(design: BoxDesign): BoxResult | Refusal {
  const plan = planBox(design);
  if (isRefusal(plan)) return plan;
  const boards = markedBoards(plan);
  const mass = boxMass(plan, boards);
  const modes = panelModes(plan, boards);
  const chambers = boxChambers(plan);
  return {
    sizes: boxSizes(plan),
    volumes: plan.volumes,
    panels: boards.map(toPanel),
    bodies: boards.map(toBody),
    cornerBlocks: plan.blocks.map(({ bodies: _, ...block }) => block),
    drivers: placedDrivers(plan),
    ...(chambers === null ? {} : { chambers }),
    ...(plan.ports.length === 0 ? {} : { ports: plan.ports.map(({ placed }) => placed) }),
    braces: { zMm: [...plan.braces.placesMm], solidFraction: plan.braces.solidFraction },
    modes,
    mass,
    finishAreas: finishAreas(plan),
    joints: boxJoints(plan),
    section: boxSection(plan),
    plan: boxPlanView(plan),
    faces: boxFaces(plan),
    findings: [
      ...driverFindings(plan),
      ...openingFindings(plan, boards),
      ...braceFindings(plan, boards),
      ...terminalFindings(plan),
      ...portFindings(plan, boards),
      ...dividerFindings(plan),
      ...bevelFindings(boards),
      ...volumeFindings(plan),
      ...massFindings(plan, mass),
      ...modeFindings(modes),
    ],
  };
}
