// A slot along a wall across the box: panels between the sides, or with cheeks where it is narrower than the inside.
import type { SlotPort } from '@gusset/contracts/enclosure';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type Board, type BoardNaming, boardAcross, boardUpright, type EndStop, wallCut } from './board.ts';
import type { Carcass } from './carcass.ts';
import type { EndJoint } from './corner-joints.ts';
import { CLEAR_MIN_MM } from './limits.ts';
import { polygonAreaMm2 } from './plane.ts';
import type { LaidPort, Stretch } from './port-types.ts';
import { ringAt } from './ring.ts';
import { roomInRing } from './simple-polygon.ts';
import {
  type Channel,
  type ChannelPlace,
  channelStrip,
  innerInsetMm,
  layOutChannel,
  mouthAreaMm2,
  offWalls,
  outerInsetMm,
  shortestMm,
  turnsAt,
} from './slot-channel.ts';
import { inSpace } from './vector.ts';

const LITRE_MM3 = 1e6;
const AT_SIDE_MM = 1e-6; // this near to a side the side is the channel's wall: rounding only

/** Clear width of the channel, and how far its panels reach beyond it. */
type Across = { readonly clear: Stretch; readonly outer: Stretch };

const shown = (mm: number) => Number(mm.toFixed(2));

function acrossOf(slot: SlotPort, carcass: Carcass, boardMm: number, field: string): Across | Refusal {
  const half = carcass.innerWidthMm / 2;
  const widthMm = slot.widthMm ?? carcass.innerWidthMm;
  if (widthMm > carcass.innerWidthMm + AT_SIDE_MM) {
    return refuse(`${field}.widthMm`, {
      allowed: `at most the width inside, ${shown(carcass.innerWidthMm)} mm`,
      got: widthMm,
      why: `the slot is ${shown(widthMm - carcass.innerWidthMm)} mm wider than the inside`,
    });
  }
  const middleMm = slot.acrossMm ?? 0;
  const clear = { fromMm: middleMm - widthMm / 2, toMm: middleMm + widthMm / 2 };
  const roomRight = clear.fromMm + half;
  const roomLeft = half - clear.toMm;
  const beside = Math.min(
    ...[roomRight, roomLeft].map((roomMm) => (Math.abs(roomMm) < AT_SIDE_MM ? boardMm : roomMm)),
  );
  if (beside < boardMm) {
    return refuse(`${field}.acrossMm`, {
      allowed: `against a side, or ${boardMm} mm and more away from it for a panel`,
      got: middleMm,
      why: `beside the slot there are ${shown(beside)} mm, ${shown(boardMm - beside)} mm too little`,
    });
  }
  const outer = {
    fromMm: Math.abs(roomRight) < AT_SIDE_MM ? -half : clear.fromMm - boardMm,
    toMm: Math.abs(roomLeft) < AT_SIDE_MM ? half : clear.toMm + boardMm,
  };
  return { clear, outer };
}

function refusePlace(slot: SlotPort, place: ChannelPlace, field: string): Refusal | null {
  const { carcass, faceIndex, alongIndex, heightMm, boardMm } = place;
  const along = ringAt(carcass.walls, alongIndex);
  const turn = (faceIndex + 1) % carcass.walls.length === alongIndex ? 1 : -1;
  if (!turnsAt(carcass, faceIndex, turn)) {
    const why = `the corner between ${slot.face} and ${slot.along} is too flat or too sharp for it`;
    return refuse(`${field}.along`, { allowed: 'a corner of 45 to 135 degrees', got: slot.along, why });
  }
  if (along === carcass.baffle && carcass.doublers.inside > 0) {
    const why = 'the doubler inside lies where its panels would be glued';
    return refuse(`${field}.along`, { allowed: 'a wall without a doubler inside', got: slot.along, why });
  }
  const least = shortestMm(place);
  const longest = layOutChannel(place, { lengthMm: 0, clearMm: CLEAR_MIN_MM, bendsAllowed: 0 }).roomMm;
  if (longest < least) {
    return refuse(`${field}.heightMm`, {
      allowed: `a channel that leaves room behind its panel of ${boardMm} mm`,
      got: heightMm,
      why: `the box is ${shown(least - longest)} mm too shallow for it`,
    });
  }
  if (slot.lengthMm >= least - AT_SIDE_MM) return null;
  return refuse(`${field}.lengthMm`, {
    allowed: `at least ${shown(least)} mm: the wood and a panel behind it`,
    got: slot.lengthMm,
    why: `the port is ${shown(least - slot.lengthMm)} mm shorter than that`,
  });
}

