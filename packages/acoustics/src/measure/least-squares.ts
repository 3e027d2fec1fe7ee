// Figures of a model from measured points, by least squares, with how well the points pin each of them down.
// Levenberg-Marquardt on the logarithms of the figures: they stay positive, and one step suits farads and litres alike.
// The doubt of a figure is what the residuals say: sigma² (JᵀJ)⁻¹, for points whose errors do not hang together.
import { levenbergMarquardt } from 'ml-levenberg-marquardt';

const STEP = 1e-5; // of a logarithm: far above rounding, far below any curvature here
const ROUNDS = 8;
const STEPS_A_ROUND = 12;
/** A round that gains less than this share of the error is the last. */
const LEAST_GAIN = 1e-7;
const DEEPEST = 1e-24; // squared error per point at which there is nothing left to gain

export type Unknown = {
  readonly start: number;
  /** Bounds, both above 0. */
  readonly low: number;
  readonly high: number;
};

export type LeastSquares = {
  readonly values: readonly number[];
  /** One standard deviation as a share of the value; Infinity = the points say nothing about it. */
  readonly relativeError: readonly number[];
  /** Weighted mean square of what is left. */
  readonly meanSquare: number;
  /** Which figures ended on a bound. */
  readonly onBound: readonly boolean[];
};

/** `model` gives one value per point; `weights` are shares, so that the model's unit of error stays its own. */
export function leastSquares(problem: {
  readonly unknowns: readonly Unknown[];
  readonly measured: readonly number[];
  readonly weights: readonly number[];
  readonly model: (values: readonly number[]) => readonly number[];
}): LeastSquares {
  const { unknowns, measured } = problem;
  const total = problem.weights.reduce((sum, weight) => sum + weight, 0);
  // Points count with the root of their weight; the roots stand on both sides, so the solver sees plain points.
  const roots = problem.weights.map((weight) => Math.sqrt((weight * measured.length) / total));
  const scaled = (values: readonly number[]) => values.map((value, i) => value * (roots[i] ?? 0));
  const data = { x: measured.map((_, i) => i), y: scaled(measured) };
  const weighted = (logs: readonly number[]) => scaled(problem.model(logs.map(Math.exp)));
  const bounds = {
    minValues: unknowns.map(({ low }) => Math.log(low)),
    maxValues: unknowns.map(({ high }) => Math.log(high)),
  };
  let logs = unknowns.map(({ start, low, high }) => Math.log(Math.min(Math.max(start, low), high)));
  let error = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const { parameterValues, parameterError } = levenbergMarquardt(
      data,
      (at) => {
        const values = weighted(at);
        return (x) => values[x] ?? 0;
      },
      {
        ...bounds,
        initialValues: logs,
        damping: 0.1,
        gradientDifference: STEP,
        centralDifference: true,
        maxIterations: STEPS_A_ROUND,
        errorTolerance: DEEPEST * measured.length,
      },
    );
    logs = [...parameterValues];
    const gained = error - parameterError;
    error = parameterError;
    if (!(gained > LEAST_GAIN * error)) break;
  }
  const meanSquare = error / measured.length;
  const onBound = logs.map(
    (log, k) => log <= (bounds.minValues[k] ?? 0) + STEP || log >= (bounds.maxValues[k] ?? 0) - STEP,
  );
  return {
    values: logs.map(Math.exp),
    relativeError: doubts(weighted, logs, meanSquare, onBound),
    meanSquare,
    onBound,
  };
}

function doubts(
  weighted: (logs: readonly number[]) => readonly number[],
  logs: readonly number[],
  meanSquare: number,
  fixed: readonly boolean[],
): number[] {
  const points = weighted(logs).length;
  const columns = logs.map((_, k) => {
    const moved = (by: number) => weighted(logs.map((log, i) => (i === k ? log + by : log)));
    const [above, below] = [moved(STEP), moved(-STEP)];
    return above.map((value, i) => (value - (below[i] ?? 0)) / (2 * STEP));
  });
  const strength = columns.map((column) => column.reduce((sum, value) => sum + value ** 2, 0));
  const felt = strength.map((each, k) => each > UNFELT * points && fixed[k] !== true);
  const known = columns.filter((_, k) => felt[k] === true);
  const normal = known.map((a) =>
    known.map((b) => a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)),
  );
  const inverse = inverseDiagonal(normal);
  const variance = (meanSquare * points) / Math.max(1, points - logs.length);
  let place = 0;
  return logs.map((_, k) => {
    const entry = (felt[k] === true ? inverse?.[place++] : null) ?? Number.POSITIVE_INFINITY;
    return entry > 0 ? Math.sqrt(variance * entry) : Number.POSITIVE_INFINITY;
  });
}

/** Mean square of a column below which a figure makes no difference to any point: it is left out, its doubt endless. */
const UNFELT = 1e-12;

const SINGULAR = 1e-13; // of the largest entry: below this the figures can't be told apart

/** Diagonal of the inverse of a small symmetric matrix, by elimination with pivots; null = singular. */
function inverseDiagonal(matrix: readonly (readonly number[])[]): number[] | null {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  const largest = Math.max(...matrix.flat().map(Math.abs));
  for (let column = 0; column < size; column++) {
    const pivot = rows.slice(column).reduce(
      (best, row, i) => {
        const size = Math.abs(row[column] ?? 0);
        return size > best.size ? { at: column + i, size } : best;
      },
      { at: column, size: 0 },
    );
    if (pivot.size <= SINGULAR * largest) return null;
    const chosen = rows[pivot.at] ?? [];
    rows[pivot.at] = rows[column] ?? [];
    const unit = chosen.map((value) => value / (chosen[column] ?? 1));
    rows[column] = unit;
    for (const [i, row] of rows.entries()) {
      if (i === column) continue;
      const factor = row[column] ?? 0;
      rows[i] = row.map((value, j) => value - factor * (unit[j] ?? 0));
    }
  }
  return rows.map((row, i) => row[size + i] ?? Number.POSITIVE_INFINITY);
}
