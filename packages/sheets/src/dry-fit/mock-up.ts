// The side profile and the opening at full size on ordinary paper, to be glued together and tried in the car as cardboard or
// scrap. Every page carries a bar to measure, so that a printer that scales is found out.
import type { PaperSize } from '@gusset/contracts/drawings';
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import {
  line,
  type PaperDocument,
  type PaperPage,
  PLANNING_CAUTION,
  polygon,
  printableArea,
  type SceneItem,
  text,
} from '@gusset/drawings';

const PT_PER_MM = 72 / 25.4;
/** Neighbouring pages show this much of each other. */
const OVERLAP_MM = 10;
/** Under each tile: what it is, and the bar. */
const FOOT_PT = 46;
const BAR_MM = 100;
const BAR_INCHES = 4;
const TICK_PT = 8;
const CROSS_PT = 7;

export type MockUpPart = {
  readonly name: string;
  /** Closed, mm, y up. */
  readonly outline: PolygonMm;
};

export type MockUpInput = {
  readonly paper: PaperSize;
  readonly title: string;
  readonly author: string;
  /** On each page: job, car, mark of the profile. */
  readonly facts: string;
  readonly parts: readonly MockUpPart[];
};

/** Pages of the parts, row by row from the top left; tiles that no line crosses are left out. */
export function mockUpDocument({ paper, title, author, facts, parts }: MockUpInput): PaperDocument {
  const pages = parts.flatMap((part) =>
    tilesOf(part, paper).map((tile, index): PaperPage => {
      const { items, heading } = tilePage(part, tile, paper, facts);
      return {
        paper,
        orientation: 'portrait',
        bookmark: index === 0 ? part.name : null,
        blocks: [
          { kind: 'furniture', items: items.drawn },
          { kind: 'words', role: index === 0 ? 'H1' : 'P', items: heading, url: null },
          { kind: 'words', role: 'P', items: items.words, url: null },
        ],
      };
    }),
  );
  return { title, language: 'en', author, pages };
}

type Tile = {
  /** `B2`: second column, second row. */
  readonly name: string;
  readonly last: string;
  readonly xMm: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly segments: readonly (readonly [PointMm, PointMm])[];
};

function tilesOf({ outline }: MockUpPart, paper: PaperSize): Tile[] {
  const area = printableArea({ paper, orientation: 'portrait' });
  const widthMm = (area.right - area.left) / PT_PER_MM;
  const heightMm = (area.bottom - area.top - FOOT_PT) / PT_PER_MM;
  const xs = outline.map(({ xMm }) => xMm);
  const ys = outline.map(({ yMm }) => yMm);
  // Lines on the very edge of a page would be lost to the printer.
  const [left, top] = [Math.min(...xs) - OVERLAP_MM / 2, Math.max(...ys) + OVERLAP_MM / 2];
  const columns = countOf(Math.max(...xs) + OVERLAP_MM / 2 - left, widthMm);
  const rows = countOf(top - (Math.min(...ys) - OVERLAP_MM / 2), heightMm);
  const last = tileName(columns - 1, rows - 1);
  return Array.from({ length: columns * rows }, (_, index): Tile => {
    const [column, row] = [index % columns, Math.floor(index / columns)];
    const xMm = left + column * (widthMm - OVERLAP_MM);
    const topMm = top - row * (heightMm - OVERLAP_MM);
    const room = { xMm, topMm, widthMm, heightMm };
    const segments = outline.flatMap((from, at) => {
      const clipped = clip(from, outline[(at + 1) % outline.length] ?? from, room);
      return clipped === null ? [] : [clipped];
    });
    return { name: tileName(column, row), last, ...room, segments };
  }).filter(({ segments }) => segments.length > 0);
}

const countOf = (lengthMm: number, pageMm: number) =>
  Math.max(1, Math.ceil((lengthMm - OVERLAP_MM) / (pageMm - OVERLAP_MM)));

