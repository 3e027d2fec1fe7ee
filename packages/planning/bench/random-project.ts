// Random projects after the published recipe of the standard test sets: R. Kolisch, A. Sprecher & A. Drexl,
// "Characterization and generation of a general class of resource-constrained project scheduling problems",
// Management Science 41 (1995) 1693-1703. Network complexity = arcs an activity, resource factor = share of resources
// that an activity uses, resource strength = where the capacity lies between the largest single demand (0) and the
// peak of the schedule without limits (1). Our own draw: no published instance is copied.
import type { Project } from '@gusset/contracts/planning';
import { type SeededRandom, seededRandom } from '../src/core/seeded-random.ts';

export type RandomProjectShape = {
  readonly activities: number;
  readonly networkComplexity: number;
  readonly resourceFactor: number;
  readonly resourceStrength: number;
  readonly seed: number;
};

const RESOURCES = 4;
const LONGEST = 10; // units
const LARGEST_DEMAND = 10;
const MOST_NEIGHBOURS = 3; // successors of an activity, as in the published sets

export function randomProject(shape: RandomProjectShape): Project {
  const random = seededRandom(shape.seed);
  const upTo = (most: number) => 1 + Math.floor(random() * most);
  const count = shape.activities;
  const durations = Array.from({ length: count }, () => upTo(LONGEST));
  const demands = durations.map(() => Array.from({ length: RESOURCES }, () => 0));
  const uses = Math.round(shape.resourceFactor * RESOURCES * count);
  const cells = shuffled(
    Array.from({ length: count * RESOURCES }, (_, cell) => cell),
    random,
  );
  // each activity uses at least one resource, the rest are spread at random
  const first = durations.map((_, i) => i * RESOURCES + Math.floor(random() * RESOURCES));
  const chosen = [...first, ...cells.filter((cell) => !first.includes(cell))].slice(0, Math.max(uses, count));
  for (const cell of chosen) {
    const row = demands[Math.floor(cell / RESOURCES)];
    if (row !== undefined) row[cell % RESOURCES] = upTo(LARGEST_DEMAND);
  }
  const arcs = randomNetwork(count, shape.networkComplexity, random);
  const profile = peakWithoutLimits(durations, demands, arcs);
  const capacity = profile.map((peak, r) => {
    const least = Math.max(0, ...demands.map((row) => row[r] ?? 0));
    return least + Math.round(shape.resourceStrength * (Math.max(peak, least) - least));
  });
  return {
    id: `n${count}-nc${shape.networkComplexity}-rf${shape.resourceFactor}-rs${shape.resourceStrength}-${shape.seed}`,
    resources: capacity.map((units, r) => ({ id: `r${r}`, capacity: units })),
    activities: durations.map((duration, i) => ({
      id: `a${i}`,
      duration,
      demand: Object.fromEntries(
        (demands[i] ?? []).flatMap((amount, r) => (amount > 0 ? [[`r${r}`, amount]] : [])),
      ),
    })),
    precedences: arcs.map(([from, to]) => ({ from: `a${from}`, to: `a${to}` })),
  };
}

function shuffled<T>(items: T[], random: SeededRandom): T[] {
  const keyed = items.map((item) => ({ item, key: random() }));
  return keyed.sort((a, b) => a.key - b.key).map(({ item }) => item);
}

/**
 * Some activities start the project, the others get one predecessor each, then arcs are added until the complexity is
 * reached. No arc follows from others. Arcs of the published recipe include those of the dummy start and end.
 */
function randomNetwork(count: number, complexity: number, random: SeededRandom): [number, number][] {
  const starts = Math.min(3, count);
  const ends = Math.min(3, count - starts);
  const arcs: [number, number][] = [];
  const successors = new Int32Array(count);
  const predecessors = new Int32Array(count);
  const before = Array.from({ length: count }, () => new Set<number>()); // all that lie before, however far
  const after = Array.from({ length: count }, () => new Set<number>());
  const join = (from: number, to: number): boolean => {
    if (to < starts || from >= count - ends || (successors[from] ?? 0) >= MOST_NEIGHBOURS) return false;
    if ((predecessors[to] ?? 0) >= MOST_NEIGHBOURS || before[to]?.has(from) === true) return false;
    // an arc that a new one makes superfluous
    const lower = [from, ...(before[from] ?? [])];
    const upper = [to, ...(after[to] ?? [])];
    if (arcs.some(([a, b]) => lower.includes(a) && upper.includes(b))) return false;
    arcs.push([from, to]);
    successors[from] = (successors[from] ?? 0) + 1;
    predecessors[to] = (predecessors[to] ?? 0) + 1;
    for (const a of lower)
      for (const b of upper) {
        after[a]?.add(b);
        before[b]?.add(a);
      }
    return true;
  };
  const within = (low: number, high: number) => low + Math.floor(random() * (high - low));
  for (let to = starts; to < count; to++) {
    for (let draw = 0; draw < 40 && predecessors[to] === 0; draw++)
      join(within(0, Math.min(to, count - ends)), to);
  }
  for (let from = 0; from < count - ends; from++) {
    for (let draw = 0; draw < 40 && successors[from] === 0; draw++) {
      join(from, within(Math.max(from + 1, starts), count));
    }
  }
  const wanted = Math.round(complexity * (count + 2)) - starts - ends;
  for (let draw = 0; draw < 200 * count && arcs.length < wanted; draw++) {
    const from = within(0, count - ends);
    join(from, within(Math.max(from + 1, starts), count));
  }
  return arcs;
}

function peakWithoutLimits(
  durations: readonly number[],
  demands: readonly number[][],
  arcs: readonly [number, number][],
) {
  const start = durations.map(() => 0);
  for (let i = 0; i < durations.length; i++) {
    for (const [from, to] of arcs) {
      if (to === i) start[i] = Math.max(start[i] ?? 0, (start[from] ?? 0) + (durations[from] ?? 0));
    }
  }
  const end = Math.max(...start.map((moment, i) => moment + (durations[i] ?? 0)));
  return Array.from({ length: RESOURCES }, (_, r) => {
    const profile = Array.from({ length: end }, (_, unit) =>
      demands.reduce((sum, row, i) => {
        const from = start[i] ?? 0;
        return unit >= from && unit < from + (durations[i] ?? 0) ? sum + (row[r] ?? 0) : sum;
      }, 0),
    );
    return Math.max(0, ...profile);
  });
}

/** The published grid: three complexities, four factors, four strengths (lower ones for 120 activities). */
export function publishedGrid(activities: number): Omit<RandomProjectShape, 'seed'>[] {
  const strengths = activities >= 120 ? [0.1, 0.2, 0.3, 0.4, 0.5] : [0.2, 0.5, 0.7, 1];
  return [1.5, 1.8, 2.1].flatMap((networkComplexity) =>
    [0.25, 0.5, 0.75, 1].flatMap((resourceFactor) =>
      strengths.map((resourceStrength) => ({
        activities,
        networkComplexity,
        resourceFactor,
        resourceStrength,
      })),
    ),
  );
}
