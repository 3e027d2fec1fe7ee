// A slot along a side: one upright panel behind the face, over the whole height inside.
import type { SlotPort } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import { boardUpright } from './board.ts';
import type { Carcass } from './carcass.ts';
import { CLEAR_MIN_MM } from './limits.ts';
import { clippedBelow, distanceAlong, moved, polygonAreaMm2, polygonCentre } from './plane.ts';
import type { LaidPort } from './port-types.ts';
import { ringAt } from './ring.ts';
import { innerInsetMm, outerInsetMm } from './slot-channel.ts';
import { inSpace } from './vector.ts';
import { insetLengthMm, insetMeet } from './wall-ring.ts';

const LITRE_MM3 = 1e6;
const shown = (mm: number) => Number(mm.toFixed(2));

/** Depths behind the face's outermost wood at which the walls across from it begin and end. */
function depthsMm(
  carcass: Carcass,
  faceIndex: number,
): { readonly leastMm: number; readonly mostMm: number } {
  const face = ringAt(carcass.walls, faceIndex);
  const outMm = -outerInsetMm(carcass, faceIndex);
  const own = [faceIndex, (faceIndex + 1) % carcass.walls.length];
  const depths = carcass.free
    .filter((_, corner) => !own.includes(corner))
    .map((corner) => outMm - distanceAlong(face.from, corner, face.out));
  return { leastMm: Math.min(...depths), mostMm: Math.max(...depths) };
}

function refuseSideSlot(slot: SlotPort, carcass: Carcass, field: string, covered: boolean): Refusal | null {
  if (slot.widthMm !== null) {
    const why = 'a slot along a side takes the whole height';
    return refuse(`${field}.widthMm`, { allowed: 'left open along a side', got: slot.widthMm, why });
  }
  if (covered || carcass.doublers.outside > 0) {
    const why = covered ? 'the walls run over the sides, or into them' : 'the doubler outside lies over it';
    return refuse(`${field}.along`, { allowed: 'a wall across the box', got: slot.along, why });
  }
  if (carcass.isHollow) {
    const why = 'the side view has a hollow corner';
    return refuse(`${field}.along`, { allowed: 'a wall across the box', got: slot.along, why });
  }
  const takenMm = slot.heightMm + carcass.sideStock.thicknessMm;
  const roomMm = carcass.innerWidthMm - takenMm;
  if (roomMm >= CLEAR_MIN_MM) return null;
  return refuse(`${field}.heightMm`, {
    allowed: `at most ${shown(slot.heightMm + roomMm - CLEAR_MIN_MM)} mm`,
    got: slot.heightMm,
    why: `slot and panel leave ${shown(roomMm)} mm of the width inside`,
  });
}

/** Lays out slot `number` along a side; straight, as long as there is room at most. */
export function layOutSideSlot(
  slot: SlotPort,
  number: number,
  place: { readonly carcass: Carcass; readonly side: 'left' | 'right'; readonly sidesPlain: boolean },
): LaidPort | Refusal {
  const { carcass } = place;
  const field = `ports[${number - 1}]`;
  const refusal = refuseSideSlot(slot, carcass, field, !place.sidesPlain);
  if (refusal !== null) return refusal;
  const faceIndex = carcass.walls.findIndex((wall) => wall.face === slot.face);
  const face = ringAt(carcass.walls, faceIndex);
  const outMm = -outerInsetMm(carcass, faceIndex);
  const woodMm = outMm + innerInsetMm(carcass, faceIndex);
  const { leastMm, mostMm } = depthsMm(carcass, faceIndex);
  const roomMm = mostMm - CLEAR_MIN_MM;
  if (slot.lengthMm < woodMm + CLEAR_MIN_MM) {
    return refuse(`${field}.lengthMm`, {
      allowed: `at least ${shown(woodMm + CLEAR_MIN_MM)} mm: the wood and a panel behind it`,
      got: slot.lengthMm,
      why: `the port is ${shown(woodMm + CLEAR_MIN_MM - slot.lengthMm)} mm shorter than that`,
    });
  }
  const lengthMm = Math.min(slot.lengthMm, roomMm);
  const endPoint = moved(face.from, face.out, outMm - lengthMm);
  const channel = clippedBelow(carcass.free, endPoint, { x: -face.out.x, y: -face.out.y });
  return laidSideSlot({ slot, number, ...place, faceIndex, channel, lengthMm, roomMm, leastMm });
}

