// What the box weighs and where it balances. Finish, glue, screws and fibre are not in it.
import type { BoxFinding, BoxMass } from '@gusset/contracts/enclosure';
import type { BoxPlan } from './box-plan.ts';
import { freeCentre } from './bracing.ts';
import type { MarkedBoard } from './panel-list.ts';
import { roundedOff } from './round-over.ts';
import { terminalBodyMm } from './terminal-place.ts';
import { along, inSpace, type Weighted, weightedCentre } from './vector.ts';

/** Where a driver balances, as a share of its mounting depth behind the seat: the magnet is most of it. Estimate. */
const DRIVER_BALANCE_SHARE = 0.6;

/** Above this, two people or a hoist: the shop's rule for a lift into a vehicle, arms stretched. */
export const ONE_PERSON_KG = 20;

const total = (weights: readonly Weighted[]) => weights.reduce((sum, { amount }) => sum + amount, 0);

function partWeights({ design, carcass, terminal, ports }: BoxPlan): Weighted[] {
  const middle = inSpace(freeCentre(carcass), 0); // a part without a place is taken to stand in the middle
  const parts = design.fittedParts.map(({ massKg }) => ({ amount: massKg, at: middle }));
  const cup = terminal === null ? [] : [{ amount: terminal.cup.massKg, at: terminalBodyMm(terminal) }];
  return [...parts, ...cup, ...ports.flatMap(({ weights }) => weights)];
}

function driverWeights({ drivers }: BoxPlan): Weighted[] {
  if (drivers === null) return [];
  const { body, seats, out } = drivers;
  const depthMm = DRIVER_BALANCE_SHARE * body.mountingDepthMm;
  return seats.map(({ seatMm }) => ({ amount: body.massKg ?? 0, at: along(seatMm, out, -depthMm) }));
}

export function boxMass(plan: BoxPlan, boards: readonly MarkedBoard[]): BoxMass {
  const { densityKgM3 } = plan.carcass.sideStock;
  const rounds = roundedOff(plan.design, plan.carcass).map(({ amount, at }) => ({
    amount: (-amount * densityKgM3) / 1e9,
    at,
  }));
  const panels = [...boards.map(({ weight }) => weight), ...rounds];
  const strips = plan.blocks.flatMap(({ bodies }) =>
    bodies.map(({ amount, at }) => ({ amount: (amount * densityKgM3) / 1e9, at })),
  );
  const parts = partWeights(plan);
  const drivers = driverWeights(plan);
  const empty = [...panels, ...strips, ...parts];
  const middle = inSpace(freeCentre(plan.carcass), 0);
  return {
    panelsKg: total(panels),
    cornerBlocksKg: total(strips),
    partsKg: total(parts),
    driversKg: total(drivers),
    emptyKg: total(empty),
    withDriversKg: total(empty) + total(drivers),
    emptyCentreMm: weightedCentre(empty) ?? middle,
    withDriversCentreMm: weightedCentre([...empty, ...drivers]) ?? middle,
  };
}

export function massFindings({ drivers }: BoxPlan, mass: BoxMass): BoxFinding[] {
  const findings: BoxFinding[] = [];
  if (drivers !== null && drivers.body.massKg === null) {
    findings.push({ code: 'driver-mass-missing', count: drivers.drivers.count });
  }
  if (mass.withDriversKg > ONE_PERSON_KG) {
    findings.push({
      code: 'two-person-lift',
      emptyKg: mass.emptyKg,
      withDriversKg: mass.withDriversKg,
      limitKg: ONE_PERSON_KG,
      emptyIsHeavy: mass.emptyKg > ONE_PERSON_KG,
      hoist: mass.emptyKg > 2 * ONE_PERSON_KG,
    });
  }
  return findings;
}
