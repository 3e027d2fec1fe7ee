// Which order of jobs makes the best plan: the shop's own order first, then by urgency, then with pairs of jobs
// changing places. Whoever ranks higher weighs more, so a lower job never gains at a higher one's cost for little.
import type { PlanJob, ShopPlanInput } from '@gusset/contracts/planning';
import { listCraft } from '../core/activity-list.ts';
import type { CompiledProject } from '../core/compile-project.ts';
import { headsAndTails } from '../core/lower-bound.ts';
import type { Placed } from '../core/occupancy.ts';
import { createPlacer } from '../core/placer.ts';
import { seededRandom } from '../core/seeded-random.ts';
import { dayOfDate } from './shop-clock.ts';
import type { ShopProject } from './shop-project.ts';

/** A quarter hour late weighs as much as so many quarter hours of finishing later in time. */
const LATE_WEIGHT = 12;
/** Each rank weighs this much of the rank before it, down to the least weight. */
const RANK_STEP = 0.5;
const LEAST_WEIGHT = 1 / 64;

export type FoundPlan = {
  readonly placed: Readonly<Placed>;
  readonly tried: number;
  readonly broken: number;
};

/** Jobs in the shop's own order: rank, promise, approval, number. */
export function jobsInOrder(jobs: readonly PlanJob[]): PlanJob[] {
  const latest = '9999';
  return jobs.toSorted(
    (a, b) =>
      a.rank - b.rank ||
      (a.promisedOn ?? latest).localeCompare(b.promisedOn ?? latest) ||
      (a.approvedAt ?? latest).localeCompare(b.approvedAt ?? latest) ||
      a.number - b.number ||
      a.id.localeCompare(b.id),
  );
}

export function searchPlan(
  input: ShopPlanInput,
  shop: ShopProject,
  compiled: CompiledProject,
  options: { readonly schedules: number; readonly seed: number },
): FoundPlan {
  const placer = createPlacer(compiled);
  const craft = listCraft(compiled);
  const { fromStart } = headsAndTails(compiled);
  const order = jobsInOrder(input.jobs);
  const costOf = planCost(input, shop, compiled, order);
  const jobOf = compiled.activities.map(({ id }) => shop.open.get(id)?.job.id ?? null);
  const goesFirst = compiled.activities.map(({ id }) => shop.open.get(id)?.task.state !== 'planned');
  const far = compiled.horizon * 2;

  /** Job by job; within a job, whatever has most behind it first. */
  const byJob = (jobs: readonly PlanJob[]): Float64Array => {
    const turn = new Map(jobs.map((job, k) => [job.id, k + 1]));
    return Float64Array.from(jobOf, (job, i) =>
      goesFirst[i] ? 0 : (turn.get(job ?? '') ?? 0) * far + compiled.horizon - (fromStart[i] ?? 0),
    );
  };
  /** All jobs together, by the latest start that keeps each promise. */
  const byUrgency = (): Float64Array => {
    const due = new Map(order.map((job) => [job.id, dueUnit(shop, job) ?? compiled.horizon]));
    return Float64Array.from(jobOf, (job, i) =>
      goesFirst[i] ? 0 : far + (due.get(job ?? '') ?? compiled.horizon) - (fromStart[i] ?? 0),
    );
  };

  let tried = 0;
  let best: (FoundPlan & { readonly cost: number }) | null = null;
  const tryKeys = (key: Float64Array): boolean => {
    const broken = placer.serial(craft.byKey(key));
    tried++;
    const cost = broken * compiled.horizon * order.length + costOf(placer.placed);
    if (best !== null && cost >= best.cost) return false;
    best = { placed: copied(placer.placed), tried, broken, cost };
    return true;
  };

  tryKeys(byJob(order));
  if (options.schedules > 1) tryKeys(byUrgency());
  const random = seededRandom(options.seed);
  let current = order;
  while (tried < options.schedules && order.length > 1) {
    const swapped = withSwap(current, random);
    if (tryKeys(byJob(swapped))) current = swapped;
  }
  const found: FoundPlan = best ?? { placed: copied(placer.placed), tried, broken: 0 };
  return { placed: found.placed, tried, broken: found.broken };
}

/** Grid moment at which the promised date is over; null = no promise. */
export function dueUnit({ clock }: ShopProject, { promisedOn }: PlanJob): number | null {
  return promisedOn === null ? null : clock.unitAtOrBefore(clock.wallMs(dayOfDate(promisedOn) + 1, 0));
}

function planCost(
  input: ShopPlanInput,
  shop: ShopProject,
  compiled: CompiledProject,
  order: readonly PlanJob[],
): (placed: Readonly<Placed>) => number {
  const ranks = [...new Set(input.jobs.map(({ rank }) => rank))].sort((a, b) => a - b);
  const jobIndex = new Map(order.map((job, j) => [job.id, j]));
  const jobOf = compiled.activities.map(({ id }) => jobIndex.get(shop.open.get(id)?.job.id ?? '') ?? -1);
  const terms = order.map((job) => ({
    due: dueUnit(shop, job),
    weight: Math.max(LEAST_WEIGHT, RANK_STEP ** ranks.indexOf(job.rank)),
  }));
  const finish = new Int32Array(order.length);
  return ({ end }) => {
    finish.fill(0);
    for (const [i, j] of jobOf.entries()) if (j >= 0) finish[j] = Math.max(finish[j] ?? 0, end[i] ?? 0);
    return terms.reduce((sum, { due, weight }, j) => {
      const done = finish[j] ?? 0;
      const late = due === null ? 0 : Math.max(0, done - due);
      return sum + weight * (done + LATE_WEIGHT * late);
    }, 0);
  };
}

/** One job moved one or a few turns. */
function withSwap(jobs: readonly PlanJob[], random: () => number): PlanJob[] {
  const at = Math.floor(random() * jobs.length);
  const moved = jobs[at];
  const others = jobs.filter((_, k) => k !== at);
  const to = Math.floor(random() * jobs.length);
  return moved === undefined ? others : [...others.slice(0, to), moved, ...others.slice(to)];
}

function copied({ start, end, worker, place, team, stands }: Readonly<Placed>): Placed {
  return {
    start: start.slice(),
    end: end.slice(),
    worker: worker.slice(),
    place: place.slice(),
    team: [...team],
    stands: stands.slice(),
  };
}
