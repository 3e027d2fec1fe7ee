// How the ± of each dimension moves corners and widths. One dimension at a time is moved by its whole ± up and down
// and the section built again, so bends in the construction (an opening that swings about its lip) are counted.
import type { PlusMinusShare, SectionForm } from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import { construct } from './forms/construct.ts';
import type { Construction, DimensionValues } from './forms/construction.ts';
import { boundsOf } from './plane/polygon.ts';
import { dot, lengthOf, minus } from './plane/vector.ts';

export type Spread = {
  /** By corner id, then by dimension key: the ways that corner moves. */
  readonly corners: ReadonlyMap<string, ReadonlyMap<string, readonly PointMm[]>>;
  /** By scalar id: how much each dimension moves it. */
  readonly scalars: ReadonlyMap<string, readonly PlusMinusShare[]>;
};

/** Single figures of a construction that carry a ±, by id. */
export function scalarsOf(construction: Construction): Map<string, number> {
  const scalars = new Map<string, number>([['opening-width', construction.openingWidthMm]]);
  for (const slab of construction.slabs) {
    const { xMinMm, xMaxMm, yMinMm, yMaxMm } = boundsOf(slab.polygon);
    scalars.set(`width:${slab.id}`, slab.widthMm);
    scalars.set(`left:${slab.id}`, xMinMm);
    scalars.set(`right:${slab.id}`, xMaxMm);
    scalars.set(`bottom:${slab.id}`, yMinMm);
    scalars.set(`top:${slab.id}`, yMaxMm);
  }
  for (const [key, valueMm] of construction.derived) scalars.set(`derived:${key}`, valueMm);
  for (const { code, openingMm, cavityMm } of construction.comparisons) {
    scalars.set(`compare:${code}`, openingMm - cavityMm);
  }
  return scalars;
}

/** `steps`: how far each dimension is moved, mm or radians; zero steps leave no trace. */
export function spreadOf(form: SectionForm, values: DimensionValues, steps: DimensionValues): Spread {
  const middle = construct(form, values);
  const middleScalars = scalarsOf(middle);
  const corners = new Map(middle.corners.map(({ id }) => [id, new Map<string, PointMm[]>()]));
  const scalars = new Map([...middleScalars.keys()].map((id) => [id, [] as PlusMinusShare[]]));
  for (const [key, step] of steps) {
    if (step === 0) continue;
    const value = values.get(key) ?? 0;
    const moved = [step, -step].map((by) => construct(form, new Map(values).set(key, value + by)));
    for (const corner of middle.corners) {
      const ways = moved.flatMap((it) => {
        const found = it.corners.find(({ id }) => id === corner.id);
        return found === undefined ? [] : [minus(found.at, corner.at)];
      });
      if (ways.some((way) => lengthOf(way) > 0)) corners.get(corner.id)?.set(key, ways);
    }
    const movedScalars = moved.map(scalarsOf);
    for (const [id, at] of middleScalars) {
      const plusMinusMm = Math.max(...movedScalars.map((it) => Math.abs((it.get(id) ?? at) - at)));
      if (plusMinusMm > 0) scalars.get(id)?.push({ key, plusMinusMm });
    }
  }
  return { corners, scalars };
}

export function worstOf(shares: readonly PlusMinusShare[]): number {
  return shares.reduce((sum, share) => sum + share.plusMinusMm, 0);
}

export function likelyOf(shares: readonly PlusMinusShare[]): number {
  return Math.hypot(...shares.map((share) => share.plusMinusMm));
}

export type WallEnd = {
  readonly cornerId: string /** The wall turns inward here and its end sticks out. */;
  readonly juts: boolean;
};

/** Shares of one wall: how far each dimension moves it square to itself; a jutting end counts in every direction. */
export function wallShares(spread: Spread, ends: readonly WallEnd[], normal: PointMm): PlusMinusShare[] {
  const largest = new Map<string, number>();
  for (const { cornerId, juts } of ends) {
    for (const [key, ways] of spread.corners.get(cornerId) ?? []) {
      const byMm = Math.max(...ways.map((way) => (juts ? lengthOf(way) : Math.abs(dot(way, normal)))));
      largest.set(key, Math.max(largest.get(key) ?? 0, byMm));
    }
  }
  return [...largest]
    .map(([key, plusMinusMm]) => ({ key, plusMinusMm }))
    .filter((share) => share.plusMinusMm > SHARE_FLOOR_MM)
    .sort((a, b) => b.plusMinusMm - a.plusMinusMm || (a.key < b.key ? -1 : 1));
}

/** Less than this is rounding of the construction, not a reading's doing, mm. */
const SHARE_FLOOR_MM = 1e-9;
