// One panel as a machine cuts it: closed outlines by operation, millimetres, seen from the outer face.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import type { PanelHole } from '@gusset/contracts/panel';

export type MachinePart = {
  readonly mark: string;
  readonly name: string;
  readonly thicknessMm: number;
  readonly outline: PolygonMm;
  readonly holes: readonly PanelHole[];
  /** One entry an outline edge. */
  readonly edges: readonly {
    readonly bevelDeg: number;
    readonly rebate?: { readonly widthMm: number; readonly depthMm: number } | undefined;
  }[];
};

/** A corner of a closed outline; `bulge` as DXF has it: tangent of a quarter of the arc to the next corner. */
export type OutlineCorner = PointMm & { readonly bulge: number };

export type MachineShape =
  | { readonly kind: 'outline'; readonly operation: string; readonly corners: readonly OutlineCorner[] }
  | {
      readonly kind: 'circle';
      readonly operation: string;
      readonly centre: PointMm;
      readonly radiusMm: number;
    };

/** Up to here a hole is drilled. */
const LARGEST_DRILL_MM = 20;
const QUARTER_ARC_BULGE = Math.tan(Math.PI / 8);

/** Operation names: what is cut, and how deep where it is not right through. */
export function operationOf(kind: 'THROUGH' | 'RECESS' | 'DRILL', depthMm: number | null): string {
  return depthMm === null ? kind : `${kind}_${depthMm.toFixed(1).replace('.', '_')}`;
}

/** Everything that is cut into the panel from its outer face, the outline last. */
export function machineShapes(part: Pick<MachinePart, 'outline' | 'holes'>): readonly MachineShape[] {
  return [
    ...part.holes.map(holeShape),
    {
      kind: 'outline',
      operation: 'OUTLINE',
      corners: part.outline.map(({ xMm, yMm }) => ({ xMm, yMm, bulge: 0 })),
    },
  ];
}

function holeShape(hole: PanelHole): MachineShape {
  const centre = { xMm: hole.centreXMm, yMm: hole.centreYMm };
  if (hole.shape === 'circle') {
    const kind = hole.diameterMm <= LARGEST_DRILL_MM ? 'DRILL' : hole.depthMm === null ? 'THROUGH' : 'RECESS';
    return {
      kind: 'circle',
      operation: operationOf(kind, hole.depthMm),
      centre,
      radiusMm: hole.diameterMm / 2,
    };
  }
  return {
    kind: 'outline',
    operation: operationOf(hole.depthMm === null ? 'THROUGH' : 'RECESS', hole.depthMm),
    corners: roundedRectangle(centre, hole.widthMm, hole.heightMm, hole.cornerRadiusMm),
  };
}

/** Counter-clockwise; each round corner a quarter arc. */
function roundedRectangle(
  { xMm, yMm }: PointMm,
  widthMm: number,
  heightMm: number,
  radiusMm: number,
): readonly OutlineCorner[] {
  const [x, y] = [widthMm / 2, heightMm / 2];
  const r = Math.min(radiusMm, x, y);
  const at = (dx: number, dy: number, bulge: number) => ({ xMm: xMm + dx, yMm: yMm + dy, bulge });
  if (r === 0) return [at(-x, -y, 0), at(x, -y, 0), at(x, y, 0), at(-x, y, 0)];
  const round = QUARTER_ARC_BULGE;
  return [
    at(-x + r, -y, 0),
    at(x - r, -y, round),
    at(x, -y + r, 0),
    at(x, y - r, round),
    at(x - r, y, 0),
    at(-x + r, y, round),
    at(-x, y - r, 0),
    at(-x, -y + r, round),
  ];
}

/** The same panel as it lies on a sheet: turned a quarter counter-clockwise within its blank where it is turned. */
export function laidOut(
  shape: MachineShape,
  place: {
    readonly xMm: number;
    readonly yMm: number;
    readonly turned: boolean;
    readonly blankWidthMm: number;
  },
): MachineShape {
  const to = ({ xMm, yMm }: PointMm): PointMm =>
    place.turned
      ? { xMm: place.xMm + place.blankWidthMm - yMm, yMm: place.yMm + xMm }
      : { xMm: place.xMm + xMm, yMm: place.yMm + yMm };
  return shape.kind === 'circle'
    ? { ...shape, centre: to(shape.centre) }
    : { ...shape, corners: shape.corners.map((corner) => ({ ...to(corner), bulge: corner.bulge })) };
}
