// Where the rules and figures of a chart's axes stand.

export type Tick = { readonly value: number; readonly label: string | null };

/** Rules at 1…9 of every decade from `from` to `to`, figures at 1, 2 and 5: 10, 20, 50, 100, 200, 500, 1k. */
export function logTicks(from: number, to: number): readonly Tick[] {
  const ROUNDING = 1e-9; // share of a value: 10^k computed twice may differ in its last digit
  const ticks: Tick[] = [];
  for (let decade = Math.floor(Math.log10(from)); decade <= Math.ceil(Math.log10(to)); decade += 1) {
    for (let figure = 1; figure <= 9; figure += 1) {
      const value = decade < 0 ? figure / 10 ** -decade : figure * 10 ** decade;
      if (value < from * (1 - ROUNDING) || value > to * (1 + ROUNDING)) continue;
      ticks.push({ value, label: figure === 1 || figure === 2 || figure === 5 ? shortFigure(value) : null });
    }
  }
  return ticks;
}

/** `1000` → `1k`; no trailing zeros. */
const shortFigure = (value: number): string => (value >= 1000 ? `${trimmed(value / 1000)}k` : trimmed(value));

const trimmed = (value: number): string => String(Number(value.toPrecision(6)));

export type LinearAxis = { readonly from: number; readonly to: number; readonly step: number };

const DECIBEL_STEPS = [1, 3, 5, 10, 20, 30, 50, 100];
const STEPS_PER_DECADE = [1, 2, 5];

/**
 * Axis that holds the values with whole steps at both ends and at most `mostSteps` steps: 1, 3, 5, 10, 20… for
 * decibels, 1-2-5 for everything else.
 */
export function linearAxis(values: readonly number[], mostSteps: number, decibels: boolean): LinearAxis {
  const low = values.length === 0 ? 0 : Math.min(...values);
  const high = values.length === 0 ? 1 : Math.max(...values);
  const steps = decibels ? DECIBEL_STEPS : decadeSteps(Math.max(high - low, Math.abs(high) * 1e-3, 1e-6)); // flat curves too
  for (const step of steps) {
    const from = Math.floor(low / step) * step;
    const to = Math.max(Math.ceil(high / step) * step, from + step);
    if ((to - from) / step <= mostSteps + 1e-9) return { from: tidy(from), to: tidy(to), step }; // rounding of a quotient
  }
  const step = Math.ceil((high - low) / Math.max(mostSteps - 1, 1) / 100) * 100;
  return { from: Math.floor(low / step) * step, to: Math.max(Math.ceil(high / step), 1) * step, step };
}

function decadeSteps(span: number): readonly number[] {
  const start = Math.floor(Math.log10(span)) - 2;
  return Array.from({ length: 5 }, (_, index) => start + index).flatMap((decade) =>
    STEPS_PER_DECADE.map((figure) => tidy(figure * 10 ** decade)),
  );
}

/** Drops binary dust: 0.30000000000000004 → 0.3. */
const tidy = (value: number): number => Number(value.toPrecision(12));

export function linearTicks({ from, to, step }: LinearAxis): readonly Tick[] {
  const count = Math.round((to - from) / step);
  return Array.from({ length: count + 1 }, (_, index) => {
    const value = tidy(from + index * step);
    return { value, label: trimmed(value).replace('-', '−') };
  });
}
