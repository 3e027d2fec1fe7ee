// A polygon as its edges: edge i runs from corner i to corner i + 1.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';

export type Segment = { readonly from: PointMm; readonly to: PointMm };

export function edgesOf(polygon: PolygonMm): Segment[] {
  return polygon.map((from, index) => ({ from, to: polygon[(index + 1) % polygon.length] ?? from }));
}
