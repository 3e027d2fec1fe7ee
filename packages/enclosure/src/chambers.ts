// Two chambers, each with its own account: what stands in which, and what air is left there.
import type { Chamber, Deduction, Vector } from '@gusset/contracts/enclosure';
import type { BoxPlan } from './box-plan.ts';
import { airOf, type ChamberPlace, chamberAirMm3, chamberAt, type DividerLayout } from './divider.ts';
import { terminalBodyMm } from './terminal-place.ts';
import { along } from './vector.ts';

const MM3_PER_LITRE = 1e6;
const PLACES = ['near', 'far'] as const;

/** A point just behind the wood that a driver sits in, on its axis. */
function behindDriver({ drivers, mount }: BoxPlan, seatMm: Vector): Vector {
  const depthMm = mount.baffleStock.thicknessMm * (1 + mount.doublers.inside + mount.doublers.outside);
  return drivers === null ? seatMm : along(seatMm, drivers.out, -depthMm - 1); // 1 mm: into the air
}

/** The chamber behind the drivers; null in a box of one chamber, without drivers, or with drivers in both. */
export function driversChamber(plan: BoxPlan): ChamberPlace | null {
  const { divider, drivers } = plan;
  if (divider === null || drivers === null) return null;
  const places = new Set(drivers.seats.map(({ seatMm }) => chamberAt(divider, behindDriver(plan, seatMm))));
  const [only] = places;
  return places.size === 1 && only !== undefined ? only : null;
}

/** One deduction's share of a chamber; null where it has none. */
function share(deduction: Deduction, count: number, litres: number): Deduction[] {
  return count === 0 ? [] : [{ ...deduction, count, litres }];
}

type Placed = { readonly at: Vector; readonly litres: number };

/** Where the pieces of a deduction stand; null where they have no place of their own. */
function piecesOf(plan: BoxPlan, deduction: Deduction): readonly Placed[] | null {
  const { drivers, braces, blocks, ports, terminal } = plan;
  const { code, count, litres } = deduction;
  switch (code) {
    case 'driver':
    case 'cutout-air':
      return (drivers?.seats ?? []).map(({ seatMm }) => ({
        at: behindDriver(plan, seatMm),
        litres: litres / count,
      }));
    case 'brace':
      return braces.frames.map(({ board, removed }) => ({
        at: board.blankCentreMm,
        litres: (board.blankMm3 - removed.reduce((sum, { amount }) => sum + amount, 0)) / MM3_PER_LITRE,
      }));
    case 'corner-block':
      return blocks.flatMap(({ bodies }) =>
        bodies.map(({ at, amount }) => ({ at, litres: amount / MM3_PER_LITRE })),
      );
    case 'port': {
      const port = ports.find(
        ({ placed }) => ports.length === 1 || deduction.label === `Port ${placed.number}`,
      );
      const end = port?.placed.centreLineMm.at(-1);
      return port === undefined || end === undefined
        ? null
        : [{ at: end, litres: litres - port.inDoublersLitres }];
    }
    case 'terminal-cup':
      return terminal === null ? null : [{ at: terminalBodyMm(terminal), litres }];
    case 'fitted-part':
    case 'sealant':
    case 'divider':
    case 'inside-doubler':
      return null;
  }
}

function chamberDeductions(plan: BoxPlan, divider: DividerLayout, place: ChamberPlace): Deduction[] {
  const airMm3 = chamberAirMm3(airOf(divider, place));
  const bothMm3 = chamberAirMm3(divider.near) + chamberAirMm3(divider.far);
  return plan.volumes.deductions.flatMap((deduction) => {
    if (deduction.code === 'sealant') return share(deduction, 1, (deduction.litres * airMm3) / bothMm3);
    if (deduction.code === 'fitted-part') return share(deduction, place === 'far' ? 1 : 0, deduction.litres);
    const pieces = piecesOf(plan, deduction) ?? [];
    const own = pieces.filter(({ at }) => chamberAt(divider, at) === place);
    return share(
      deduction,
      own.length,
      own.reduce((sum, { litres }) => sum + litres, 0),
    );
  });
}

/** Near, then far; null in a box of one chamber. Their nets add up to the box's. */
export function boxChambers(plan: BoxPlan): Chamber[] | null {
  const { divider } = plan;
  if (divider === null) return null;
  return PLACES.map((place) => {
    const airLitres = chamberAirMm3(airOf(divider, place)) / MM3_PER_LITRE;
    const deductions = chamberDeductions(plan, divider, place);
    const netLitres = airLitres - deductions.reduce((sum, { litres }) => sum + litres, 0);
    return { place, airLitres, deductions, netLitres };
  });
}
