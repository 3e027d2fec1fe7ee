// Which drivers are tried at all, how many of each, and why the others are not.
import type { LeftOut, SearchBrief, SearchDriver } from '@gusset/contracts/acoustics';
import { bestWiring, type WiredArray } from './array-wiring.ts';
import type { DriverLimits } from './trial.ts';

/** A driver and a count that meet what the brief asks of both. */
export type Admitted = {
  readonly driver: SearchDriver;
  readonly wired: WiredArray;
  readonly limits: DriverLimits;
};

type Admission = { readonly admitted: readonly Admitted[]; readonly leftOut: LeftOut };

/** Those that move the most air first: the sooner a good design is found, the more the bounds can rule out. */
export function admitDrivers(brief: SearchBrief, drivers: readonly SearchDriver[]): Admission {
  const leftOut = { ...NOBODY };
  const admitted: Admitted[] = [];
  for (const driver of drivers) {
    const answer = admit(brief, driver);
    if (typeof answer === 'string') leftOut[answer] += 1;
    else admitted.push(...answer);
  }
  return { admitted: admitted.sort(byAirMoved), leftOut };
}

export const NOBODY: LeftOut = {
  limitsUnknown: 0,
  noneAvailable: 0,
  tooDeep: 0,
  priceUnknown: 0,
  overBudget: 0,
  loadTooLow: 0,
};

export function addLeftOut(a: LeftOut, b: LeftOut): LeftOut {
  return {
    limitsUnknown: a.limitsUnknown + b.limitsUnknown,
    noneAvailable: a.noneAvailable + b.noneAvailable,
    tooDeep: a.tooDeep + b.tooDeep,
    priceUnknown: a.priceUnknown + b.priceUnknown,
    overBudget: a.overBudget + b.overBudget,
    loadTooLow: a.loadTooLow + b.loadTooLow,
  };
}

function admit(brief: SearchBrief, driver: SearchDriver): Admitted[] | keyof LeftOut {
  const { xmaxMm, peWatts } = driver.parameters;
  if (xmaxMm === null || peWatts === null) return 'limitsUnknown';
  if (driver.available !== null && driver.available < 1) return 'noneAvailable';
  if (brief.depthMm !== null && driver.mountingDepthMm > brief.depthMm) return 'tooDeep';
  const affordable = affordableCount(brief, driver);
  if (affordable === null) return 'priceUnknown';
  if (affordable < 1) return 'overBudget';
  const most = Math.min(brief.mostDrivers, affordable, driver.available ?? brief.mostDrivers);
  const admitted = Array.from({ length: most }, (_, i) => bestWiring(driver, i + 1, brief.power)).flatMap(
    (wired) => (wired === null ? [] : [{ driver, wired, limits: { xmaxMm, peWatts } }]),
  );
  return admitted.length === 0 ? 'loadTooLow' : admitted;
}

/** How many the budget buys; null = nobody knows. */
function affordableCount(
  { budgetMinor, mostDrivers }: SearchBrief,
  { costMinor }: SearchDriver,
): number | null {
  if (budgetMinor === null || costMinor === 0) return mostDrivers;
  return costMinor === null ? null : Math.floor(budgetMinor / costMinor);
}

function byAirMoved(a: Admitted, b: Admitted): number {
  return (
    airMoved(b) - airMoved(a) || order(a.driver.id, b.driver.id) || a.wired.array.count - b.wired.array.count
  );
}

function airMoved({ driver, wired, limits }: Admitted): number {
  return wired.array.count * driver.parameters.sdCm2 * limits.xmaxMm;
}

function order(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