const tileName = (column: number, row: number) => `${String.fromCodePoint(65 + column)}${row + 1}`;

type Room = Pick<Tile, 'xMm' | 'topMm' | 'widthMm' | 'heightMm'>;

/** The part of a line within a tile (Liang and Barsky 1984); null where there is none. */
export function clip(
  from: PointMm,
  to: PointMm,
  { xMm, topMm, widthMm, heightMm }: Room,
): readonly [PointMm, PointMm] | null {
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const bounds = [
    [-dx, from.xMm - xMm],
    [dx, xMm + widthMm - from.xMm],
    [-dy, from.yMm - (topMm - heightMm)],
    [dy, topMm - from.yMm],
  ] as const;
  let [enters, leaves] = [0, 1];
  for (const [slope, room] of bounds) {
    if (slope === 0) {
      if (room < 0) return null;
      continue;
    }
    const share = room / slope;
    if (slope < 0) enters = Math.max(enters, share);
    else leaves = Math.min(leaves, share);
  }
  if (enters >= leaves) return null;
  const at = (share: number): PointMm => ({ xMm: from.xMm + dx * share, yMm: from.yMm + dy * share });
  return [at(enters), at(leaves)];
}

function tilePage(part: MockUpPart, tile: Tile, paper: PaperSize, facts: string) {
  const area = printableArea({ paper, orientation: 'portrait' });
  const bottom = area.bottom - FOOT_PT;
  const place = ({ xMm, yMm }: PointMm) => ({
    x: area.left + (xMm - tile.xMm) * PT_PER_MM,
    y: area.top + (tile.topMm - yMm) * PT_PER_MM,
  });
  // Halfway across the overlap, so that the crosses of two pages are the same points.
  const inset = (OVERLAP_MM / 2) * PT_PER_MM;
  const crosses = [area.left + inset, area.right - inset].flatMap((x) =>
    [area.top + inset, bottom - inset].flatMap((y): SceneItem[] => [
      line({ x: x - CROSS_PT, y }, { x: x + CROSS_PT, y }, 'grid'),
      line({ x, y: y - CROSS_PT }, { x, y: y + CROSS_PT }, 'grid'),
    ]),
  );
  const frame = [
    { x: area.left, y: area.top },
    { x: area.right, y: area.top },
    { x: area.right, y: bottom },
    { x: area.left, y: bottom },
  ];
  const barY = area.bottom - 12;
  const drawn: SceneItem[] = [
    polygon(frame, 'grid'),
    ...crosses,
    ...tile.segments.map(([from, to]) => line(place(from), place(to), 'outline')),
    ...bar(area.left, barY, BAR_MM * PT_PER_MM, -1),
    ...bar(area.left, barY, BAR_INCHES * 72, 1),
  ];
  const heading = [
    text({ x: area.left, y: bottom + 13 }, `${part.name} · ${tile.name}, of A1 to ${tile.last} · ${facts}`, {
      sizePt: 9,
      face: 'semibold',
    }),
  ];
  const words = [
    text({ x: area.left + BAR_MM * PT_PER_MM + 14, y: barY + 12 }, PLANNING_CAUTION, {
      sizePt: 7,
      face: 'condensed',
      ink: 'ink-2',
    }),
    text(
      { x: area.left + BAR_MM * PT_PER_MM + 14, y: barY + 3 },
      '100 mm above, 4 in below. Print at actual size and measure; crosses lie on crosses.',
      { sizePt: 7, face: 'condensed', ink: 'ink-2' },
    ),
  ];
  return { items: { drawn, words }, heading };
}

/** A measured length with a tick at each end, above or below its line. */
function bar(x: number, y: number, lengthPt: number, side: 1 | -1): SceneItem[] {
  return [
    line({ x, y }, { x: x + lengthPt, y }, 'thin'),
    ...[x, x + lengthPt].map((at) => line({ x: at, y }, { x: at, y: y + side * TICK_PT }, 'thin')),
  ];
}