type SideChannel = {
  readonly slot: SlotPort;
  readonly number: number;
  readonly carcass: Carcass;
  readonly side: 'left' | 'right';
  readonly faceIndex: number;
  readonly channel: readonly PointMm[];
  readonly lengthMm: number;
  readonly roomMm: number;
  readonly leastMm: number;
};

function laidSideSlot(it: SideChannel): LaidPort {
  const { slot, number, carcass, side, faceIndex, channel, lengthMm } = it;
  const face = ringAt(carcass.walls, faceIndex);
  const sign = side === 'left' ? 1 : -1;
  const half = carcass.innerWidthMm / 2;
  const boardMm = carcass.sideStock.thicknessMm;
  const board = boardUpright(
    {
      id: `port-${number}-panel-1`,
      name: `Port ${number} panel`,
      role: 'port',
      face: null,
      stock: carcass.sideStock,
    },
    channel,
    { outerZMm: sign * (half - slot.heightMm), looksLeft: side === 'left' },
    false,
  );
  const woodMm = ringAt(carcass.stocks, faceIndex).thicknessMm;
  const innermostMm = innerInsetMm(carcass, faceIndex);
  const insideMm2 = polygonAreaMm2(channel) + mouthMm2(it, woodMm, innermostMm);
  const middle = polygonCentre(channel);
  const outerMiddle = moved(middle, face.out, -distanceAlong(face.from, middle, face.out));
  const clearHeightMm = insetLengthMm(carcass.walls, carcass.free, faceIndex);
  const inSlotMm = sign * (half - slot.heightMm / 2);
  return {
    placed: {
      number,
      kind: 'slot',
      face: slot.face,
      count: 1,
      openAreaCm2: (slot.heightMm * clearHeightMm) / 100,
      lengthMm,
      bends: 0,
      airLitres: ((mouthMm2(it, 0, woodMm) + insideMm2) * slot.heightMm) / LITRE_MM3,
      mouthLitres: (mouthMm2(it, 0, woodMm) * slot.heightMm) / LITRE_MM3,
      displacedLitres: (insideMm2 * slot.heightMm + board.blankMm3) / LITRE_MM3,
      centreLineMm: [
        inSpace(outerMiddle, inSlotMm),
        inSpace(moved(outerMiddle, face.out, -lengthMm), inSlotMm),
      ],
      endRoomMm: it.leastMm - lengthMm,
      neededRoomMm: Math.min(slot.heightMm, clearHeightMm),
      section: null,
    },
    askedMm: slot.lengthMm,
    roomMm: it.roomMm,
    boards: [board],
    inDoublersLitres: (mouthMm2(it, woodMm, innermostMm) * slot.heightMm) / LITRE_MM3,
    mouth: null,
    sideMouth: { faceIndex, side, widthMm: slot.heightMm },
    channel: null,
    stretch:
      side === 'left'
        ? { fromMm: half - slot.heightMm - boardMm, toMm: half }
        : { fromMm: -half, toMm: -half + slot.heightMm + boardMm },
    tubes: [],
    coversCorners: carcass.free.flatMap((corner, index) => (channel.includes(corner) ? [index] : [])),
    coversSeams: carcass.walls.map((wall) => ({ face: wall.face, side })),
    taken: channel,
    weights: [],
  };
}

/** The mouth in the side view: the slab of the face between its neighbours' inner lines. */
function mouthMm2({ carcass, faceIndex }: SideChannel, outerMm: number, innerMm: number): number {
  const face = ringAt(carcass.walls, faceIndex);
  const corner = (faceMm: number, neighbour: number) =>
    insetMeet(face, faceMm, ringAt(carcass.walls, neighbour), ringAt(carcass.stocks, neighbour).thicknessMm);
  return Math.abs(
    polygonAreaMm2([
      corner(outerMm, faceIndex - 1),
      corner(outerMm, faceIndex + 1),
      corner(innerMm, faceIndex + 1),
      corner(innerMm, faceIndex - 1),
    ]),
  );
}
