// Dimensions and small constructions that several forms share.
import type { Dimension } from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import { lengthOf, minus } from '../plane/vector.ts';
import type { Impossible, PlannedAnchor, Reader } from './construction.ts';
import { angleDimension, lengthDimension } from './dimension.ts';

export function floorDepthDimension(letter: string): Dimension {
  return lengthDimension({
    key: 'floorDepth',
    letter,
    label: 'Floor, seat back to sill',
    hint: 'Tape flat on the floor, from the foot of the seat back to the foot of the sill.',
    highlights: ['floor'],
    rangeMm: [150, 4000],
    typicalMm: 900,
    onSoftTrim: true,
  });
}

export function floorRiseDimension(letter: string): Dimension {
  return lengthDimension({
    key: 'floorRise',
    letter,
    label: 'Floor, rise toward the sill',
    hint: 'Level from the foot of the seat back; how much the floor has risen at the sill. Minus where it falls.',
    need: 'optional',
    tighter: 'larger',
    highlights: ['floor'],
    rangeMm: [-400, 400],
    typicalMm: 0,
    onSoftTrim: true,
    assumed: { valueMm: 0, plusMinusMm: 5, why: 'floor taken as level' },
  });
}

export function sillHeightDimension(letter: string): Dimension {
  return lengthDimension({
    key: 'sillHeight',
    letter,
    label: 'Sill, floor to the top of the lip',
    hint: 'Plumb, seal on. 0 where the floor runs straight out.',
    tighter: 'larger',
    highlights: ['sill'],
    rangeMm: [0, 1200],
    typicalMm: 180,
    onSoftTrim: true,
  });
}

export function sillLeanDimension(letter: string): Dimension {
  return lengthDimension({
    key: 'sillLean',
    letter,
    label: 'Sill, lip beyond its foot',
    hint: 'Plumb from the lip to the floor: how far the lip stands out past the foot of the sill. Minus where it stands in.',
    need: 'optional',
    highlights: ['sill'],
    rangeMm: [-500, 500],
    typicalMm: 0,
    onSoftTrim: true,
    assumed: { valueMm: 0, plusMinusMm: 10, why: 'sill taken as plumb' },
  });
}

export function seatLeanDimension(letter: string): Dimension {
  return angleDimension({
    key: 'seatLean',
    letter,
    label: 'Seat back, lean from plumb',
    hint: 'Angle finder flat on the back of the seat, latched as it will be driven. Plus where the top leans to the opening.',
    tighter: 'larger',
    highlights: ['seat-back'],
    rangeDegrees: [-20, 60],
    typicalDegrees: 20,
    onSoftTrim: true,
  });
}

export function lidFrameDimension(letter: string): Dimension {
  return lengthDimension({
    key: 'lidFrame',
    letter,
    label: 'Lid shut, frame below the opening',
    hint: 'Straightedge from lip to far seal, lid shut on a lump of clay: how far the lid frame hangs inside the line.',
    need: 'optional',
    tighter: 'larger',
    highlights: ['opening'],
    rangeMm: [0, 400],
    typicalMm: 30,
    assumed: { valueMm: 0, plusMinusMm: 10, why: 'shut lid taken flush with the opening plane' },
  });
}

export function diagonalDimension(key: string, letter: string, label: string): Dimension {
  return lengthDimension({
    key,
    letter,
    label,
    hint: 'Straight corner to corner, tape tight. A check: it tests the other dimensions.',
    need: 'check',
    highlights: [],
    rangeMm: [50, 6000],
    typicalMm: 900,
    onSoftTrim: true,
  });
}

/** A level distance along a length that rises: the rise cannot be more than the length. */
export function levelPartMm(slopedMm: number, riseMm: number): number {
  return Math.sqrt(Math.max(0, slopedMm * slopedMm - riseMm * riseMm));
}

export type Base = {
  readonly foot: PointMm;
  readonly floorEnd: PointMm;
  readonly lip: PointMm;
  readonly seatTop: PointMm;
  readonly anchors: readonly PlannedAnchor[];
  readonly impossible: readonly Impossible[];
};

/** Seat foot, end of the floor, sill lip and seat top: what a boot and a hatch have in common. */
export function seatFloorAndSill(read: Reader): Base {
  const foot: PointMm = { xMm: 0, yMm: 0 };
  const depthMm = read.of('floorDepth');
  const riseMm = read.of('floorRise');
  const seatHeightMm = read.of('seatHeight');
  const leanRad = read.of('seatLean');
  const floorEnd = { xMm: levelPartMm(depthMm, riseMm), yMm: riseMm };
  const lip = { xMm: floorEnd.xMm + read.of('sillLean'), yMm: floorEnd.yMm + read.of('sillHeight') };
  const seatTop = { xMm: seatHeightMm * Math.tan(leanRad), yMm: seatHeightMm };
  const impossible: Impossible[] = [];
  if (Math.abs(riseMm) >= depthMm) {
    impossible.push({
      key: 'floorRise',
      allowed: `less than the floor is long (${depthMm} mm)`,
      got: riseMm,
      why: `a floor ${depthMm} mm long cannot rise ${riseMm} mm`,
    });
  }
  const below = (at: PointMm): PointMm => ({ xMm: at.xMm, yMm: floorEnd.yMm });
  const anchors: PlannedAnchor[] = [
    straight('floorDepth', foot, floorEnd),
    straight('floorRise', { xMm: floorEnd.xMm, yMm: 0 }, floorEnd),
    straight('sillHeight', below(lip), lip),
    straight('sillLean', { xMm: floorEnd.xMm, yMm: lip.yMm }, lip),
    straight('seatHeight', { xMm: seatTop.xMm, yMm: 0 }, seatTop),
    { key: 'seatLean', view: 'section', from: { xMm: 0, yMm: seatHeightMm }, to: seatTop, vertex: foot },
  ];
  return { foot, floorEnd, lip, seatTop, anchors, impossible };
}

export function straight(key: string, from: PointMm, to: PointMm): PlannedAnchor {
  return { key, view: 'section', from, to, vertex: null };
}

export function betweenMm(a: PointMm, b: PointMm): number {
  return lengthOf(minus(a, b));
}

/** From the middle of the opening to the lid frame inside it. */
export function frameAnchor(lip: PointMm, edge: PointMm, frameMm: number): [PointMm, PointMm] {
  const spanMm = Math.max(1, betweenMm(lip, edge));
  const middle = { xMm: (lip.xMm + edge.xMm) / 2, yMm: (lip.yMm + edge.yMm) / 2 };
  const inward = { xMm: -(edge.yMm - lip.yMm) / spanMm, yMm: (edge.xMm - lip.xMm) / spanMm };
  return [middle, { xMm: middle.xMm + inward.xMm * frameMm, yMm: middle.yMm + inward.yMm * frameMm }];
}
