// What a layout spends, and which of two spends less.
import type { CutAim } from '@gusset/contracts/cutting';
import type { Forest } from './guillotine-forest.ts';
import type { LayoutProblem } from './layout-problem.ts';

export type Usage = { readonly fullSheets: number; readonly costMinor: number };

export function usageOf(forest: Forest, problem: LayoutProblem): Usage {
  let fullSheets = 0;
  let costMinor = 0;
  problem.stocks.forEach((stock, index) => {
    const open = forest.open[index] ?? 0;
    if (!stock.isOffcut) fullSheets += open;
    costMinor += open * stock.costMinor;
  });
  return { fullSheets, costMinor };
}

/** Below 0 where `one` is the better by the aim. */
export function compareUsage(aim: CutAim, one: Usage, two: Usage): number {
  const sheets = one.fullSheets - two.fullSheets;
  const cost = one.costMinor - two.costMinor;
  return aim === 'fewest-sheets' ? sheets || cost : cost || sheets;
}

/** Spending allowed while a layout is being filled: less than `limit`, or as much where `inclusive`. */
export type Budget = { readonly limit: Usage; readonly inclusive: boolean };

export function allowsSheet(
  budget: Budget | null,
  forest: Forest,
  problem: LayoutProblem,
  stockIndex: number,
): boolean {
  const stock = problem.stocks[stockIndex];
  if (stock === undefined || (forest.open[stockIndex] ?? 0) >= stock.count) return false;
  if (budget === null) return true;
  const now = usageOf(forest, problem);
  const after = {
    fullSheets: now.fullSheets + (stock.isOffcut ? 0 : 1),
    costMinor: now.costMinor + stock.costMinor,
  };
  const compared = compareUsage(problem.aim, after, budget.limit);
  return budget.inclusive ? compared <= 0 : compared < 0;
}