const naming = (carcass: Carcass, number: number, part: string, name: string): BoardNaming => ({
  id: `port-${number}-${part}`,
  name: `Port ${number} ${name}`,
  role: 'port',
  face: null,
  stock: carcass.sideStock,
});

/** The panel over one leg. Each runs past the one after it, whose end stands on it. */
function legBoard(channel: Channel, number: number, at: number, across: Stretch): Board {
  const { carcass, faceIndex, legs, turn, heightMm, boardMm } = channel;
  const index = ringAt(legs, at);
  const wall = ringAt(carcass.walls, index);
  const nearMm = innerInsetMm(carcass, index) + heightMm;
  const stop = (other: number, insetMm: number): EndStop => ({
    wall: ringAt(carcass.walls, other),
    outerInsetMm: insetMm,
    innerInsetMm: insetMm,
  });
  const isFirst = at === 0;
  const isLast = at === legs.length - 1;
  const behind = isFirst
    ? stop(faceIndex, innerInsetMm(carcass, faceIndex))
    : stop(ringAt(legs, at - 1), innerInsetMm(carcass, ringAt(legs, at - 1)) + heightMm + boardMm);
  const next = isLast ? null : ringAt(legs, at + 1);
  const ahead: EndStop =
    next === null
      ? { wall: channel.end, outerInsetMm: 0, innerInsetMm: 0 }
      : stop(next, innerInsetMm(carcass, next) + heightMm);
  const aheadJoint: EndJoint | null = isLast ? null : 'through';
  const ends =
    turn === 1
      ? ({ start: 'covered', end: aheadJoint, runsOverSides: false } as const)
      : ({ start: aheadJoint, end: 'covered', runsOverSides: false } as const);
  const cut = wallCut(
    wall,
    { outerMm: nearMm, innerMm: nearMm + boardMm },
    turn === 1 ? behind : ahead,
    turn === 1 ? ahead : behind,
  );
  return boardAcross(
    naming(carcass, number, `panel-${at + 1}`, legs.length === 1 ? 'panel' : `panel ${at + 1}`),
    { wall, cut },
    { zMinMm: across.fromMm, zMaxMm: across.toMm },
    ends,
  );
}

/** Upright panels that close the channel where no side does. */
function cheeks(channel: Channel, number: number, { clear, outer }: Across): Board[] {
  const { carcass, faceIndex, heightMm, boardMm } = channel;
  const outline = channelStrip(channel, innerInsetMm(carcass, faceIndex), 0, heightMm);
  const cheek = (part: 'left' | 'right', outerZMm: number) =>
    boardUpright(
      naming(carcass, number, `cheek-${part}`, `${part} cheek`),
      outline,
      { outerZMm, looksLeft: part === 'left' },
      false,
    );
  return [
    ...(outer.toMm > clear.toMm ? [cheek('left', clear.toMm + boardMm)] : []),
    ...(outer.fromMm < clear.fromMm ? [cheek('right', clear.fromMm - boardMm)] : []),
  ].filter((board) => board.blankMm3 > 0);
}

/** Lays out slot `number`, or refuses what it cannot be. One that is too long comes out as long as there is room. */
export function layOutSlot(
  slot: SlotPort,
  number: number,
  { carcass, alongIndex }: { readonly carcass: Carcass; readonly alongIndex: number },
): LaidPort | Refusal {
  const field = `ports[${number - 1}]`;
  const faceIndex = carcass.walls.findIndex((wall) => wall.face === slot.face);
  const boardMm = carcass.sideStock.thicknessMm;
  const place: ChannelPlace = { carcass, faceIndex, alongIndex, heightMm: slot.heightMm, boardMm };
  const refusal = refusePlace(slot, place, field);
  if (refusal !== null) return refusal;
  const across = acrossOf(slot, carcass, boardMm, field);
  if (isRefusal(across)) return across;
  const widthMm = across.clear.toMm - across.clear.fromMm;
  const clearMm = Math.min(slot.heightMm, widthMm);
  const { lengthMm, bendsAllowed } = slot;
  const channel = layOutChannel(place, { lengthMm, clearMm, bendsAllowed });
  const tight = refuseTight(channel, field);
  if (tight !== null) return tight;
  const boards = [
    ...channel.legs.map((_, at) => legBoard(channel, number, at, across.outer)),
    ...cheeks(channel, number, across),
  ];
  return laidSlot(slot, number, channel, across, boards);
}

