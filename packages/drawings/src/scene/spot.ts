// Places on a drawing: points (1/72 in) from the top left corner, x to the right, y down, as paper and SVG have it.

export type Spot = { readonly x: number; readonly y: number };

export const spot = (x: number, y: number): Spot => ({ x, y });

export const add = (a: Spot, b: Spot): Spot => ({ x: a.x + b.x, y: a.y + b.y });
export const subtract = (a: Spot, b: Spot): Spot => ({ x: a.x - b.x, y: a.y - b.y });
export const times = (a: Spot, factor: number): Spot => ({ x: a.x * factor, y: a.y * factor });
export const dot = (a: Spot, b: Spot): number => a.x * b.x + a.y * b.y;
export const cross = (a: Spot, b: Spot): number => a.x * b.y - a.y * b.x;
export const between = (a: Spot, b: Spot, share: number): Spot => add(a, times(subtract(b, a), share));
export const distance = (a: Spot, b: Spot): number => Math.hypot(b.x - a.x, b.y - a.y);

/** Point that lies `along` the direction `turnRad` (clockwise on paper, 0 = right) from `from`. */
export const polar = (from: Spot, turnRad: number, along: number): Spot =>
  add(from, { x: Math.cos(turnRad) * along, y: Math.sin(turnRad) * along });

/** Unit vector from a to b; to the right when the two coincide. */
export function direction(a: Spot, b: Spot): Spot {
  const length = distance(a, b);
  return length === 0 ? { x: 1, y: 0 } : times(subtract(b, a), 1 / length);
}

/** A quarter turn anticlockwise on paper: the left hand of someone walking along `a`. */
export const leftOf = (a: Spot): Spot => ({ x: a.y, y: -a.x });

export type Extent = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

/** Smallest upright rectangle round some points; null round none. */
export function extentOf(points: readonly Spot[]): Extent | null {
  const [first] = points;
  if (first === undefined) return null;
  let { x: left, y: top } = first;
  let right = left;
  let bottom = top;
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, top, right, bottom };
}

/** Mean of the corners: inside every convex outline, near enough inside the others to say which way is out. */
export function middleOf(points: readonly Spot[]): Spot {
  const sum = points.reduce(add, { x: 0, y: 0 });
  return points.length === 0 ? sum : times(sum, 1 / points.length);
}

/** Twice the signed area; positive when the corners run clockwise on paper (y down). */
export function doubleArea(points: readonly Spot[]): number {
  return points.reduce(
    (sum, point, index) => sum + cross(point, points[(index + 1) % points.length] ?? point),
    0,
  );
}

/** The four corners of an upright rectangle. */
export const rectangle = (left: number, top: number, width: number, height: number): readonly Spot[] => [
  { x: left, y: top },
  { x: left + width, y: top },
  { x: left + width, y: top + height },
  { x: left, y: top + height },
];
