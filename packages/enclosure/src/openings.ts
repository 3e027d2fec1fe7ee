// Holes through the boards on one face: each layer gets what reaches it, and nothing that runs off it.
import type { BoxFinding, TerminalCup, Vector } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import type { PanelHole } from '@gusset/contracts/panel';
import { type Board, offBoard, onBoard } from './board.ts';
import { deepest } from './deepest.ts';
import type { DriverLayout, Seat } from './driver-layout.ts';
import { isHollow, roomInside } from './plane.ts';
import type { LaidPort } from './port-types.ts';
import { roomInRing } from './simple-polygon.ts';
import type { Weighted } from './vector.ts';

export type HoleOutline =
  | { readonly shape: 'circle'; readonly diameterMm: number }
  | {
      readonly shape: 'rectangle';
      readonly widthMm: number;
      readonly heightMm: number;
      readonly cornerRadiusMm: number;
    };

/** A hole as it is wanted: centre on the box, and how deep below the outermost wood; null = right through. */
export type Opening = {
  readonly kind: 'recess' | 'cut-out' | 'bolt' | 'terminal' | 'port';
  readonly purpose: string;
  /** Openings of one driver share its number: its cut-out and bolts go through the floor of its recess. */
  readonly driver: number | null;
  readonly outline: HoleOutline;
  readonly centreMm: Vector;
  readonly depthMm: number | null;
};

/** Wood that one opening took from one board. */
export type RemovedWood = Weighted & { readonly kind: Opening['kind'] };

/** An opening that could not be cut: it runs off its board, or into the opening named `other`. */
export type Uncut = {
  readonly board: Board;
  readonly purpose: string;
  readonly other: string | null;
  readonly byMm: number;
};

/** What was cut, board by board, and the wood that it took. */
export type Cuts = {
  readonly holes: ReadonlyMap<string, readonly PanelHole[]>;
  readonly removed: ReadonlyMap<string, readonly RemovedWood[]>;
  readonly uncut: readonly Uncut[];
};

export function outlineAreaMm2(outline: HoleOutline): number {
  if (outline.shape === 'circle') return (Math.PI * outline.diameterMm ** 2) / 4;
  const { widthMm, heightMm, cornerRadiusMm } = outline;
  return widthMm * heightMm - (4 - Math.PI) * cornerRadiusMm ** 2;
}

const roomOnFace = (face: readonly PointMm[], point: PointMm) =>
  isHollow(face) ? roomInRing(face, point) : roomInside(face, point);

/** Room between a hole's edge and the edge of a face; negative where it runs off. */
function roomMm(face: readonly PointMm[], centre: PointMm, outline: HoleOutline): number {
  if (outline.shape === 'circle') return roomOnFace(face, centre) - outline.diameterMm / 2;
  const corners = [-1, 1].flatMap((x) =>
    [-1, 1].map((y) => ({
      xMm: centre.xMm + (x * outline.widthMm) / 2,
      yMm: centre.yMm + (y * outline.heightMm) / 2,
    })),
  );
  return Math.min(...corners.map((corner) => roomOnFace(face, corner)));
}

/** Smallest distance from a point to a hole's edge; negative inside. Rounded corners are taken as square. */
function distanceTo(outline: HoleOutline, centre: PointMm, point: PointMm): number {
  const x = Math.abs(point.xMm - centre.xMm);
  const y = Math.abs(point.yMm - centre.yMm);
  if (outline.shape === 'circle') return Math.hypot(x, y) - outline.diameterMm / 2;
  const beyondX = x - outline.widthMm / 2;
  const beyondY = y - outline.heightMm / 2;
  return Math.hypot(Math.max(beyondX, 0), Math.max(beyondY, 0)) + Math.min(Math.max(beyondX, beyondY), 0);
}

type Made = { readonly opening: Opening; readonly centre: PointMm; readonly toMm: number };

/** Wood between two openings; negative where they meet. At most one of them, the terminal, is a rectangle. */
function woodBetween(a: Made, b: Made): number {
  const round = a.opening.outline.shape === 'circle' ? a : b;
  const other = round === a ? b : a;
  const radiusMm = round.opening.outline.shape === 'circle' ? round.opening.outline.diameterMm / 2 : 0;
  return distanceTo(other.opening.outline, other.centre, round.centre) - radiusMm;
}

const isOwnRecess = (earlier: Opening, later: Opening) =>
  earlier.kind === 'recess' && earlier.driver === later.driver;

const DEPTH_HAIR_MM = 1e-9; // rounding of depths that were added up

type BoardCuts = {
  readonly holes: PanelHole[];
  readonly removed: RemovedWood[];
  readonly uncut: Uncut[];
};

/** Openings in one board whose outer face lies `aboveMm` below the outermost wood. */
function cutBoard(board: Board, aboveMm: number, openings: readonly Opening[]): BoardCuts {
  const { thicknessMm } = board.stock;
  const cuts: BoardCuts = { holes: [], removed: [], uncut: [] };
  const made: Made[] = [];
  for (const opening of openings) {
    const toMm = opening.depthMm === null ? thicknessMm : Math.min(thicknessMm, opening.depthMm - aboveMm);
    const recess = made.find((earlier) => isOwnRecess(earlier.opening, opening));
    const fromMm = recess?.toMm ?? 0;
    if (toMm - fromMm < DEPTH_HAIR_MM) continue;
    const cut = { opening, centre: onBoard(board, opening.centreMm), toMm };
    const reason = whyUncut(board, cut, made);
    if (reason !== null) {
      cuts.uncut.push({ board, purpose: opening.purpose, ...reason });
      continue;
    }
    made.push(cut);
    cuts.holes.push(panelHole(cut, thicknessMm));
    cuts.removed.push({
      kind: opening.kind,
      amount: outlineAreaMm2(opening.outline) * (toMm - fromMm),
      at: offBoard(board, cut.centre, (fromMm + toMm) / 2),
    });
  }
  return cuts;
}

