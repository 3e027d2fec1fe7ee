// Panels and sheets as DXF (AutoCAD 2007 ASCII), millimetres, a layer for each operation, closed polylines, arcs as arcs.
import { Colors, DxfWriter, LWPolylineFlags, point2d, point3d, Units } from '@tarikjabiri/dxf';
import { laidOut, type MachinePart, type MachineShape, machineShapes } from './machine-part.ts';

const TEXT_MM = 12;
const NOTES = 'NOTES';

/** One panel. What a machine cannot know from the lines stands on the layer NOTES. */
export function partDxf(part: MachinePart): string {
  const file = begin();
  for (const shape of machineShapes(part)) draw(file, shape);
  notes(file, part);
  return file.stringify();
}

export type SheetOfParts = {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly placed: readonly {
    readonly part: MachinePart;
    readonly xMm: number;
    readonly yMm: number;
    readonly turned: boolean;
    readonly blankLengthMm: number;
    readonly blankWidthMm: number;
    /** False = cut larger and trimmed later: only the blank is drawn. */
    readonly isFinished: boolean;
  }[];
};

/** A whole sheet as the layout has it, its lower left corner at the origin. */
export function sheetDxf({ lengthMm, widthMm, placed }: SheetOfParts): string {
  const file = begin();
  draw(file, rectangle('SHEET', 0, 0, lengthMm, widthMm));
  for (const { part, xMm, yMm, turned, blankLengthMm, blankWidthMm, isFinished } of placed) {
    const [alongX, alongY] = turned ? [blankWidthMm, blankLengthMm] : [blankLengthMm, blankWidthMm];
    if (isFinished) {
      const place = { xMm, yMm, turned, blankWidthMm };
      for (const shape of machineShapes(part)) draw(file, laidOut(shape, place));
    } else draw(file, rectangle('BLANK', xMm, yMm, alongX, alongY));
    layer(file, NOTES);
    file.addText(point3d(xMm + alongX / 2, yMm + alongY / 2), TEXT_MM, part.mark, { layerName: NOTES });
  }
  return file.stringify();
}

const BETWEEN_OUTLINES_MM = 100;

/** Closed outlines side by side, each over its name: for cardboard and scrap. */
export function outlinesDxf(
  outlines: readonly { readonly name: string; readonly outline: MachinePart['outline'] }[],
): string {
  const file = begin();
  layer(file, NOTES);
  let fromMm = 0;
  for (const { name, outline } of outlines) {
    const left = Math.min(...outline.map(({ xMm }) => xMm));
    const low = Math.min(...outline.map(({ yMm }) => yMm));
    const corners = outline.map(({ xMm, yMm }) => ({ xMm: xMm - left + fromMm, yMm: yMm - low, bulge: 0 }));
    draw(file, { kind: 'outline', operation: 'OUTLINE', corners });
    file.addText(point3d(fromMm, -2 * TEXT_MM), TEXT_MM, name, { layerName: NOTES });
    fromMm = Math.max(...corners.map(({ xMm }) => xMm)) + BETWEEN_OUTLINES_MM;
  }
  return file.stringify();
}

function begin(): DxfWriter {
  const file = new DxfWriter();
  file.setUnits(Units.Millimeters);
  return file;
}

function rectangle(
  operation: string,
  xMm: number,
  yMm: number,
  alongX: number,
  alongY: number,
): MachineShape {
  const at = (dx: number, dy: number) => ({ xMm: xMm + dx, yMm: yMm + dy, bulge: 0 });
  return {
    kind: 'outline',
    operation,
    corners: [at(0, 0), at(alongX, 0), at(alongX, alongY), at(0, alongY)],
  };
}

function layer(file: DxfWriter, name: string): void {
  if (file.layer(name) === undefined) file.addLayer(name, Colors.White, 'Continuous');
}

function draw(file: DxfWriter, shape: MachineShape): void {
  layer(file, shape.operation);
  const options = { layerName: shape.operation };
  if (shape.kind === 'circle') {
    file.addCircle(point3d(shape.centre.xMm, shape.centre.yMm), shape.radiusMm, options);
    return;
  }
  file.addLWPolyline(
    shape.corners.map(({ xMm, yMm, bulge }) => ({ point: point2d(xMm, yMm), bulge })),
    { ...options, flags: LWPolylineFlags.Closed },
  );
}

/** Bevels and steps of the inner face are work that these lines do not show. */
function notes(file: DxfWriter, { mark, name, thicknessMm, outline, edges }: MachinePart): void {
  layer(file, NOTES);
  const lines = [
    `${mark} ${name}, ${thicknessMm} mm, outer face up`,
    ...edges.flatMap(({ bevelDeg, rebate }, index) => {
      const edge = `edge ${index + 1}`;
      return [
        ...(bevelDeg > 0 ? [`${edge}: bevel ${bevelDeg.toFixed(1)} deg`] : []),
        ...(rebate === undefined ? [] : [`${edge}: step ${rebate.widthMm} x ${rebate.depthMm}, inner face`]),
      ];
    }),
  ];
  const lowest = Math.min(...outline.map(({ yMm }) => yMm));
  lines.forEach((line, index) => {
    file.addText(point3d(0, lowest - (index + 2) * TEXT_MM * 1.5), TEXT_MM, line, { layerName: NOTES });
  });
}
