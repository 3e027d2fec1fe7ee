// For tests: a panel's body as a solid of `manifold-3d`, corner by corner as the contract says.
import type { PanelBody, Vector } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import type { Manifold, ManifoldToplevel, Vec2, Vec3 } from 'manifold-3d';

const flat = (polygon: readonly PointMm[]) => polygon.map(({ xMm, yMm }): Vec2 => [xMm, yMm]);

/** The solid that straight edges between corner i of both faces enclose; both counter-clockwise from outside. */
export function solidOfBody(wasm: ManifoldToplevel, body: PanelBody): Manifold {
  const { placement, thicknessMm, outerFace, innerFace } = body;
  const { originMm, xAxis, yAxis, normal } = placement;
  const at = ({ xMm, yMm }: PointMm, depthMm: number): Vec3 => {
    const key = (axis: keyof Vector) =>
      originMm[axis] + xAxis[axis] * xMm + yAxis[axis] * yMm - normal[axis] * depthMm;
    return [key('x'), key('y'), key('z')];
  };
  const corners = [
    ...outerFace.map((point) => at(point, 0)),
    ...innerFace.map((point) => at(point, thicknessMm)),
  ];
  const count = outerFace.length;
  const cap = (face: readonly PointMm[]) => wasm.triangulate([flat(face)]);
  const skirt = outerFace.flatMap((_, index): Vec3[] => {
    const next = (index + 1) % count;
    return [
      [index, index + count, next + count],
      [index, next + count, next],
    ];
  });
  const triangles = [
    ...cap(outerFace),
    ...cap(innerFace).map(([a, b, c]): Vec3 => [a + count, c + count, b + count]),
    ...skirt,
  ];
  return new wasm.Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: new Float32Array(corners.flat()),
      triVerts: new Uint32Array(triangles.flat()),
    }),
  );
}

/** The side view swept across the width between two places. Manifold sweeps along z, which is our z. */
export function sweptAcross(
  wasm: ManifoldToplevel,
  polygon: readonly PointMm[],
  zFromMm: number,
  zToMm: number,
): Manifold {
  const section = new wasm.CrossSection([flat(polygon)]);
  const solid = section.extrude(zToMm - zFromMm).translate(0, 0, zFromMm);
  section.delete();
  return solid;
}
