// Least value of a function of a few variables without slopes: J. A. Nelder, R. Mead, "A Simplex Method for Function
// Minimization", Computer Journal 7, 1965, with its usual factors. Variables run from 0 to 1 and are held there. Same
// start, same way: nothing is random.

const REFLECT = 1;
const EXPAND = 2;
const CONTRACT = 0.5;
const SHRINK = 0.5;

type Corner = { readonly place: readonly number[]; readonly score: number };

export type Descent = {
  readonly start: readonly number[];
  /** Size of the first simplex. */
  readonly step: number;
  /** Stops when the simplex is smaller than this. */
  readonly tolerance: number;
  readonly mostScores: number;
};

/** The best place found, never worse than the start. `score` may be infinite where a place can't be. */
export function descend(score: (place: readonly number[]) => number, descent: Descent): Corner {
  const { start, step, tolerance, mostScores } = descent;
  let scores = 0;
  const at = (place: readonly number[]): Corner => {
    const held = place.map((x) => Math.min(1, Math.max(0, x)));
    scores++;
    return { place: held, score: score(held) };
  };
  let corners = [start, ...start.map((_, k) => start.map((x, j) => (j === k ? inward(x, step) : x)))].map(at);
  while (scores < mostScores) {
    corners = [...corners].sort((a, b) => a.score - b.score);
    const [best, worst] = [corners[0], corners.at(-1)];
    if (best === undefined || worst === undefined || sizeOf(corners) < tolerance) break;
    const others = corners.slice(0, -1);
    const centre = best.place.map(
      (_, k) => others.reduce((sum, { place }) => sum + (place[k] ?? 0), 0) / others.length,
    );
    const along = (factor: number) => at(centre.map((x, k) => x + factor * (x - (worst.place[k] ?? x))));
    const next = moved(along, best, others.at(-1) ?? best, worst);
    corners =
      next === null
        ? [
            best,
            ...corners.slice(1).map(({ place }) => at(place.map((x, k) => toward(best.place[k] ?? x, x)))),
          ]
        : [...others, next];
  }
  return corners.reduce((best, next) => (next.score < best.score ? next : best));
}

/** The worst corner's new place; null = none is better, shrink. */
function moved(
  along: (factor: number) => Corner,
  best: Corner,
  second: Corner,
  worst: Corner,
): Corner | null {
  const reflected = along(REFLECT);
  if (reflected.score < best.score) {
    const expanded = along(EXPAND);
    return expanded.score < reflected.score ? expanded : reflected;
  }
  if (reflected.score < second.score) return reflected;
  const contracted = along(reflected.score < worst.score ? CONTRACT : -CONTRACT);
  return contracted.score < Math.min(reflected.score, worst.score) ? contracted : null;
}

function inward(x: number, step: number): number {
  return x + step <= 1 ? x + step : x - step;
}

function toward(best: number, x: number): number {
  return best + SHRINK * (x - best);
}

function sizeOf(corners: readonly Corner[]): number {
  const first = corners[0]?.place ?? [];
  return Math.max(...corners.flatMap(({ place }) => place.map((x, k) => Math.abs(x - (first[k] ?? x)))));
}