/** Refused where the far side of the channel's panels would lie in or beyond another wall. */
function refuseTight(channel: Channel, field: string): Refusal | null {
  const { carcass, faceIndex, heightMm, boardMm } = channel;
  const farMm = heightMm + boardMm + CLEAR_MIN_MM;
  const far = offWalls(channel, innerInsetMm(carcass, faceIndex), farMm);
  const shortMm = -Math.min(...far.slice(0, -1).map((corner) => roomInRing(carcass.free, corner)));
  if (shortMm <= AT_SIDE_MM) return null;
  return refuse(`${field}.heightMm`, {
    allowed: `at most ${shown(heightMm - shortMm)} mm with a panel of ${boardMm} mm`,
    got: heightMm,
    why: `channel and panel leave ${shown(shortMm)} mm too little beside them`,
  });
}

function laidSlot(
  slot: SlotPort,
  number: number,
  channel: Channel,
  { clear, outer }: Across,
  boards: readonly Board[],
): LaidPort {
  const { carcass, faceIndex, alongIndex, legs } = channel;
  const widthMm = clear.toMm - clear.fromMm;
  const outermostMm = outerInsetMm(carcass, faceIndex);
  const innermostMm = innerInsetMm(carcass, faceIndex);
  const woodMm = ringAt(carcass.stocks, faceIndex).thicknessMm;
  const section = channelStrip(channel, outermostMm, 0, slot.heightMm);
  const inside = channelStrip(channel, innermostMm, 0, slot.heightMm);
  const boardsMm3 = boards.reduce((sum, { blankMm3 }) => sum + blankMm3, 0);
  // Behind the carcass board the mouth goes through doublers, which take air that the box has bare.
  const behindMm2 = mouthAreaMm2(channel, woodMm, innermostMm) + polygonAreaMm2(inside);
  const isWhole = outer.fromMm === -carcass.innerWidthMm / 2 && outer.toMm === carcass.innerWidthMm / 2;
  return {
    placed: {
      number,
      kind: 'slot',
      face: slot.face,
      count: 1,
      openAreaCm2: (slot.heightMm * widthMm) / 100,
      lengthMm: channel.lengthMm,
      bends: legs.length - 1,
      airLitres: (polygonAreaMm2(section) * widthMm) / LITRE_MM3,
      mouthLitres:
        ((mouthAreaMm2(channel, 0, woodMm) + mouthAreaMm2(channel, outermostMm, 0, 0)) * widthMm) / LITRE_MM3,
      displacedLitres: (behindMm2 * widthMm + boardsMm3) / LITRE_MM3,
      centreLineMm: channel.centreLine.map((point) => inSpace(point, (clear.fromMm + clear.toMm) / 2)),
      endRoomMm: channel.endRoomMm,
      neededRoomMm: Math.min(slot.heightMm, widthMm),
      section,
    },
    askedMm: slot.lengthMm,
    roomMm: channel.roomMm,
    boards,
    inDoublersLitres: (mouthAreaMm2(channel, woodMm, innermostMm) * widthMm) / LITRE_MM3,
    mouth: {
      faceIndex,
      alongIndex,
      insetMm: innerInsetMm(carcass, alongIndex) + slot.heightMm,
      zFromMm: clear.fromMm,
      zToMm: clear.toMm,
    },
    sideMouth: null,
    channel,
    stretch: isWhole && widthMm === carcass.innerWidthMm ? null : outer,
    tubes: [],
    coversCorners: legs.map((index) => (channel.turn === 1 ? index : (index + 1) % carcass.walls.length)),
    coversSeams: [faceIndex, ...legs].flatMap((index) => {
      const { face } = ringAt(carcass.walls, index);
      return [
        { face, side: 'left' as const },
        { face, side: 'right' as const },
      ];
    }),
    taken: channelStrip(channel, innermostMm, 0, slot.heightMm + channel.boardMm),
    weights: [],
  };
}
