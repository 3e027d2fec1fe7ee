// Lists of activities that obey the forward arcs: how a schedule becomes one, how two lists are crossed, how one is
// disturbed. S. Hartmann, "A competitive genetic algorithm for resource-constrained project scheduling", Naval
// Research Logistics 45 (1998) 733-750; F. Ballestín, V. Valls & S. Quintanilla, "A hybrid genetic algorithm for the
// resource-constrained project scheduling problem", Eur. J. Oper. Res. 185 (2008) 495-508.
import type { CompiledProject } from './compile-project.ts';
import type { SeededRandom } from './seeded-random.ts';

export type ListCraft = {
  /** Activities by the moments at which a schedule starts them. */
  byMoment(moment: ArrayLike<number>): Int32Array;
  /** Activities by rising key, each after its predecessors. */
  byKey(key: ArrayLike<number>): Int32Array;
  /** Mother's list to a first cut, then father's order of the rest to a second cut, then mother's of what is left. */
  cross(mother: Int32Array, father: Int32Array, random: SeededRandom): Int32Array;
  /** Swaps some neighbours that don't depend on each other, in place. */
  disturb(list: Int32Array, chance: number, random: SeededRandom): void;
  /** A random list that leans to small keys: a draw of few waiting activities, the smallest key wins. */
  draw(key: ArrayLike<number>, draws: number, random: SeededRandom): Int32Array;
};

export function listCraft(project: CompiledProject): ListCraft {
  const { order, forward } = project;
  const count = order.length;
  const rank = new Int32Array(count);
  for (let k = 0; k < count; k++) rank[order[k] ?? 0] = k;
  const after: number[][] = Array.from({ length: count }, () => []);
  const predecessors = new Int32Array(count);
  const tied = new Set<number>();
  for (const { from, to } of forward) {
    if (tied.has(from * count + to)) continue;
    tied.add(from * count + to);
    after[from]?.push(to);
    predecessors[to] = (predecessors[to] ?? 0) + 1;
  }
  const waitsFor = new Int32Array(count);
  const sortKeys = new Float64Array(count);
  const taken = new Uint8Array(count);

  /** Takes waiting activities one by one as `pick` says until all are listed. */
  const listed = (pick: (waiting: readonly number[]) => number): Int32Array => {
    waitsFor.set(predecessors);
    const waiting: number[] = [];
    for (const i of order) if (waitsFor[i] === 0) waiting.push(i);
    const list = new Int32Array(count);
    for (let k = 0; k < count; k++) {
      const at = pick(waiting);
      const i = waiting[at] ?? 0;
      waiting[at] = waiting[waiting.length - 1] ?? 0;
      waiting.pop();
      list[k] = i;
      for (const next of after[i] ?? []) {
        const left = (waitsFor[next] ?? 0) - 1;
        waitsFor[next] = left;
        if (left === 0) waiting.push(next);
      }
    }
    return list;
  };

  const obeys = (list: Int32Array): boolean => {
    const at = new Int32Array(count);
    for (let k = 0; k < count; k++) at[list[k] ?? 0] = k;
    return forward.every(({ from, to }) => (at[from] ?? 0) < (at[to] ?? 0));
  };
  const startsMayCross = forward.some(({ fromEnd, toEnd, lag }) => lag < 0 || toEnd || !fromEnd);

  const sorted = (key: ArrayLike<number>): Int32Array => {
    let least = 0;
    for (let i = 0; i < count; i++) least = Math.min(least, key[i] ?? 0);
    for (let i = 0; i < count; i++) sortKeys[i] = ((key[i] ?? 0) - least) * count + (rank[i] ?? 0);
    sortKeys.sort();
    const list = new Int32Array(count);
    for (let k = 0; k < count; k++) list[k] = order[(sortKeys[k] ?? 0) % count] ?? 0;
    return list;
  };

  return {
    byMoment(moment) {
      const list = sorted(moment);
      return !startsMayCross || obeys(list) ? list : listed((waiting) => smallest(waiting, moment, rank));
    },
    byKey(key) {
      return listed((waiting) => smallest(waiting, key, rank));
    },
    cross(mother, father, random) {
      const first = Math.floor(random() * count);
      const last = first + Math.floor(random() * (count - first + 1));
      const child = mother.slice(0, count);
      taken.fill(0);
      for (let k = 0; k < first; k++) taken[mother[k] ?? 0] = 1;
      let k = first;
      for (let f = 0; k < last; f++) {
        const i = father[f] ?? 0;
        if (taken[i] === 1) continue;
        taken[i] = 1;
        child[k++] = i;
      }
      for (const i of mother) if (taken[i] === 0) child[k++] = i;
      return child;
    },
    disturb(list, chance, random) {
      for (let k = 0; k + 1 < count; k++) {
        if (random() >= chance) continue;
        const a = list[k] ?? 0;
        const b = list[k + 1] ?? 0;
        if (tied.has(a * count + b)) continue;
        list[k] = b;
        list[k + 1] = a;
      }
    },
    draw(key, draws, random) {
      return listed((waiting) => {
        let best = Math.floor(random() * waiting.length);
        for (let draw = 1; draw < draws; draw++) {
          const other = Math.floor(random() * waiting.length);
          if ((key[waiting[other] ?? 0] ?? 0) < (key[waiting[best] ?? 0] ?? 0)) best = other;
        }
        return best;
      });
    },
  };
}

function smallest(waiting: readonly number[], key: ArrayLike<number>, rank: Int32Array): number {
  let best = 0;
  for (let k = 1; k < waiting.length; k++) {
    const a = waiting[k] ?? 0;
    const b = waiting[best] ?? 0;
    const before = (key[a] ?? 0) - (key[b] ?? 0) || (rank[a] ?? 0) - (rank[b] ?? 0);
    if (before < 0) best = k;
  }
  return best;
}
