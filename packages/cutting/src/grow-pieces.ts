// A piece beside which nothing of the right length is left to lie may as well be wider: the sheet's waste counts
// to it, and bounds by weight see it. After [CCM] (see dual-feasible.ts), for pieces that do not turn.

type Rectangle = { readonly width: number; readonly height: number };

/** Above this many steps the subset sums take longer than the bound is worth. */
const LONGEST_SUM = 200_000;

export function growPieces<T extends Rectangle>(pieces: readonly T[], sheet: Rectangle): readonly T[] {
  const widths = grownLengths(
    pieces.map((piece) => piece.width),
    sheet.width,
  );
  const heights = grownLengths(
    pieces.map((piece) => piece.height),
    sheet.height,
  );
  return pieces.map((piece, index) => ({
    ...piece,
    width: widths[index] ?? piece.width,
    height: heights[index] ?? piece.height,
  }));
}

/** Each length plus what no sum of the other (already grown) lengths can use of the rest of the side. */
function grownLengths(lengths: readonly number[], side: number): readonly number[] {
  const grown = [...lengths];
  if (side * lengths.length > LONGEST_SUM) return grown;
  lengths.forEach((length, index) => {
    const rest = side - length;
    grown[index] = length + rest - largestSum(grown.toSpliced(index, 1), rest);
  });
  return grown;
}

/** Largest sum of some of the lengths that is at most `limit`. */
function largestSum(lengths: readonly number[], limit: number): number {
  const reachable = new Uint8Array(limit + 1);
  reachable[0] = 1;
  for (const length of lengths) {
    for (let sum = limit; sum >= length; sum--) {
      if (reachable[sum - length] === 1) reachable[sum] = 1;
    }
  }
  return reachable.lastIndexOf(1);
}
