// The way of a slot port through the side view: along one wall, and round the corner along the next where it finds no
// room straight. Measured along the middle of the channel, as a tuning counts it.
import type { PointMm } from '@gusset/contracts/geometry';
import { baffleBuildMm, type Carcass } from './carcass.ts';
import { CLEAR_MIN_MM, MITRE_FROM_RAD, SLOT_CORNER_MIN_RAD } from './limits.ts';
import { type Direction, distanceAlong, moved, polygonAreaMm2 } from './plane.ts';
import { ringAt } from './ring.ts';
import { cornerAngleRad, insetMeet, type Wall } from './wall-ring.ts';

/** What fixes a channel before its length does. */
export type ChannelPlace = {
  readonly carcass: Carcass;
  /** Walls by index: where it opens, and the first one it runs along. */
  readonly faceIndex: number;
  readonly alongIndex: number;
  readonly heightMm: number;
  readonly boardMm: number;
};

export type Channel = ChannelPlace & {
  /** Walls that it runs along, in its own order, and which way round the ring that is. */
  readonly legs: readonly number[];
  readonly turn: 1 | -1;
  readonly lengthMm: number;
  /** The longest that finds room. */
  readonly roomMm: number;
  readonly endRoomMm: number;
  /** Square across the last leg, where the channel ends: a wall that looks the way the air goes in. */
  readonly end: Wall;
  readonly centreLine: readonly PointMm[];
};

/** Innermost wood of a wall, doublers counted, from its outer line. */
export function innerInsetMm(carcass: Carcass, index: number): number {
  const wall = ringAt(carcass.walls, index);
  return wall === carcass.baffle ? baffleBuildMm(carcass).inMm : ringAt(carcass.stocks, index).thicknessMm;
}

/** Outermost wood of a wall: 0, or above its line where outside doublers lie on it. */
export function outerInsetMm(carcass: Carcass, index: number): number {
  return ringAt(carcass.walls, index) === carcass.baffle ? -baffleBuildMm(carcass).outMm : 0;
}

/** One stretch of a channel: how long the middle is at its beginning, and between which lengths it may end there. */
type Leg = {
  readonly index: number;
  readonly from: PointMm;
  readonly travel: Direction;
  readonly beforeMm: number;
  readonly leastMm: number;
  /** Where the first of its edges meets the wall across. */
  readonly fullMm: number;
};

const middleMm = ({ carcass, heightMm }: ChannelPlace, index: number) =>
  innerInsetMm(carcass, index) + heightMm / 2;

/** Both edges and the far face of the panel: what has to lie between the walls. */
function edgeInsetsMm({ carcass, heightMm, boardMm }: ChannelPlace, index: number): number[] {
  const nearMm = innerInsetMm(carcass, index);
  return [nearMm, nearMm + heightMm, nearMm + heightMm + boardMm];
}

function leg(place: ChannelPlace, index: number, turn: 1 | -1, before: Leg | null): Leg {
  const { carcass, faceIndex, heightMm, boardMm } = place;
  const wall = ringAt(carcass.walls, index);
  const travel = { x: wall.along.x * turn, y: wall.along.y * turn };
  const behind = before === null ? faceIndex : before.index;
  const behindWall = ringAt(carcass.walls, behind);
  const startInsetMm = before === null ? outerInsetMm(carcass, faceIndex) : middleMm(place, behind);
  const from = insetMeet(wall, middleMm(place, index), behindWall, startInsetMm);
  const woodMm =
    before === null ? innerInsetMm(carcass, faceIndex) : innerInsetMm(carcass, behind) + heightMm + boardMm;
  const ahead = index + turn;
  const reaches = (other: Wall, insetMm: number) =>
    edgeInsetsMm(place, index).map((edgeMm) =>
      distanceAlong(from, insetMeet(wall, edgeMm, other, insetMm), travel),
    );
  const beforeMm =
    before === null
      ? 0
      : before.beforeMm + Math.hypot(from.xMm - before.from.xMm, from.yMm - before.from.yMm);
  return {
    index,
    from,
    travel,
    beforeMm,
    leastMm: beforeMm + Math.max(...reaches(behindWall, woodMm)) + CLEAR_MIN_MM,
    fullMm: beforeMm + Math.min(...reaches(ringAt(carcass.walls, ahead), innerInsetMm(carcass, ahead))),
  };
}

/** Corners that a channel can go round, or begin at: neither pointed nor flat. */
export function turnsAt(carcass: Carcass, index: number, turn: 1 | -1): boolean {
  const angleRad = cornerAngleRad(carcass.walls, turn === 1 ? index + 1 : index);
  return angleRad >= SLOT_CORNER_MIN_RAD && angleRad <= MITRE_FROM_RAD;
}

function legsOf(place: ChannelPlace, turn: 1 | -1, bendsAllowed: number): readonly [Leg, ...Leg[]] {
  const { carcass, faceIndex, alongIndex } = place;
  const count = carcass.walls.length;
  const first = leg(place, alongIndex, turn, null);
  const legs: [Leg, ...Leg[]] = [first];
  let last = first;
  while (legs.length <= bendsAllowed) {
    const next = (last.index + turn + count) % count;
    if (next === faceIndex || !turnsAt(carcass, last.index, turn)) break;
    last = leg(place, next, turn, last);
    if (last.leastMm > last.fullMm - CLEAR_MIN_MM) break; // no room beside the panel that would turn there
    legs.push(last);
  }
  return legs;
}

type Choice = { readonly bends: number; readonly lengthMm: number };

/**
 * As few bends as leave `clearMm` before the inner end; else as few as find room at all; else the nearest length that
 * does.
 */
