// Window braces: how many, where, and what they take. One brace ties bottom, front, top and back together; it does
// nothing for the sides, which it runs alongside.
import type { BoxDesign, Bracing } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import type { PanelHole } from '@gusset/contracts/panel';
import { type Refusal, refuse } from '@gusset/units';
import { type Board, boardUpright, girthMm, offBoard } from './board.ts';
import {
  BAY_MIN_MM,
  BRACE_TO_DRIVER_MM,
  type BraceRoom,
  baysMm,
  baysOf,
  clearPlacesMm,
  idealPlacesMm,
  mirrored,
} from './brace-places.ts';
import { type BraceWindow, braceWindows, windowAreaMm2 } from './brace-window.ts';
import type { Carcass } from './carcass.ts';
import type { DriverLayout } from './driver-layout.ts';
import { CLEAR_MIN_MM } from './limits.ts';
import { firstModeHz, type Plate } from './panel-mode.ts';
import { polygonAreaMm2, polygonCentre, polygonExtent } from './plane.ts';
import type { Stretch } from './port-types.ts';
import type { Weighted } from './vector.ts';
import { insetLengthMm } from './wall-ring.ts';

const BRACES_MAX = 6;

export type BraceFrame = {
  readonly board: Board;
  readonly holes: readonly PanelHole[];
  readonly removed: readonly Weighted[];
};

export type BraceLayout = {
  readonly placesMm: readonly number[];
  readonly frames: readonly BraceFrame[];
  readonly wantedFraction: number | null;
  /** Wood kept of each frame as built; 1 without braces. */
  readonly solidFraction: number;
  /** Round the frames at one place. */
  readonly girthMm: number;
  readonly bays: readonly Stretch[];
  readonly baysMm: readonly number[];
  /** Set where a suggestion was asked for and no arrangement reaches the target. */
  readonly outOfRoomHz: number | null;
};

/** Panels should resonate above twice the low-pass corner. */
export function targetModeHz(design: BoxDesign): number {
  return 2 * design.lowPassHz;
}

/** The plate of wall `index`, its doublers laminated to it, and its clear height. */
export function wallPlate(carcass: Carcass, index: number): { readonly plate: Plate; readonly upMm: number } {
  const stock = carcass.stocks[index] ?? carcass.sideStock;
  const layers = index === carcass.baffleIndex ? 1 + carcass.doublers.inside + carcass.doublers.outside : 1;
  return {
    plate: { stock, thicknessMm: layers * stock.thicknessMm },
    upMm: insetLengthMm(carcass.walls, carcass.free, index),
  };
}

/** Lowest mode of the walls that braces divide, in the widest bay. */
function lowestWallModeHz(carcass: Carcass, bays: readonly number[]): number {
  const widestMm = Math.max(...bays);
  return Math.min(
    ...carcass.walls.map((_, index) => {
      const { plate, upMm } = wallPlate(carcass, index);
      return firstModeHz(plate, widestMm, upMm);
    }),
  );
}

/** What braces make room for: narrow ports, and a divider that stands beside them; and the outlines that they have. */
export type BraceSurroundings = {
  readonly frames: readonly FrameOutline[];
  readonly stretches: readonly Stretch[];
  readonly standing: readonly Stretch[];
};

/** One of two where a divider crosses the side view. */
type FrameOutline = { readonly part: 'near' | 'far' | null; readonly outline: readonly PointMm[] };

function braceRoom(
  carcass: Carcass,
  drivers: DriverLayout | null,
  { stretches, standing }: BraceSurroundings,
): BraceRoom {
  const { thicknessMm } = carcass.braceStock;
  const keepOuts = (drivers?.seats ?? []).map(({ position }) => {
    const reachMm = driverReachMm(drivers) + BRACE_TO_DRIVER_MM + thicknessMm / 2;
    return { fromMm: position.zMm - reachMm, toMm: position.zMm + reachMm };
  });
  const ofPorts = stretches.map(({ fromMm, toMm }) => ({
    fromMm: fromMm - thicknessMm / 2,
    toMm: toMm + thicknessMm / 2,
  }));
  const beside = standing.map(({ fromMm, toMm }) => ({
    fromMm: fromMm - thicknessMm / 2 - BAY_MIN_MM,
    toMm: toMm + thicknessMm / 2 + BAY_MIN_MM,
  }));
  return {
    innerWidthMm: carcass.innerWidthMm,
    thicknessMm,
    keepOuts: [...keepOuts, ...ofPorts, ...beside],
    standing,
  };
}

/** Half of what a driver takes across the box behind the baffle. */
export function driverReachMm(drivers: DriverLayout | null): number {
  return drivers === null ? 0 : Math.max(drivers.holes.cutoutDiaMm, drivers.body.magnetDiaMm) / 2;
}

type Places = { readonly placesMm: readonly number[]; readonly outOfRoomHz: number | null };

/** As few braces as reach the target; where none do, the arrangement with the highest mode. */
function suggestedPlaces(carcass: Carcass, room: BraceRoom, targetHz: number): Places {
  let best: Places = { placesMm: [], outOfRoomHz: null };
  let bestHz = Number.NEGATIVE_INFINITY;
  for (let count = 0; count <= BRACES_MAX; count++) {
    const placesMm = clearPlacesMm(count, room);
    if (placesMm === null) continue;
    const modeHz = lowestWallModeHz(carcass, baysMm(placesMm, room));
    if (modeHz >= targetHz) return { placesMm, outOfRoomHz: null };
    if (modeHz > bestHz) {
      bestHz = modeHz;
      best = { placesMm, outOfRoomHz: modeHz };
    }
  }
  return best;
}

