// Outer edges rounded after assembly, in closed form. A quarter round of radius r leaves the wood f = r - √(r² - u²)
// inside its face, u = r at the edge: ∫ f = r² (1 - π/4), ∫ f² = r³ (5/3 - π/2), ∫ (r - f)² = 2/3 r³ over the radius.
// Round a side the bit follows what is rounded across already, so three edges meet in a ball.
import type { BoxDesign } from '@gusset/contracts/enclosure';
import { type Refusal, refuse } from '@gusset/units';
import type { Carcass } from './carcass.ts';
import { moved, polygonAreaMm2 } from './plane.ts';
import { ringAt } from './ring.ts';
import { inSpace, type Weighted } from './vector.ts';
import { cornerAngleRad, insetLengthMm, insetRing } from './wall-ring.ts';

/** Wood that stays between a round and the inside. Practice of the trade: radius at most thickness less 3 mm. */
const BEHIND_ROUND_MM = 3;

const shown = (mm: number) => Number(mm.toFixed(2));

/** What rounding takes off a corner of the side view, in r²: both tangents less the sector. 0 at a hollow corner. */
function cornerShare(angleRad: number): number {
  return angleRad >= Math.PI ? 0 : 1 / Math.tan(angleRad / 2) - (Math.PI - angleRad) / 2;
}

const tangentShare = (angleRad: number) => (angleRad >= Math.PI ? 0 : 1 / Math.tan(angleRad / 2));

/** The outline's area, every wall moved in by f, is exactly A₀ + a f + b f²: a and b from two insets. */
function shrinking(carcass: Carcass, radiusMm: number): { readonly linear: number; readonly square: number } {
  const outsetMm = carcass.walls.map((_, index) =>
    index === carcass.baffleIndex ? -carcass.doublers.outside * carcass.baffleStock.thicknessMm : 0,
  );
  const areaAt = (insetMm: number) =>
    polygonAreaMm2(
      insetRing(
        carcass.walls,
        outsetMm.map((mm) => mm + insetMm),
      ),
    );
  const [none, half, whole] = [areaAt(0), areaAt(radiusMm / 2), areaAt(radiusMm)];
  const square = (2 * (whole - 2 * half + none)) / radiusMm ** 2;
  return { linear: (whole - none) / radiusMm - square * radiusMm, square };
}

/** Wood that rounding takes, each piece at its edge; empty where nothing is rounded. */
export function roundedOff({ roundOver }: BoxDesign, carcass: Carcass): Weighted[] {
  if (roundOver === null) return [];
  const { radiusMm: r, edges } = roundOver;
  const { walls, wood, widthMm } = carcass;
  const across = edges !== 'sides';
  const sides = edges !== 'across';
  const ballMm3 = (2 / 3) * r ** 3; // per r² of corner, at each end
  const corners = across
    ? walls.map((_, index) => ({
        amount:
          cornerShare(cornerAngleRad(walls, index)) *
          (sides ? r ** 2 * (widthMm - 2 * r) + 2 * ballMm3 : r ** 2 * widthMm),
        at: inSpace(ringAt(wood, index), 0),
      }))
    : [];
  if (!sides) return corners;
  const { linear, square } = shrinking(carcass, r);
  const perSide = -(linear * r ** 2 * (1 - Math.PI / 4) + square * r ** 3 * (5 / 3 - Math.PI / 2));
  const lengths = walls.map((_, index) => insetLengthMm(walls, wood, index));
  const girth = lengths.reduce((sum, lengthMm) => sum + lengthMm, 0);
  const round = walls.flatMap((wall, index) => {
    const lengthMm = ringAt(lengths, index);
    const middle = moved(ringAt(wood, index), wall.along, lengthMm / 2);
    const amount = (perSide * lengthMm) / girth;
    return [-1, 1].map((side) => ({ amount, at: inSpace(middle, (side * widthMm) / 2) }));
  });
  return [...corners, ...round];
}

/** Refused where a round would go through to a joint, or two of them meet. */
export function refuseRoundOver({ roundOver, stock }: BoxDesign, carcass: Carcass): Refusal | null {
  if (roundOver === null) return null;
  const { radiusMm, edges } = roundOver;
  const thinnestMm = Math.min(stock.carcass.thicknessMm, (stock.baffle ?? stock.carcass).thicknessMm);
  const { walls, wood } = carcass;
  const shortest = Math.min(
    ...walls.map((_, index) => {
      const tangents = [index, index + 1].map((corner) =>
        edges === 'sides' ? 1 : Math.max(1, tangentShare(cornerAngleRad(walls, corner))),
      );
      return insetLengthMm(walls, wood, index) / tangents.reduce((sum, share) => sum + share, 0);
    }),
  );
  const mostMm = Math.min(thinnestMm - BEHIND_ROUND_MM, shortest);
  if (radiusMm >= 1 && radiusMm <= mostMm) return null;
  return refuse('roundOver.radiusMm', {
    allowed: `1 to ${shown(mostMm)} mm`,
    got: radiusMm,
    why:
      radiusMm < 1
        ? 'that is no round'
        : `a board of ${thinnestMm} mm, or the shortest wall, has ${shown(radiusMm - mostMm)} mm too little for it`,
  });
}
