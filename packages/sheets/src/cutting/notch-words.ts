// What is taken out of a piece at its edge, in words: `notch 360 × 42`. Told from the outline's hollow corners.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';

/** One for each notch; empty for a piece without square hollow corners. Width along the edge first, then how deep. */
export function notchWords(outline: PolygonMm, formatLength: (mm: number) => string): readonly string[] {
  const corner = (i: number) => outline[(i + outline.length) % outline.length] ?? { xMm: 0, yMm: 0 };
  const isHollow = (i: number) => turn(corner(i - 1), corner(i), corner(i + 1)) < 0;
  return outline.flatMap((_, i) => {
    if (!isHollow(i)) return [];
    // Two hollow corners side by side are the bottom of one notch: told at the first of them.
    if (isHollow(i - 1)) return [];
    if (!isSquare(corner(i - 1), corner(i), corner(i + 1))) return []; // no notch but a shape of its own
    const into = apart(corner(i - 1), corner(i));
    const along = apart(corner(i), corner(i + 1));
    const isOpenToOneSide = !isHollow(i + 1);
    const [width, depth] = isOpenToOneSide && into > along ? [into, along] : [along, into];
    return [`notch ${formatLength(width)} × ${formatLength(depth)}`];
  });
}

function turn(a: PointMm, b: PointMm, c: PointMm): number {
  return (b.xMm - a.xMm) * (c.yMm - b.yMm) - (b.yMm - a.yMm) * (c.xMm - b.xMm);
}

/** Within half a degree: what a saw or a router table is set to. */
function isSquare(a: PointMm, b: PointMm, c: PointMm): boolean {
  const along = (b.xMm - a.xMm) * (c.xMm - b.xMm) + (b.yMm - a.yMm) * (c.yMm - b.yMm);
  return Math.abs(along) < 0.009 * apart(a, b) * apart(b, c);
}

function apart(a: PointMm, b: PointMm): number {
  return Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
}
