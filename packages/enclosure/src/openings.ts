// Holes through the boards on one face: each layer gets what reaches it, and nothing that runs off it.
import type { BoxFinding, TerminalCup, Vector } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import type { PanelHole } from '@gusset/contracts/panel';
import { type Board, offBoard, onBoard } from './board.ts';
import type { DriverLayout, Seat } from './driver-layout.ts';
import { roomInside } from './plane.ts';
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
  readonly kind: 'recess' | 'cut-out' | 'bolt' | 'terminal';
  readonly purpose: string;
  readonly outline: HoleOutline;
  readonly centreMm: Vector;
  readonly depthMm: number | null;
  /** Wood above this depth is already gone: a cut-out under a recess starts at the recess's floor. */
  readonly fromMm: number;
};

/** Wood that one opening took from one board. */
export type RemovedWood = Weighted & { readonly kind: Opening['kind'] };

/** What was cut, board by board, and the wood that it took. */
export type Cuts = {
  readonly holes: ReadonlyMap<string, readonly PanelHole[]>;
  readonly removed: ReadonlyMap<string, readonly RemovedWood[]>;
  /** Openings that run off a board: how far. */
  readonly offPanel: readonly { readonly board: Board; readonly purpose: string; readonly byMm: number }[];
};

export function outlineAreaMm2(outline: HoleOutline): number {
  if (outline.shape === 'circle') return (Math.PI * outline.diameterMm ** 2) / 4;
  const { widthMm, heightMm, cornerRadiusMm } = outline;
  return widthMm * heightMm - (4 - Math.PI) * cornerRadiusMm ** 2;
}

/** Room between a hole's edge and the edge of a face; negative where it runs off. */
function roomMm(face: readonly PointMm[], centre: PointMm, outline: HoleOutline): number {
  if (outline.shape === 'circle') return roomInside(face, centre) - outline.diameterMm / 2;
  const corners = [-1, 1].flatMap((x) =>
    [-1, 1].map((y) => ({
      xMm: centre.xMm + (x * outline.widthMm) / 2,
      yMm: centre.yMm + (y * outline.heightMm) / 2,
    })),
  );
  return Math.min(...corners.map((corner) => roomInside(face, corner)));
}

function panelHole(opening: Opening, centre: PointMm, depthMm: number | null): PanelHole {
  const place = { purpose: opening.purpose, centreXMm: centre.xMm, centreYMm: centre.yMm, depthMm };
  return { ...place, ...opening.outline };
}

const DEPTH_HAIR_MM = 1e-9; // rounding of depths that were added up

type Cut = { readonly hole: PanelHole; readonly removed: RemovedWood };

/** One opening in one board whose outer face lies `aboveMm` below the outermost wood. Null = does not reach it. */
function cutIn(board: Board, aboveMm: number, opening: Opening): Cut | { readonly byMm: number } | null {
  const { thicknessMm } = board.stock;
  const fromMm = Math.max(0, opening.fromMm - aboveMm);
  const toMm = Math.min(thicknessMm, (opening.depthMm ?? Number.MAX_VALUE) - aboveMm);
  if (toMm - fromMm < DEPTH_HAIR_MM) return null;
  const centre = onBoard(board, opening.centreMm);
  const faces = [board.outerFace, board.innerFace];
  const room = Math.min(...faces.map((face) => roomMm(face, centre, opening.outline)));
  if (room < 0) return { byMm: -room };
  const through = toMm > thicknessMm - DEPTH_HAIR_MM;
  return {
    hole: panelHole(opening, centre, through ? null : toMm),
    removed: {
      kind: opening.kind,
      amount: outlineAreaMm2(opening.outline) * (toMm - fromMm),
      at: offBoard(board, centre, (fromMm + toMm) / 2),
    },
  };
}

/** Cuts the openings into the layers behind one face, outermost first. */
export function cutOpenings(layers: readonly Board[], openings: readonly Opening[]): Cuts {
  const holes = new Map<string, PanelHole[]>();
  const removed = new Map<string, RemovedWood[]>();
  const offPanel: { board: Board; purpose: string; byMm: number }[] = [];
  let aboveMm = 0;
  for (const board of layers) {
    for (const opening of openings) {
      const cut = cutIn(board, aboveMm, opening);
      if (cut === null) continue;
      if ('byMm' in cut) {
        offPanel.push({ board, purpose: opening.purpose, byMm: cut.byMm });
      } else {
        holes.set(board.id, [...(holes.get(board.id) ?? []), cut.hole]);
        removed.set(board.id, [...(removed.get(board.id) ?? []), cut.removed]);
      }
    }
    aboveMm += board.stock.thicknessMm;
  }
  return { holes, removed, offPanel };
}

/** Bolts stand half a step off the vertical, so that none lies on the line to the nearest edge. */
function boltOpenings(layout: DriverLayout, seat: Seat): Opening[] {
  const { body, holes, axis, drivers } = layout;
  if (drivers.fixing === null) return [];
  const { holeDiaMm } = drivers.fixing;
  return Array.from({ length: body.boltCount }, (_, index) => {
    const turnRad = ((index + 0.5) * 2 * Math.PI) / body.boltCount;
    const upMm = (Math.cos(turnRad) * body.boltCircleDiaMm) / 2;
    const acrossMm = (Math.sin(turnRad) * body.boltCircleDiaMm) / 2;
    return {
      kind: 'bolt',
      purpose: `bolt ${index + 1} of driver ${seat.number}`,
      outline: { shape: 'circle', diameterMm: holeDiaMm },
      centreMm: {
        x: seat.faceMm.x + axis.up.x * upMm,
        y: seat.faceMm.y + axis.up.y * upMm,
        z: seat.faceMm.z + acrossMm,
      },
      depthMm: null,
      fromMm: holes.recessDepthMm,
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
      outline: { shape: 'circle', diameterMm: holes.cutoutDiaMm },
      centreMm: seat.faceMm,
      depthMm: null,
      fromMm: holes.recessDepthMm,
    };
    if (holes.recessDiaMm === null) return [cutout, ...boltOpenings(layout, seat)];
    const recess: Opening = {
      kind: 'recess',
      purpose: `recess of driver ${seat.number}`,
      outline: { shape: 'circle', diameterMm: holes.recessDiaMm },
      centreMm: seat.faceMm,
      depthMm: holes.recessDepthMm,
      fromMm: 0,
    };
    return [recess, cutout, ...boltOpenings(layout, seat)];
  });
}

export function terminalOpening(cup: TerminalCup, centreMm: Vector): Opening {
  return {
    kind: 'terminal',
    purpose: 'terminal cup',
    outline: cup.cutout,
    centreMm,
    depthMm: null,
    fromMm: 0,
  };
}

export function offPanelFindings(cuts: Cuts, markOf: (boardId: string) => string): BoxFinding[] {
  return cuts.offPanel.map(({ board, purpose, byMm }) => ({
    code: 'opening-off-panel',
    panelId: board.id,
    mark: markOf(board.id),
    purpose,
    byMm,
  }));
}
