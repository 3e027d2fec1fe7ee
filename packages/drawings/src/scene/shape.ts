// What is left when a scene is drawn out: filled or stroked paths and text. Both renderers know only these two.
import type { Ink, Pen } from './pens.ts';
import type { TextAnchor, TextFace } from './scene.ts';
import { polar, type Spot, spot } from './spot.ts';

/** Straight lines and cubic curves; arcs have been turned into cubics. */
export type PathCommand =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

/** Filled even-odd. */
export type PathShape = {
  readonly kind: 'path';
  readonly commands: readonly PathCommand[];
  readonly pen: Pen | null;
  readonly fill: Ink | null;
};

export type TextShape = {
  readonly kind: 'text';
  readonly at: Spot;
  readonly text: string;
  readonly sizePt: number;
  readonly face: TextFace;
  readonly anchor: TextAnchor;
  readonly ink: Ink;
  readonly turnRad: number;
};

export type Shape = PathShape | TextShape;

export function ringCommands(points: readonly Spot[], closed: boolean): PathCommand[] {
  const commands = points.map(({ x, y }, index): PathCommand => [index === 0 ? 'M' : 'L', x, y]);
  return closed && commands.length > 0 ? [...commands, ['Z']] : commands;
}

const QUARTER_TURN = Math.PI / 2;
const EIGHTH_TURN = Math.PI / 4;

/** An arc as cubics of at most an eighth turn each; off the true circle by under 5 millionths of the radius. */
export function arcCommands(centre: Spot, radiusPt: number, fromRad: number, toRad: number): PathCommand[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(toRad - fromRad) / EIGHTH_TURN - 1e-9)); // 1e-9 rad: whole eighths
  const step = (toRad - fromRad) / pieces;
  const handlePt = (4 / 3) * Math.tan(step / 4) * radiusPt;
  const start = polar(centre, fromRad, radiusPt);
  const commands: PathCommand[] = [['M', start.x, start.y]];
  for (let piece = 0; piece < pieces; piece += 1) {
    const a = fromRad + piece * step;
    const b = a + step;
    const first = polar(polar(centre, a, radiusPt), a + QUARTER_TURN, handlePt);
    const end = polar(centre, b, radiusPt);
    const second = polar(end, b + QUARTER_TURN, -handlePt);
    commands.push(['C', first.x, first.y, second.x, second.y, end.x, end.y]);
  }
  return commands;
}

export const circleCommands = (centre: Spot, radiusPt: number): PathCommand[] => [
  ...arcCommands(centre, radiusPt, 0, 2 * Math.PI),
  ['Z'],
];

/** Same shapes, enlarged about the origin and then shifted; line widths grow with them. */
export function placeShape(shape: Shape, scale: number, shift: Spot): Shape {
  const place = ({ x, y }: Spot): Spot => spot(x * scale + shift.x, y * scale + shift.y);
  if (shape.kind === 'text') return { ...shape, at: place(shape.at), sizePt: shape.sizePt * scale };
  const pen = shape.pen && {
    ...shape.pen,
    widthPt: shape.pen.widthPt * scale,
    dashPt: shape.pen.dashPt.map((length) => length * scale),
  };
  return { ...shape, pen, commands: shape.commands.map((command) => placeCommand(command, place)) };
}

function placeCommand(command: PathCommand, place: (from: Spot) => Spot): PathCommand {
  switch (command[0]) {
    case 'Z':
      return command;
    case 'C': {
      const a = place(spot(command[1], command[2]));
      const b = place(spot(command[3], command[4]));
      const c = place(spot(command[5], command[6]));
      return ['C', a.x, a.y, b.x, b.y, c.x, c.y];
    }
    default: {
      const { x, y } = place(spot(command[1], command[2]));
      return [command[0], x, y];
    }
  }
}
