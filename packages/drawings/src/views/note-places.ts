// Finds a place for a leader's words where they stand on nothing: tries directions and lengths, takes the quietest.
import { LEADER_SHELF_PT, LEADER_WORDS_GAP_PT } from '../scene/annotations.ts';
import { cross, distance, type Extent, polar, type Spot, subtract } from '../scene/spot.ts';
import { textWidthPt } from '../text/text-width.ts';

export type NoteRequest = {
  readonly target: Spot;
  /** Where the words would best go, radians clockwise from the right. */
  readonly towardsRad: number;
  readonly lines: readonly string[];
  readonly sizePt: number;
};

/** Lines already drawn and words already placed; words placed here are added. */
export type Ground = {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly edges: readonly (readonly [Spot, Spot])[];
  readonly taken: Extent[];
};

const LENGTHS_PT = [24, 40, 62, 90, 125];
const TURNS = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6];
const TURN_RAD = Math.PI / 6;
const AIR_PT = 4; // free sheet wanted round the words
// Weights, in points of leader length that one would rather draw than suffer it.
const OUTSIDE_COST = 2000;
const ON_WORDS_COST = 600;
const ON_LINE_COST = 90;
const LEADER_CROSSING_COST = 18;
const TURN_COST = 7;

export function noteElbow(request: NoteRequest, ground: Ground): Spot {
  const { lines, ...rest } = request;
  return noteSetting(rest, [lines], ground).elbow;
}

type Lines = readonly string[];

/** The same words set in several ways (in one line, in three): the way that finds the quietest place, and that place. */
export function noteSetting(
  request: Omit<NoteRequest, 'lines'>,
  [first, ...others]: readonly [Lines, ...Lines[]],
  ground: Ground,
): { readonly lines: Lines; readonly elbow: Spot } {
  let best = quietestPlace({ ...request, lines: first }, ground);
  for (const lines of others) {
    const place = quietestPlace({ ...request, lines }, ground);
    if (place.cost < best.cost) best = place;
  }
  ground.taken.push(best.area);
  return best;
}

function quietestPlace(request: NoteRequest, ground: Ground) {
  const { target, towardsRad, lines } = request;
  let best = { lines, elbow: target, area: wordsArea(request, target), cost: Number.POSITIVE_INFINITY };
  for (const lengthPt of LENGTHS_PT) {
    for (const turn of TURNS) {
      const elbow = polar(target, towardsRad + turn * TURN_RAD, lengthPt);
      const area = wordsArea(request, elbow);
      const cost = lengthPt + Math.abs(turn) * TURN_COST + noise(target, elbow, area, ground);
      if (cost < best.cost) best = { lines, elbow, area, cost };
    }
  }
  return best;
}

function wordsArea({ target, lines, sizePt }: NoteRequest, elbow: Spot): Extent {
  const widthPt = Math.max(0, ...lines.map((words) => textWidthPt(words, 'mono', sizePt)));
  const heightPt = lines.length * sizePt * 1.25;
  const startPt = LEADER_SHELF_PT + LEADER_WORDS_GAP_PT;
  const rightwards = elbow.x >= target.x;
  const left = rightwards ? elbow.x : elbow.x - startPt - widthPt;
  const area = {
    left,
    right: left + startPt + widthPt,
    top: elbow.y - heightPt / 2,
    bottom: elbow.y + heightPt / 2,
  };
  return {
    left: area.left - AIR_PT,
    right: area.right + AIR_PT,
    top: area.top - AIR_PT,
    bottom: area.bottom + AIR_PT,
  };
}

function noise(target: Spot, elbow: Spot, area: Extent, ground: Ground): number {
  const outside =
    area.left < 0 || area.top < 0 || area.right > ground.widthPt || area.bottom > ground.heightPt
      ? OUTSIDE_COST
      : 0;
  const words = ground.taken.filter((other) => overlaps(other, area)).length * ON_WORDS_COST;
  const lines = ground.edges.filter((edge) => touches(edge, area)).length * ON_LINE_COST;
  const crossings = ground.edges.filter(([from, to]) => segmentsCross(target, elbow, from, to)).length;
  return outside + words + lines + crossings * LEADER_CROSSING_COST;
}

const overlaps = (a: Extent, b: Extent): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

function touches([from, to]: readonly [Spot, Spot], area: Extent): boolean {
  const inside = ({ x, y }: Spot): boolean =>
    x >= area.left && x <= area.right && y >= area.top && y <= area.bottom;
  if (inside(from) || inside(to)) return true;
  const corners: readonly Spot[] = [
    { x: area.left, y: area.top },
    { x: area.right, y: area.top },
    { x: area.right, y: area.bottom },
    { x: area.left, y: area.bottom },
  ];
  return corners.some((corner, index) => segmentsCross(from, to, corner, corners[(index + 1) % 4] ?? corner));
}

/** True when the segments cross in a point inside both. */
export function segmentsCross(a: Spot, b: Spot, c: Spot, d: Spot): boolean {
  if (distance(a, b) === 0 || distance(c, d) === 0) return false;
  const side = (p: Spot, q: Spot, r: Spot): number => cross(subtract(q, p), subtract(r, p));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** The sides of some rings, closed. */
export const ringSides = (rings: readonly (readonly Spot[])[]): readonly (readonly [Spot, Spot])[] =>
  rings.flatMap((ring) =>
    ring.map((from, index) => [from, ring[(index + 1) % ring.length] ?? from] as const),
  );
