// Width of the space by place, in slabs. Where a place is not measured, the narrower width holds.
import type { Dimension } from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import { boundsOf, rectangle } from '../plane/polygon.ts';
import type { Comparison, PlannedAnchor, PlannedSlab, Reader } from './construction.ts';
import { LETTERS, lengthDimension } from './dimension.ts';

/** Height of a wheel arch, its ends, the width between and above: the same for a boot and a hatch. */
export function archDimensions(firstLetter: number): Dimension[] {
  const letter = (offset: number) => LETTERS.charAt(firstLetter + offset);
  return [
    lengthDimension({
      key: 'openingWidth',
      letter: letter(0),
      label: 'Opening, narrowest width',
      hint: 'Seal to seal at bottom, middle and top; enter the smallest.',
      view: 'plan',
      highlights: ['opening'],
      rangeMm: [100, 2500],
      typicalMm: 980,
    }),
    lengthDimension({
      key: 'archWidth',
      letter: letter(1),
      label: 'Width between the wheel arches',
      hint: 'At the narrowest place, trim on, tape level and square to the car.',
      view: 'plan',
      highlights: ['between-arches'],
      rangeMm: [100, 2500],
      typicalMm: 1000,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'upperWidth',
      letter: letter(2),
      label: 'Width above the wheel arches',
      hint: 'Trim to trim just above the arches. Left out: the width between the arches holds everywhere.',
      need: 'optional',
      view: 'plan',
      highlights: ['above-arches'],
      rangeMm: [100, 2800],
      typicalMm: 1260,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'archHeight',
      letter: letter(3),
      label: 'Height of the wheel arch',
      hint: 'Floor to the top of the arch at its highest.',
      need: 'optional',
      tighter: 'larger',
      highlights: ['between-arches'],
      rangeMm: [10, 1500],
      typicalMm: 300,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'archFrom',
      letter: letter(4),
      label: 'Seat back to the near end of the arch',
      hint: 'Along the floor from the foot of the seat back. Left out: the arch begins at the seat back.',
      need: 'optional',
      highlights: ['between-arches'],
      rangeMm: [0, 4000],
      typicalMm: 120,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'archTo',
      letter: letter(5),
      label: 'Seat back to the far end of the arch',
      hint: 'Along the floor from the foot of the seat back. Left out: the arch runs to the sill.',
      need: 'optional',
      tighter: 'larger',
      highlights: ['between-arches'],
      rangeMm: [0, 4000],
      typicalMm: 640,
      onSoftTrim: true,
    }),
  ];
}

/** Slabs of a space with wheel arches. Without an upper width or an arch height there is one slab. */
export function archSlabs(read: Reader, corners: readonly PointMm[]): PlannedSlab[] {
  const bounds = boundsOf(corners);
  const between = { id: 'between-arches', name: 'between the wheel arches', widthMm: read.of('archWidth') };
  const upperWidthMm = read.ifKnown('upperWidth');
  const archHeightMm = read.ifKnown('archHeight');
  const fromMm = Math.max(read.ifKnown('archFrom') ?? bounds.xMinMm, bounds.xMinMm);
  const toMm = Math.min(read.ifKnown('archTo') ?? bounds.xMaxMm, bounds.xMaxMm);
  const apart =
    upperWidthMm !== null && archHeightMm !== null && toMm > fromMm && archHeightMm > bounds.yMinMm;
  if (!apart) return [{ ...between, polygon: rectangle(bounds) }];
  const arch = { xMinMm: fromMm, xMaxMm: toMm, yMinMm: bounds.yMinMm, yMaxMm: archHeightMm };
  return [
    {
      id: 'above-arches',
      name: 'clear of the wheel arches',
      widthMm: upperWidthMm,
      polygon: rectangle(bounds),
    },
    { ...between, polygon: rectangle(arch) },
  ];
}

/** Where the letters of the width dimensions stand; drawn at typical values until measured. */
export function archAnchors(read: Reader, corners: readonly PointMm[]): PlannedAnchor[] {
  const { xMinMm, xMaxMm } = boundsOf(corners);
  const within = (xMm: number) => Math.min(xMaxMm, Math.max(xMinMm, xMm));
  const fromMm = within(read.of('archFrom'));
  const toMm = within(read.of('archTo'));
  const archHeightMm = read.of('archHeight');
  const level = (key: string, toX: number, yMm: number): PlannedAnchor => ({
    key,
    view: 'section',
    from: { xMm: 0, yMm },
    to: { xMm: toX, yMm },
    vertex: null,
  });
  return [
    acrossAt('openingWidth', xMaxMm, read.of('openingWidth')),
    acrossAt('archWidth', (fromMm + toMm) / 2, read.of('archWidth')),
    acrossAt('upperWidth', (toMm + xMaxMm) / 2, read.of('upperWidth')),
    {
      key: 'archHeight',
      view: 'section',
      from: { xMm: toMm, yMm: 0 },
      to: { xMm: toMm, yMm: archHeightMm },
      vertex: null,
    },
    level('archFrom', fromMm, archHeightMm * 0.6),
    level('archTo', toMm, archHeightMm * 0.8),
  ];
}

/** One width for the whole space. */
export function wholeWidthSlab(key: string, read: Reader, corners: readonly PointMm[]): PlannedSlab {
  return {
    id: 'whole',
    name: 'side to side',
    polygon: rectangle(boundsOf(corners)),
    widthMm: read.of(key),
  };
}

/** An opening wider than the widest place behind it is a reading to take again. */
export function openingWidthComparison(
  key: string,
  openingMm: number,
  slabs: readonly PlannedSlab[],
): Comparison {
  const cavityMm = Math.max(...slabs.map((slab) => slab.widthMm));
  return { code: 'opening-wider-than-cavity', key, openingMm, cavityMm };
}

/** A width in plan: across the car at one depth. */
export function acrossAt(key: string, atMm: number, widthMm: number): PlannedAnchor {
  return {
    key,
    view: 'plan',
    from: { xMm: atMm, yMm: -widthMm / 2 },
    to: { xMm: atMm, yMm: widthMm / 2 },
    vertex: null,
  };
}
