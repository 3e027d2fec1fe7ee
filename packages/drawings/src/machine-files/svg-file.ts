// A panel as SVG at its real size: 1 user unit = 1 mm, one group for each operation.
import { type MachinePart, type MachineShape, machineShapes, type OutlineCorner } from './machine-part.ts';

const LINE_MM = 0.1;
const DIGITS = 4;

/** y points up on the panel and down in SVG: the drawing is mirrored so that it reads as seen from the outer face. */
export function partSvg(part: MachinePart): string {
  const xs = part.outline.map(({ xMm }) => xMm);
  const ys = part.outline.map(({ yMm }) => yMm);
  const [left, top] = [Math.min(...xs), Math.max(...ys)];
  const [width, height] = [Math.max(...xs) - left, top - Math.min(...ys)];
  const place = { left, top };
  const groups = Map.groupBy(machineShapes(part), ({ operation }) => operation);
  const body = [...groups].map(
    ([operation, shapes]) =>
      `  <g id="${operation}">\n${shapes.map((shape) => `    ${element(shape, place)}`).join('\n')}\n  </g>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" fill="none" stroke="black" stroke-width="${LINE_MM}">`,
    `  <title>${escaped(`${part.mark} ${part.name}, ${part.thicknessMm} mm`)}</title>`,
    ...body,
    '</svg>',
    '',
  ].join('\n');
}

type Place = { readonly left: number; readonly top: number };

function element(shape: MachineShape, { left, top }: Place): string {
  if (shape.kind === 'circle') {
    return `<circle cx="${mm(shape.centre.xMm - left)}" cy="${mm(top - shape.centre.yMm)}" r="${mm(shape.radiusMm)}"/>`;
  }
  const at = ({ xMm, yMm }: OutlineCorner) => `${mm(xMm - left)} ${mm(top - yMm)}`;
  const [first] = shape.corners;
  if (first === undefined) return '';
  const steps = shape.corners.map((corner, index) => {
    const next = shape.corners[(index + 1) % shape.corners.length] ?? first;
    if (corner.bulge === 0) return `L ${at(next)}`;
    const radius = arcRadiusMm(corner, next);
    // Counter-clockwise on the panel is counter-clockwise on the mirrored page as well: sweep flag 0.
    return `A ${mm(radius)} ${mm(radius)} 0 0 ${corner.bulge > 0 ? 0 : 1} ${at(next)}`;
  });
  return `<path d="M ${at(first)} ${steps.join(' ')} Z"/>`;
}

/** Chord c and bulge b: radius = c (1 + b²) / (4 b). */
function arcRadiusMm(from: OutlineCorner, to: OutlineCorner): number {
  const chord = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
  return Math.abs((chord * (1 + from.bulge ** 2)) / (4 * from.bulge));
}

function mm(value: number): string {
  return String(Number(value.toFixed(DIGITS)));
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
