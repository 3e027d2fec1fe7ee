// Search over activity lists: a population that grows as the search goes on, two-point crossing, and every child
// brought forward and backward in time ("double justification": all as late as possible, then all as early as
// possible, which never lengthens a plain schedule). V. Valls, F. Ballestín & S. Quintanilla, "Justification and
// RCPSP: a technique that pays", Eur. J. Oper. Res. 165 (2005) 375-386. Lists: see activity-list.ts.
import type { ListCraft } from './activity-list.ts';
import type { CompiledProject } from './compile-project.ts';
import type { HeadsAndTails } from './lower-bound.ts';
import type { Placed } from './occupancy.ts';
import type { Placer } from './placer.ts';
import type { SeededRandom } from './seeded-random.ts';

const FIRST_POPULATION = 36; // individuals: good for some 5,000 schedules; a longer search goes on with more
const LARGEST_POPULATION = 600;
const STALE_ROUNDS = 10; // children without a new best, in populations, before a population twice as large is begun
const DISTURBANCE = 0.05; // chance of each neighbouring pair to change places (Hartmann 1998)
// Each random list looks at 1 to so many waiting activities a step. With 3 for all, the search stuck 4.5 % above the
// best on one of 48 projects of 30 activities, whatever the seed.
const MOST_DRAWS = 3;

export type SearchTask = {
  readonly project: CompiledProject;
  readonly placer: Placer;
  /** The same project read backwards; null where schedules can't be justified. */
  readonly mirror: Mirror | null;
  readonly craft: ListCraft;
  readonly bounds: HeadsAndTails;
  /** What a run that breaks nothing costs. */
  readonly cost: (placed: Readonly<Placed>) => number;
  /** A cost that can't be beaten. */
  readonly target: number;
  /** Schedules to make at most. */
  readonly schedules: number;
  readonly random: SeededRandom;
  /** Asked between schedules. */
  readonly shouldStop: () => boolean;
};

export type Mirror = { readonly placer: Placer; readonly craft: ListCraft };

export type Individual = {
  readonly list: Int32Array;
  /** Units of broken deadlines and lags: 0 = a schedule. */
  readonly broken: number;
  readonly cost: number;
  /** Tells schedules of equal cost apart. */
  readonly mark: number;
};

export type SearchResult = {
  readonly best: Individual;
  /** Where everything stood in the best run. */
  readonly placed: Placed;
  readonly schedules: number;
};

export function searchLists(task: SearchTask): SearchResult {
  const { project, placer, craft, random } = task;
  let schedules = 0;
  let best: Individual | null = null;
  let bestPlaced = copyOf(placer.placed);

  const isOver = (): boolean =>
    schedules >= task.schedules ||
    (best !== null && best.broken === 0 && best.cost <= task.target) ||
    task.shouldStop();

  /** Reads the placer's last run as an individual. */
  const read = (broken: number): Individual => {
    schedules++;
    const { placed } = placer;
    const one = { list: craft.byMoment(placed.start), broken, cost: task.cost(placed), mark: markOf(placed) };
    if (best === null || isBetter(one, best)) {
      best = one;
      bestPlaced = copyOf(placed);
    }
    return one;
  };

  /** The placer's last run moved late, then early again. */
  const justified = (mirror: Mirror): Individual | null => {
    const last = lastEnd(placer.placed);
    const latestFirst = mirror.craft.byMoment(placer.placed.end.map((end) => last - end));
    schedules++;
    if (mirror.placer.serial(latestFirst, project.horizon - last) > 0) return null;
    const earliestFirst = craft.byMoment(mirror.placer.placed.end.map((end) => project.horizon - end));
    return read(placer.serial(earliestFirst));
  };

  const raise = (broken: number): Individual => {
    const plain = read(broken);
    if (task.mirror === null || broken > 0 || isOver()) return plain;
    const moved = justified(task.mirror);
    return moved === null || isBetter(plain, moved) ? plain : moved;
  };

  const keys = ruleKeys(project, task.bounds);
  for (const key of keys) {
    if (isOver()) break;
    raise(placer.serial(craft.byKey(key)));
    if (!isOver() && project.backward.length === 0) raise(placer.parallel(key));
  }

  const lean = keys[0] ?? task.bounds.earliestStart;
  const people: Individual[] = [];
  let size = FIRST_POPULATION;
  let stale = 0;
  while (!isOver()) {
    const known: Individual | null = best;
    const full = people.length >= size;
    const list = full
      ? bred(people, craft, random)
      : craft.draw(lean, 1 + Math.floor(random() * MOST_DRAWS), random);
    const child = raise(placer.serial(list));
    if (full) replaceWorst(people, child);
    else people.push(child);
    stale = best !== known || !full ? 0 : stale + 1;
    if (stale < size * STALE_ROUNDS) continue;
    size = Math.min(size * 2, LARGEST_POPULATION);
    stale = 0;
    people.length = 0;
    if (best !== null) people.push(best);
  }
  // A search that was stopped before its first run still owes one.
  const result = best ?? read(placer.serial(project.order));
  return { best: result, placed: bestPlaced, schedules };
}

/** Keys by which lists are begun: latest start, latest end, most work behind it. */
function ruleKeys(project: CompiledProject, bounds: HeadsAndTails): Int32Array[] {
  const latestStart = bounds.fromStart.map((rest) => -rest);
  const latestEnd = bounds.fromEnd.map((rest) => -rest);
  const due = project.activities.map(({ due: wished }) => wished ?? project.horizon);
  return [latestStart, latestEnd, Int32Array.from(due)];
}

function bred(people: readonly Individual[], craft: ListCraft, random: SeededRandom): Int32Array {
  const list = craft.cross(drawParent(people, random).list, drawParent(people, random).list, random);
  craft.disturb(list, DISTURBANCE, random);
  return list;
}

/** The better of two drawn at random. */
function drawParent(people: readonly Individual[], random: SeededRandom): Individual {
  const a = people[Math.floor(random() * people.length)] as Individual; // the index lies within the list
  const b = people[Math.floor(random() * people.length)] as Individual; // likewise
  return isBetter(a, b) ? a : b;
}

/** Takes the worst one's place where the child is no worse and no twin of anybody. */
function replaceWorst(people: Individual[], child: Individual): void {
  let worst = 0;
  for (const [k, one] of people.entries()) {
    if (one.cost === child.cost && one.mark === child.mark) return;
    const last = people[worst];
    if (last !== undefined && isBetter(last, one)) worst = k;
  }
  const last = people[worst];
  if (last !== undefined && !isBetter(last, child)) people[worst] = child;
}

function isBetter(a: Individual, b: Individual): boolean {
  return a.broken !== b.broken ? a.broken < b.broken : a.cost < b.cost;
}

export function lastEnd({ end }: Readonly<Placed>): number {
  let last = 0;
  for (const moment of end) if (moment > last) last = moment;
  return last;
}

/** The run list is not enough to repeat a run: who was free decided too. */
function copyOf({ start, end, worker, team, place, stands }: Readonly<Placed>): Placed {
  return {
    start: start.slice(),
    end: end.slice(),
    worker: worker.slice(),
    team: [...team],
    place: place.slice(),
    stands: stands.slice(),
  };
}

function markOf({ start }: Readonly<Placed>): number {
  let mark = 0;
  for (const moment of start) mark = (Math.imul(mark, 31) + moment) | 0;
  return mark;
}
