// What a form makes of its dimensions: corners, walls, widths and where each letter is drawn. Total: it answers for
// any finite values, so that ± can be carried by moving one value at a time and a half-measured form still draws.
import type {
  CavityFinding,
  Dimension,
  DrawingView,
  SectionForm,
  WallRole,
  WallSurface,
} from '@gusset/contracts/cargo';
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';

/** Values by key: mm for a length, radians for an angle. */
export type DimensionValues = ReadonlyMap<string, number>;

export type PlannedCorner = { readonly id: string; readonly at: PointMm };

/** Wall i starts at corner i. */
export type PlannedWall = {
  readonly id: string;
  readonly name: string;
  readonly role: WallRole;
  readonly surface: WallSurface;
};

export type PlannedSlab = {
  readonly id: string;
  readonly name: string;
  readonly polygon: PolygonMm;
  readonly widthMm: number;
};

export type PlannedAnchor = {
  readonly key: string;
  readonly view: DrawingView;
  readonly from: PointMm;
  readonly to: PointMm;
  readonly vertex: PointMm | null;
};

/** A value that cannot stand beside the others, with the numbers: refused when the cavity is built. */
export type Impossible = {
  readonly key: string;
  readonly allowed: string;
  readonly got: number | null;
  readonly why: string;
};

/** An opening against the space behind it; becomes a finding when the ± do not explain the difference. */
export type Comparison = {
  readonly code: 'opening-taller-than-cavity' | 'opening-wider-than-cavity';
  readonly key: string;
  readonly openingMm: number;
  readonly cavityMm: number;
};

export type Construction = {
  readonly corners: readonly PlannedCorner[];
  readonly walls: readonly PlannedWall[];
  readonly slabs: readonly PlannedSlab[];
  readonly openingWidthMm: number;
  /** How far the shut lid's frame hangs below the opening plane; 0 = not at all. */
  readonly lidFrameMm: number;
  /** What the other dimensions make of each check dimension. */
  readonly derived: ReadonlyMap<string, number>;
  readonly anchors: readonly PlannedAnchor[];
  readonly comparisons: readonly Comparison[];
  readonly impossible: readonly Impossible[];
  readonly findings: readonly CavityFinding[];
};

export type Reader = {
  /** The value, else what the form assumes, else its typical value. */
  readonly of: (key: string) => number;
  /** The value, else what the form assumes, else null. */
  readonly ifKnown: (key: string) => number | null;
};

/** What the form takes for an optional dimension that nobody measured; null = it does without. */
export function assumedValue(dimension: Dimension): number | null {
  if (dimension.unit === 'length') return dimension.assumed?.valueMm ?? null;
  return dimension.assumed?.valueRad ?? null;
}

export function typicalValue(dimension: Dimension): number {
  return dimension.unit === 'length' ? dimension.typicalMm : dimension.typicalRad;
}

export function reader(form: SectionForm, values: DimensionValues): Reader {
  const dimensions = new Map(form.dimensions.map((dimension) => [dimension.key, dimension]));
  const ifKnown = (key: string): number | null => {
    const dimension = dimensions.get(key);
    return values.get(key) ?? (dimension === undefined ? null : assumedValue(dimension));
  };
  const of = (key: string): number => {
    const dimension = dimensions.get(key);
    return ifKnown(key) ?? (dimension === undefined ? 0 : typicalValue(dimension));
  };
  return { of, ifKnown };
}