function choose(legs: readonly Leg[], askedMm: number, clearMm: number): Choice {
  const within = (endMm: number) =>
    legs.findIndex(({ leastMm, fullMm }) => askedMm >= leastMm && askedMm <= fullMm - endMm);
  const bends = [within(clearMm), within(CLEAR_MIN_MM)].find((found) => found >= 0);
  if (bends !== undefined) return { bends, lengthMm: askedMm };
  const nearest = legs.map(({ leastMm, fullMm }, index) => ({
    bends: index,
    lengthMm: Math.min(Math.max(askedMm, leastMm), fullMm - CLEAR_MIN_MM),
  }));
  return nearest.reduce((best, choice) =>
    Math.abs(choice.lengthMm - askedMm) < Math.abs(best.lengthMm - askedMm) ? choice : best,
  );
}

/** The channel for a length that is asked for. It may come out shorter or longer: compare `lengthMm`. */
export function layOutChannel(
  place: ChannelPlace,
  asked: { readonly lengthMm: number; readonly clearMm: number; readonly bendsAllowed: number },
): Channel {
  const { carcass, faceIndex, alongIndex } = place;
  const turn = (faceIndex + 1) % carcass.walls.length === alongIndex ? 1 : -1;
  const legs = legsOf(place, turn, asked.bendsAllowed);
  const { bends, lengthMm } = choose(legs, asked.lengthMm, asked.clearMm);
  const last = legs[bends] ?? legs[0];
  const used = legs.slice(0, bends + 1);
  const endPoint = moved(last.from, last.travel, lengthMm - last.beforeMm);
  return {
    ...place,
    legs: used.map(({ index }) => index),
    turn,
    lengthMm,
    roomMm: Math.max(...legs.map(({ fullMm }) => fullMm)) - CLEAR_MIN_MM,
    endRoomMm: last.fullMm - lengthMm,
    end: {
      face: ringAt(carcass.walls, last.index).face,
      from: endPoint,
      to: endPoint,
      along: { x: -last.travel.y, y: last.travel.x },
      out: last.travel,
      lengthMm: 0,
    },
    centreLine: [...used.map(({ from }) => from), endPoint],
  };
}

/** Shortest channel that there is: through the wood, and far enough on for a panel behind it. */
export function shortestMm(place: ChannelPlace): number {
  const turn = (place.faceIndex + 1) % place.carcass.walls.length === place.alongIndex ? 1 : -1;
  return leg(place, place.alongIndex, turn, null).leastMm;
}

/** From a line of the face, along a line that keeps `offMm` to the walls, to the channel's end. */
export function offWalls(channel: Channel, faceInsetMm: number, offMm: number): PointMm[] {
  const { carcass, legs, faceIndex, end } = channel;
  const insetMm = (index: number) => innerInsetMm(carcass, index) + offMm;
  const walls = legs.map((index) => ({ wall: ringAt(carcass.walls, index), insetMm: insetMm(index) }));
  const stops = [{ wall: ringAt(carcass.walls, faceIndex), insetMm: faceInsetMm }, ...walls];
  const corners = walls.map(({ wall, insetMm: mine }, at) => {
    const behind = ringAt(stops, at);
    return insetMeet(wall, mine, behind.wall, behind.insetMm);
  });
  const last = ringAt(walls, walls.length - 1);
  return [...corners, insetMeet(last.wall, last.insetMm, end, 0)];
}

/** The strip between two distances from the walls, from a line of the face to the end; counter-clockwise. */
export function channelStrip(channel: Channel, faceInsetMm: number, fromMm: number, toMm: number): PointMm[] {
  const strip = [
    ...offWalls(channel, faceInsetMm, fromMm),
    ...offWalls(channel, faceInsetMm, toMm).toReversed(),
  ];
  return polygonAreaMm2(strip) < 0 ? strip.toReversed() : strip;
}

/** The mouth in the side view, between two lines of the face, from `nearMm` off the first wall's outer line. */
export function mouthAreaMm2(
  channel: Channel,
  outerMm: number,
  innerMm: number,
  nearMm = innerInsetMm(channel.carcass, channel.alongIndex),
): number {
  const { carcass, faceIndex, alongIndex, heightMm } = channel;
  const face = ringAt(carcass.walls, faceIndex);
  const wall = ringAt(carcass.walls, alongIndex);
  const farMm = innerInsetMm(carcass, alongIndex) + heightMm;
  const corner = (faceMm: number, alongMm: number) => insetMeet(face, faceMm, wall, alongMm);
  return Math.abs(
    polygonAreaMm2([
      corner(outerMm, nearMm),
      corner(outerMm, farMm),
      corner(innerMm, farMm),
      corner(innerMm, nearMm),
    ]),
  );
}

/**
 * A ring of the inside with the channels and their panels taken out of it: what is left for braces. Null where two
 * channels want the same corner.
 */
export function ringWithout(inner: readonly PointMm[], channels: readonly Channel[]): PointMm[] | null {
  const paths = new Map<number, readonly PointMm[]>();
  for (const channel of channels) {
    const { faceIndex, legs, turn, heightMm, boardMm, carcass } = channel;
    const count = inner.length;
    const faceMm = innerInsetMm(carcass, faceIndex);
    const far = offWalls(channel, faceMm, heightMm + boardMm);
    const foot = offWalls(channel, faceMm, 0).at(-1);
    const path = foot === undefined ? far : [...far, foot];
    const corners = legs.map((index) => (turn === 1 ? index : (index + 1) % count));
    if (corners.some((corner) => paths.has(corner))) return null;
    const first = turn === 1 ? corners[0] : corners.at(-1);
    for (const corner of corners) {
      paths.set(corner, corner === first ? (turn === 1 ? path : path.toReversed()) : []);
    }
  }
  return inner.flatMap((corner, index) => paths.get(index) ?? [corner]);
}
