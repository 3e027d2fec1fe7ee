// What an amplifier gives into a load between the loads that it is rated for.
//
// Between two ratings: straight over the logarithms of both, as makers' figures run. Above the highest rated load the
// voltage stays, below the lowest one the current does. A load counts as the lowest one while it is at most a tenth under it:
// the direct-current resistance of drivers of one nominal load differs by as much.
export type PowerRating = { readonly loadOhm: number; readonly watts: number };

const LEAST_OF_LOWEST = 0.9;

/** Watts into `loadOhm`; null where the load is lower than the amplifier takes. Ratings in any order, at least one. */
export function wattsInto(ratings: readonly PowerRating[], loadOhm: number): number | null {
  const byLoad = [...ratings].sort((a, b) => a.loadOhm - b.loadOhm);
  const lowest = byLoad[0];
  if (lowest === undefined || loadOhm < lowest.loadOhm * LEAST_OF_LOWEST) return null;
  if (loadOhm <= lowest.loadOhm) return lowest.watts * (loadOhm / lowest.loadOhm);
  const next = byLoad.findIndex((rating) => rating.loadOhm >= loadOhm);
  const above = byLoad[next];
  const below = byLoad[next === -1 ? byLoad.length - 1 : next - 1] ?? lowest;
  if (above === undefined) return below.watts * (below.loadOhm / loadOhm);
  const share = Math.log(loadOhm / below.loadOhm) / Math.log(above.loadOhm / below.loadOhm);
  return below.watts * (above.watts / below.watts) ** share;
}