function places(design: BoxDesign, carcass: Carcass, room: BraceRoom): Places | Refusal {
  const { bracing } = design;
  if (bracing.kind === 'none') return { placesMm: [], outOfRoomHz: null };
  if (bracing.kind === 'placed') return typedPlaces(bracing.zMm, room);
  const toLeft = bracing.offCentre === 'left';
  const seen = toLeft ? room : mirrored(room);
  const found =
    bracing.kind === 'suggested'
      ? suggestedPlaces(carcass, seen, targetModeHz(design))
      : countedPlaces(bracing.count, seen);
  if ('refusal' in found || toLeft) return found;
  return { ...found, placesMm: found.placesMm.map((zMm) => -zMm).toReversed() };
}

/** Clear of the drivers if there is room, else even, and the checks say which driver is in the way. */
function countedPlaces(count: number, room: BraceRoom): Places | Refusal {
  const ideal = idealPlacesMm(count, room);
  const narrowestMm = Math.min(...baysMm(ideal, room));
  if (narrowestMm < CLEAR_MIN_MM) {
    return refuse('bracing.count', {
      allowed: `braces with at least ${CLEAR_MIN_MM} mm of air between them`,
      got: count,
      why: `the bays between ${count} braces come out ${Number((CLEAR_MIN_MM - narrowestMm).toFixed(2))} mm too narrow`,
    });
  }
  return { placesMm: clearPlacesMm(count, room) ?? ideal, outOfRoomHz: null };
}

function typedPlaces(zMm: readonly number[], room: BraceRoom): Places | Refusal {
  const placesMm = zMm.toSorted((a, b) => a - b);
  const narrow = baysMm(placesMm, room).findIndex((bayMm) => bayMm < CLEAR_MIN_MM);
  if (narrow < 0) return { placesMm, outOfRoomHz: null };
  const bayMm = baysMm(placesMm, room)[narrow] ?? 0;
  const place = placesMm[Math.min(narrow, placesMm.length - 1)] ?? 0;
  return refuse(`bracing.zMm[${zMm.indexOf(place)}]`, {
    allowed: `at least ${CLEAR_MIN_MM} mm of air on both sides of a brace`,
    got: place,
    why: `the bay beside it is ${Number((CLEAR_MIN_MM - bayMm).toFixed(2))} mm too narrow`,
  });
}

function braceFrame(
  carcass: Carcass,
  { part, outline }: FrameOutline,
  windows: readonly BraceWindow[],
  zMm: number,
  index: number,
): BraceFrame {
  const { thicknessMm } = carcass.braceStock;
  const board = boardUpright(
    {
      id: `brace-${index + 1}${part === null ? '' : `-${part}`}`,
      name: `Brace ${index + 1}${part === null ? '' : ` ${part}`}`,
      role: 'brace',
      face: null,
      stock: carcass.braceStock,
    },
    outline,
    { outerZMm: zMm + thicknessMm / 2, looksLeft: true },
    false,
  );
  const { xMinMm, yMinMm } = polygonExtent(outline);
  const holes = windows.map(
    ({ centre, ...size }, window): PanelHole => ({
      shape: 'rectangle',
      purpose: `window ${window + 1}`,
      centreXMm: centre.xMm - xMinMm,
      centreYMm: centre.yMm - yMinMm,
      ...size,
      depthMm: null,
    }),
  );
  const removed = windows.map((window, at) => ({
    amount: windowAreaMm2(window) * thicknessMm,
    at: offBoard(board, { xMm: holes[at]?.centreXMm ?? 0, yMm: holes[at]?.centreYMm ?? 0 }, thicknessMm / 2),
  }));
  return { board, holes, removed };
}

const solidFractionOf = (bracing: Bracing) => (bracing.kind === 'none' ? null : bracing.solidFraction);

export function layOutBraces(
  design: BoxDesign,
  carcass: Carcass,
  drivers: DriverLayout | null,
  surroundings: BraceSurroundings,
): BraceLayout | Refusal {
  const room = braceRoom(carcass, drivers, surroundings);
  const found = places(design, carcass, room);
  if ('refusal' in found) return found;
  const { placesMm, outOfRoomHz } = found;
  const wantedFraction = solidFractionOf(design.bracing);
  const hasWindows = wantedFraction !== null && placesMm.length > 0;
  const outlines = surroundings.frames.map((frame) => ({
    ...frame,
    windows: hasWindows ? braceWindows(frame.outline, wantedFraction) : [],
  }));
  const sum = (parts: readonly number[]) => parts.reduce((total, part) => total + part, 0);
  const cutMm2 = sum(outlines.flatMap(({ windows }) => windows.map(windowAreaMm2)));
  return {
    placesMm,
    frames: placesMm.flatMap((zMm, index) =>
      outlines.map((frame) => braceFrame(carcass, frame, frame.windows, zMm, index)),
    ),
    wantedFraction,
    solidFraction: 1 - cutMm2 / sum(outlines.map(({ outline }) => polygonAreaMm2(outline))),
    girthMm: sum(outlines.map(({ outline }) => girthMm(outline))),
    bays: baysOf(placesMm, room),
    baysMm: baysMm(placesMm, room),
    outOfRoomHz,
  };
}

/** Middle of the clear side view: where loose parts are taken to be. */
export function freeCentre(carcass: Carcass) {
  return polygonCentre(carcass.free);
}
