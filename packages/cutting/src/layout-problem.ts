// The layout in the search's own terms: whole units, kerf folded in, grain resolved to allowed ways.
//
// A saw takes one kerf between two neighbours and none at the usable edge. Adding one kerf to both sides of every
// part and of every usable sheet makes that a plain packing: (a + k) + (b + k) = W + k exactly when a + k + b = W.
import type { CutAim, CutPart, LayoutInput, StockSheet } from '@gusset/contracts/cutting';
import { type WholeUnits, wholeUnits } from './whole-units.ts';

export type Piece = {
  readonly id: string;
  /** Along x and y when not turned, kerf added. */
  readonly width: number;
  readonly height: number;
  readonly area: number;
};

export type Stock = {
  readonly sheet: StockSheet;
  /** Usable size, kerf added. */
  readonly width: number;
  readonly height: number;
  readonly area: number;
  /** As many as the parts could need where stock has no end. */
  readonly count: number;
  readonly costMinor: number;
  readonly isOffcut: boolean;
};

/** Bits of `ways`: a piece may lie as given, turned by a quarter, both or neither. */
export const AS_GIVEN = 1;
export const TURNED = 2;

export type LayoutProblem = {
  readonly pieces: readonly Piece[];
  readonly stocks: readonly Stock[];
  /** Allowed ways on each stock where the piece also fits: `ways[piece * stocks.length + stock]`. */
  readonly ways: Uint8Array;
  readonly aim: CutAim;
  readonly units: WholeUnits;
  readonly kerf: number;
  readonly trim: number;
};

export function layoutProblem(input: LayoutInput): LayoutProblem {
  const { kerfMm, trimMm } = input.settings;
  const units = wholeUnits([
    kerfMm,
    trimMm,
    ...input.parts.flatMap((part) => [part.lengthMm, part.widthMm]),
    ...input.sheets.flatMap((sheet) => [sheet.lengthMm, sheet.widthMm]),
  ]);
  const kerf = units.up(kerfMm);
  const trim = units.up(trimMm);
  const pieces = input.parts.map((part) => toPiece(part, units, kerf));
  const stocks = input.sheets.map((sheet) => toStock(sheet, units, kerf - 2 * trim, input.parts.length));
  const ways = new Uint8Array(pieces.length * stocks.length);
  input.parts.forEach((part, piece) => {
    stocks.forEach((stock, index) => {
      ways[piece * stocks.length + index] = waysOn(part, pieces[piece], stock);
    });
  });
  return { pieces, stocks, ways, aim: input.aim, units, kerf, trim };
}

function toPiece(part: CutPart, units: WholeUnits, kerf: number): Piece {
  const width = units.up(part.lengthMm) + kerf;
  const height = units.up(part.widthMm) + kerf;
  return { id: part.id, width, height, area: width * height };
}

function toStock(sheet: StockSheet, units: WholeUnits, kerfLessTrim: number, partCount: number): Stock {
  const width = Math.max(0, units.down(sheet.lengthMm) + kerfLessTrim);
  const height = Math.max(0, units.down(sheet.widthMm) + kerfLessTrim);
  return {
    sheet,
    width,
    height,
    area: width * height,
    count: Math.min(sheet.count ?? partCount, partCount),
    costMinor: sheet.costMinor ?? 0,
    isOffcut: sheet.isOffcut,
  };
}

function waysOn(part: CutPart, piece: Piece | undefined, stock: Stock): number {
  if (piece === undefined) return 0;
  const allowed = grainWays(part, stock.sheet);
  const asGiven = piece.width <= stock.width && piece.height <= stock.height ? AS_GIVEN : 0;
  const isSquare = piece.width === piece.height && (allowed & AS_GIVEN) !== 0;
  const turned = !isSquare && piece.height <= stock.width && piece.width <= stock.height ? TURNED : 0;
  return allowed & (asGiven | turned);
}

/** The ways that turning and grain allow on a sheet, whatever the sizes. */
export function grainWays(part: CutPart, sheet: StockSheet): number {
  const turning = part.mayTurn ? AS_GIVEN | TURNED : AS_GIVEN;
  if (part.grain === 'none' || sheet.grain === 'none') return turning;
  return turning & (part.grain === sheet.grain ? AS_GIVEN : TURNED);
}
