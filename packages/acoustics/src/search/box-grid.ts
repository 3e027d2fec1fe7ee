// The boxes that a search tries, the same for every driver: steps of volume, of tuning, of how a bandpass is split, and
// of how wide a port is beside the cones.
import type { SearchBrief, SearchKind } from '@gusset/contracts/acoustics';

export type Box = {
  readonly kind: SearchKind;
  /** All chambers together; 0 = a baffle. */
  readonly netLitres: number;
  /** Of the net air, behind the drivers; 1 where there is one chamber. */
  readonly rearShare: number;
  readonly tuningHz: number | null;
  /** Port area over the area of all cones; null = no port. */
  readonly portShare: number | null;
  /** Place in the brief's list; null = none. */
  readonly radiator: number | null;
};

export type BoxGrid = {
  /** From one volume to the next, at most. */
  readonly volumeRatio: number;
  readonly mostVolumes: number;
  readonly ventedTuningsHz: readonly number[];
  readonly bandpassTuningsHz: readonly number[];
  readonly rearShares: readonly number[];
  readonly portShares: readonly number[];
};

/** Steps that a fine adjustment can bridge: a quarter more volume, a sixth of an octave of tuning. */
export const FULL_GRID: BoxGrid = {
  volumeRatio: 1.25,
  mostVolumes: 10,
  ventedTuningsHz: [20, 22.4, 25, 28, 31.5, 35.5, 40, 45, 50],
  bandpassTuningsHz: [35.5, 40, 45, 50, 56, 63, 71, 80],
  rearShares: [0.35, 0.5, 0.65],
  portShares: [0.12, 0.24],
};

/** Even steps over the logarithm, both ends exactly among them. */
export function volumeSteps({ net }: Pick<SearchBrief, 'net'>, grid: BoxGrid): number[] {
  const { leastLitres, mostLitres } = net;
  if (leastLitres === mostLitres) return [leastLitres];
  const span = Math.log(mostLitres / leastLitres);
  const count = Math.min(Math.ceil(span / Math.log(grid.volumeRatio)) + 1, grid.mostVolumes);
  return Array.from({ length: count }, (_, i) =>
    i === count - 1 ? mostLitres : leastLitres * Math.exp((span * i) / (count - 1)),
  );
}

const CLOSED = { rearShare: 1, tuningHz: null, portShare: null, radiator: null } as const;

/** The boxes of one kind in a fixed order. */
export function boxesOf(kind: SearchKind, brief: SearchBrief, grid: BoxGrid): Box[] {
  if (kind === 'infinite-baffle') return [{ ...CLOSED, kind, netLitres: 0 }];
  const closed = volumeSteps(brief, grid).map((netLitres) => ({ ...CLOSED, kind, netLitres }));
  switch (kind) {
    case 'closed':
      return closed;
    case 'vented':
      return tuned(closed, grid.ventedTuningsHz).flatMap((box) => ported(box, grid));
    case 'passive-radiator':
      return tuned(closed, grid.ventedTuningsHz).flatMap((box) =>
        brief.radiators.map((_, radiator) => ({ ...box, radiator })),
      );
    case 'single-tuned-bandpass':
      return tuned(closed, grid.bandpassTuningsHz)
        .flatMap((box) => grid.rearShares.map((rearShare) => ({ ...box, rearShare })))
        .flatMap((box) => ported(box, grid));
  }
}

function tuned(boxes: readonly Box[], tuningsHz: readonly number[]): Box[] {
  return boxes.flatMap((box) => tuningsHz.map((tuningHz) => ({ ...box, tuningHz })));
}

function ported(box: Box, grid: BoxGrid): Box[] {
  return grid.portShares.map((portShare) => ({ ...box, portShare }));
}
