// Three-cornered strips in the inside seams: leg² / 2 in a right corner, leg² sin(angle) / 2 in any other.
import type { BoxDesign, CornerBlock, WallFace } from '@gusset/contracts/enclosure';
import { type Refusal, refuse } from '@gusset/units';
import type { BraceLayout } from './bracing.ts';
import type { Carcass } from './carcass.ts';
import type { DividerLayout } from './divider.ts';
import { distanceAlong, moved } from './plane.ts';
import type { LaidPort, Stretch } from './port-types.ts';
import { ringAt } from './ring.ts';
import { innerInsetMm } from './slot-channel.ts';
import { inSpace, type Weighted } from './vector.ts';
import { cornerAngleRad, insetLengthMm, insetMeet } from './wall-ring.ts';

export type PlacedBlock = CornerBlock & { readonly bodies: readonly Weighted[] };

const LITRE_MM3 = 1e6;

/** Length from wall to wall less the braces, which are not notched for the strips. */
function acrossBlock(carcass: Carcass, braces: BraceLayout, legMm: number, index: number): PlacedBlock {
  const before = ringAt(carcass.walls, index - 1);
  const after = ringAt(carcass.walls, index);
  const angleRad = cornerAngleRad(carcass.walls, index);
  const sectionMm2 = (legMm ** 2 * Math.sin(angleRad)) / 2;
  const corner = ringAt(carcass.free, index);
  const centre = moved(moved(corner, after.along, legMm / 3), before.along, -legMm / 3);
  const bodies = braces.bays.map(({ fromMm, toMm }) => ({
    amount: sectionMm2 * (toMm - fromMm),
    at: inSpace(centre, (fromMm + toMm) / 2),
  }));
  const lengthMm = braces.baysMm.reduce((sum, bayMm) => sum + bayMm, 0);
  return finished(carcass, {
    between: [before.face, after.face],
    legMm,
    angleRad,
    lengthMm,
    pieces: bodies.length,
    bodies,
  });
}

/** Stretches of a wall's clear inside: one, or one on both sides of a divider that ends on it. */
function stretchesOf(carcass: Carcass, divider: DividerLayout | null, index: number): Stretch[] {
  const wall = ringAt(carcass.walls, index);
  const lengthMm = insetLengthMm(carcass.walls, carcass.free, index);
  const section = divider?.section ?? null;
  if (section === null || !section.ends.includes(index)) return [{ fromMm: 0, toMm: lengthMm }];
  const start = ringAt(carcass.free, index);
  const at = (depthMm: number) =>
    distanceAlong(
      start,
      insetMeet(section.parallel, depthMm, wall, innerInsetMm(carcass, index)),
      wall.along,
    );
  const [a, b] = [at(section.nearMm), at(section.farMm)];
  return [
    { fromMm: 0, toMm: Math.min(a, b) },
    { fromMm: Math.max(a, b), toMm: lengthMm },
  ];
}

/** Along a wall's seam with a side, one leg short at both ends so that the strips of a corner do not meet. */
function sideBlock(
  carcass: Carcass,
  stretches: readonly Stretch[],
  legMm: number,
  index: number,
  side: 'left' | 'right',
): PlacedBlock {
  const wall = ringAt(carcass.walls, index);
  const sign = side === 'left' ? 1 : -1;
  const sectionMm2 = legMm ** 2 / 2;
  const lengths = stretches.map(({ fromMm, toMm }) => toMm - fromMm - 2 * legMm);
  const bodies = stretches.map(({ fromMm, toMm }) => {
    const middle = moved(ringAt(carcass.free, index), wall.along, (fromMm + toMm) / 2);
    const centre = moved(middle, wall.out, -legMm / 3);
    return {
      amount: sectionMm2 * (toMm - fromMm - 2 * legMm),
      at: inSpace(centre, sign * (carcass.innerWidthMm / 2 - legMm / 3)),
    };
  });
  return finished(carcass, {
    between: [wall.face, side],
    legMm,
    angleRad: Math.PI / 2,
    lengthMm: lengths.reduce((sum, lengthMm) => sum + lengthMm, 0),
    pieces: bodies.length,
    bodies,
  });
}

function finished(carcass: Carcass, block: Omit<PlacedBlock, 'litres' | 'massKg'>): PlacedBlock {
  const mm3 = block.bodies.reduce((sum, body) => sum + body.amount, 0);
  return { ...block, litres: mm3 / LITRE_MM3, massKg: (mm3 * carcass.sideStock.densityKgM3) / 1e9 };
}

/** Refused where the strips of two corners would meet, or a brace would stand in one. */
function refuseLeg(legMm: number, roomMm: number, where: string): Refusal | null {
  if (2 * legMm < roomMm) return null;
  return refuse('cornerBlocks.legMm', {
    allowed: `below ${Number((roomMm / 2).toFixed(2))} mm`,
    got: legMm,
    why: `two strips need ${2 * legMm} mm ${where}, which has ${Number(roomMm.toFixed(2))} mm`,
  });
}

export function layOutCornerBlocks(
  { cornerBlocks }: BoxDesign,
  carcass: Carcass,
  braces: BraceLayout,
  { ports, divider }: { readonly ports: readonly LaidPort[]; readonly divider: DividerLayout | null },
): readonly PlacedBlock[] | Refusal {
  if (cornerBlocks === null) return [];
  const { legMm, seams } = cornerBlocks;
  const shortestMm = Math.min(
    ...carcass.walls.flatMap((_, index) =>
      stretchesOf(carcass, divider, index).map(({ fromMm, toMm }) => toMm - fromMm),
    ),
  );
  const refusal =
    refuseLeg(legMm, shortestMm, 'along the shortest wall') ??
    (seams === 'across' ? null : refuseLeg(legMm, Math.min(...braces.baysMm), 'across the narrowest bay'));
  if (refusal !== null) return refusal;
  const corners = new Set(ports.flatMap(({ coversCorners }) => coversCorners));
  const isOpen = (face: WallFace, side: 'left' | 'right') =>
    !ports.some(({ coversSeams }) => coversSeams.some((seam) => seam.face === face && seam.side === side));
  const across =
    seams === 'sides'
      ? []
      : carcass.walls.flatMap((_, index) =>
          corners.has(index) || cornerAngleRad(carcass.walls, index) > Math.PI
            ? [] // covered, or a hollow corner, which has no seam to fill
            : [acrossBlock(carcass, braces, legMm, index)],
        );
  const sides =
    seams === 'across'
      ? []
      : carcass.walls.flatMap(({ face }, index) =>
          (['left', 'right'] as const).flatMap((side) =>
            isOpen(face, side)
              ? [sideBlock(carcass, stretchesOf(carcass, divider, index), legMm, index, side)]
              : [],
          ),
        );
  return [...across, ...sides];
}