function panelHole({ opening, centre, toMm }: Made, thicknessMm: number): PanelHole {
  const depthMm = toMm > thicknessMm - DEPTH_HAIR_MM ? null : toMm;
  const place = { purpose: opening.purpose, centreXMm: centre.xMm, centreYMm: centre.yMm, depthMm };
  return { ...place, ...opening.outline };
}

function whyUncut(board: Board, cut: Made, made: readonly Made[]): Pick<Uncut, 'other' | 'byMm'> | null {
  const faces = [board.outerFace, board.innerFace];
  const room = Math.min(...faces.map((face) => roomMm(face, cut.centre, cut.opening.outline)));
  if (room < 0) return { other: null, byMm: -room };
  const met = made.find(
    (earlier) => !isOwnRecess(earlier.opening, cut.opening) && woodBetween(earlier, cut) < 0,
  );
  return met === undefined ? null : { other: met.opening.purpose, byMm: -woodBetween(met, cut) };
}

/** Cuts the openings into the layers behind one face, outermost first. */
export function cutOpenings(layers: readonly Board[], openings: readonly Opening[]): Cuts {
  const holes = new Map<string, PanelHole[]>();
  const removed = new Map<string, RemovedWood[]>();
  const uncut: Uncut[] = [];
  let aboveMm = 0;
  for (const board of layers) {
    const cuts = cutBoard(board, aboveMm, openings);
    holes.set(board.id, cuts.holes);
    removed.set(board.id, cuts.removed);
    uncut.push(...cuts.uncut);
    aboveMm += board.stock.thicknessMm;
  }
  return { holes, removed, uncut };
}

/** Bolts stand half a step off the vertical, so that none lies on the line to the nearest edge. */
function boltOpenings(layout: DriverLayout, seat: Seat): Opening[] {
  const { body, axis, drivers } = layout;
  if (drivers.fixing === null) return [];
  const { holeDiaMm } = drivers.fixing;
  return Array.from({ length: body.boltCount }, (_, index) => {
    const turnRad = ((index + 0.5) * 2 * Math.PI) / body.boltCount;
    const upMm = (Math.cos(turnRad) * body.boltCircleDiaMm) / 2;
    const acrossMm = (Math.sin(turnRad) * body.boltCircleDiaMm) / 2;
    return {
      kind: 'bolt',
      purpose: `bolt ${index + 1} of driver ${seat.number}`,
      driver: seat.number,
      outline: { shape: 'circle', diameterMm: holeDiaMm },
      centreMm: {
        x: seat.faceMm.x + axis.up.x * upMm,
        y: seat.faceMm.y + axis.up.y * upMm,
        z: seat.faceMm.z + acrossMm,
      },
      depthMm: null,
    };
  });
}

/** Recess first, then the cut-out, then the bolts: the order in which they are routed. */
export function driverOpenings(layout: DriverLayout): Opening[] {
  const { holes } = layout;
  return layout.seats.flatMap((seat) => {
    const cutout: Opening = {
      kind: 'cut-out',
      purpose: `cut-out of driver ${seat.number}`,
      driver: seat.number,
      outline: { shape: 'circle', diameterMm: holes.cutoutDiaMm },
      centreMm: seat.faceMm,
      depthMm: null,
    };
    if (holes.recessDiaMm === null) return [cutout, ...boltOpenings(layout, seat)];
    const recess: Opening = {
      kind: 'recess',
      purpose: `recess of driver ${seat.number}`,
      driver: seat.number,
      outline: { shape: 'circle', diameterMm: holes.recessDiaMm },
      centreMm: seat.faceMm,
      depthMm: holes.recessDepthMm,
    };
    return [recess, cutout, ...boltOpenings(layout, seat)];
  });
}

export function terminalOpening(cup: TerminalCup, centreMm: Vector): Opening {
  return {
    kind: 'terminal',
    purpose: 'terminal cup',
    driver: null,
    outline: cup.cutout,
    centreMm,
    depthMm: null,
  };
}

/** The holes that pipes go through. */
export function tubeOpenings({ placed, tubes }: LaidPort, holeDiaMm: number): Opening[] {
  return tubes.map(({ faceMm }, index) => ({
    kind: 'port',
    purpose: tubes.length === 1 ? `port ${placed.number}` : `port ${placed.number}, pipe ${index + 1}`,
    driver: null,
    outline: { shape: 'circle', diameterMm: holeDiaMm },
    centreMm: faceMm,
    depthMm: null,
  }));
}

/** Of the openings that miss one panel the worst: a row of bolts says no more than its driver. */
export function uncutFindings({ uncut }: Cuts, markOf: (boardId: string) => string): BoxFinding[] {
  const worst = deepest(uncut, ({ board, other }) => `${board.id} ${other === null ? 'edge' : 'opening'}`);
  return worst.map(({ board, purpose, other, byMm }) => {
    const panel = { panelId: board.id, mark: markOf(board.id), purpose, byMm };
    return other === null
      ? { code: 'opening-off-panel', ...panel }
      : { code: 'openings-meet', ...panel, other };
  });
}
