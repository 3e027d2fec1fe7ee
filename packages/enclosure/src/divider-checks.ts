// What stands in the way of a divider: drivers on the baffle, ports, the terminal cup.
import type { BoxFinding, Vector } from '@gusset/contracts/enclosure';
import type { BoxPlan } from './box-plan.ts';
import type { DividerLayout } from './divider.ts';
import { neededRoomMm } from './driver-room.ts';
import { terminalRadiusMm } from './terminal-place.ts';
import { along } from './vector.ts';

const TOUCH_MM = 1e-6; // touching is not meeting

/** How far a body between two depths behind the divider's near face reaches into it, from the side it is mostly on. */
function inDividerMm({ thicknessMm }: DividerLayout, leastMm: number, mostMm: number): number {
  return Math.min(mostMm, thicknessMm - leastMm);
}

/** Depths behind the divider of a round body along an axis. */
function spanOf(divider: DividerLayout, discs: readonly { at: Vector; axis: Vector; radiusMm: number }[]) {
  const depths = discs.flatMap(({ at, axis, radiusMm }) => {
    const middleMm = divider.behindMm(at);
    const alongMm = divider.behindMm(along(at, axis, 1)) - middleMm; // cosine between axis and the divider's normal
    const reachMm = radiusMm * Math.sqrt(Math.max(0, 1 - alongMm ** 2));
    return [middleMm - reachMm, middleMm + reachMm];
  });
  return { leastMm: Math.min(...depths), mostMm: Math.max(...depths) };
}

function driverFindings(plan: BoxPlan, divider: DividerLayout): BoxFinding[] {
  const { drivers, carcass, mount } = plan;
  if (drivers === null || mount !== carcass) return [];
  const { body, out } = drivers;
  const neededMm = neededRoomMm(drivers);
  return drivers.seats.flatMap(({ number: driver, seatMm }): BoxFinding[] => {
    const rear = along(seatMm, out, -body.mountingDepthMm);
    const { leastMm, mostMm } = spanOf(divider, [
      { at: along(seatMm, out, -carcass.baffleStock.thicknessMm), axis: out, radiusMm: body.cutoutDiaMm / 2 },
      { at: rear, axis: out, radiusMm: body.magnetDiaMm / 2 },
    ]);
    const byMm = inDividerMm(divider, leastMm, mostMm);
    if (byMm > TOUCH_MM) return [{ code: 'driver-meets-divider', driver, byMm }];
    const facing = Math.abs(divider.behindMm(along(rear, out, 1)) - divider.behindMm(rear));
    const shortMm = neededMm + byMm;
    return facing < FACING || shortMm <= TOUCH_MM
      ? []
      : [{ code: 'divider-close', driver, roomMm: -byMm, neededMm, byMm: shortMm }];
  });
}

/** Cosine from which on a divider counts as behind a magnet rather than beside it: 60°. */
const FACING = 0.5;

function portFindings({ ports }: BoxPlan, divider: DividerLayout): BoxFinding[] {
  return ports.flatMap(({ placed, taken, stretch, tubes }): BoxFinding[] => {
    const ofTubes = tubes.map(({ faceMm, inward, outerRadiusMm, lengthMm }) => {
      const ends = [faceMm, along(faceMm, inward, lengthMm)];
      const { leastMm, mostMm } = spanOf(
        divider,
        ends.map((at) => ({ at, axis: inward, radiusMm: outerRadiusMm })),
      );
      return inDividerMm(divider, leastMm, mostMm);
    });
    const sides = stretch === null ? null : [stretch.fromMm, stretch.toMm];
    const depths = (taken ?? []).flatMap(({ xMm, yMm }) =>
      (sides ?? WHOLE).map((z) => divider.behindMm({ x: xMm, y: yMm, z })),
    );
    const inSlot = depths.length === 0 ? 0 : inDividerMm(divider, Math.min(...depths), Math.max(...depths));
    const byMm = Math.max(inSlot, ...ofTubes);
    return byMm <= TOUCH_MM ? [] : [{ code: 'port-meets-divider', port: placed.number, byMm }];
  });
}

/** A slot from side to side, as far across as any box is wide. */
const WHOLE = [-1_500, 1_500];

function terminalFindings({ terminal }: BoxPlan, divider: DividerLayout): BoxFinding[] {
  if (terminal === null) return [];
  const { cup, centreMm, out } = terminal;
  const radiusMm = terminalRadiusMm(cup);
  const ends = [centreMm, along(centreMm, out, -cup.insideDepthMm)];
  const { leastMm, mostMm } = spanOf(
    divider,
    ends.map((at) => ({ at, axis: out, radiusMm })),
  );
  const byMm = inDividerMm(divider, leastMm, mostMm);
  return byMm <= TOUCH_MM ? [] : [{ code: 'terminal-meets-divider', byMm }];
}

export function dividerFindings(plan: BoxPlan): BoxFinding[] {
  const { divider } = plan;
  if (divider === null) return [];
  return [
    ...driverFindings(plan, divider),
    ...portFindings(plan, divider),
    ...terminalFindings(plan, divider),
  ];
}
