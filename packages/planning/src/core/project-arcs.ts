// Precedences as one kind of constraint: a point (start or end) of `to` lies at least `lag` after a point of `from`.
// A greatest lag is the same constraint read backwards. What can be obeyed by placing `from` before `to` orders the
// list; the rest ("backward") limits how late an activity may go once its partner stands.
import type { Project } from '@gusset/contracts/planning';

export type Arc = {
  readonly from: number;
  readonly fromEnd: boolean;
  readonly to: number;
  readonly toEnd: boolean;
  readonly lag: number;
};

export type OrderedArcs = {
  readonly forward: readonly Arc[];
  readonly backward: readonly Arc[];
  /** All activities, each after what its forward arcs ask for; ties by place in the input. */
  readonly order: Int32Array;
};

/** Least distance from start to start that the arc asks for when both take their plain durations. */
export function startToStart(arc: Arc, duration: ArrayLike<number>): number {
  return arc.lag + (arc.fromEnd ? (duration[arc.from] ?? 0) : 0) - (arc.toEnd ? (duration[arc.to] ?? 0) : 0);
}

/** Arcs of the input; the indices are known to exist. */
export function arcsOf(
  project: Project,
  index: ReadonlyMap<string, number>,
): { least: Arc[]; greatest: Arc[] } {
  const least: Arc[] = [];
  const greatest: Arc[] = [];
  for (const precedence of project.precedences ?? []) {
    const from = index.get(precedence.from) ?? 0;
    const to = index.get(precedence.to) ?? 0;
    const type = precedence.type ?? 'FS';
    const fromEnd = type === 'FS' || type === 'FF';
    const toEnd = type === 'FF' || type === 'SF';
    least.push({ from, fromEnd, to, toEnd, lag: precedence.minLag ?? 0 });
    if (precedence.maxLag !== undefined) {
      greatest.push({ from: to, fromEnd: toEnd, to: from, toEnd: fromEnd, lag: -precedence.maxLag });
    }
  }
  return { least, greatest };
}

/** Splits the arcs into ordering and backward ones, or gives a cycle that no order can obey. */
export function orderArcs(
  least: readonly Arc[],
  greatest: readonly Arc[],
  duration: ArrayLike<number>,
): OrderedArcs | { readonly cycle: readonly number[] } {
  let forward = [...least];
  const backward = [...greatest];
  for (;;) {
    const sorted = topologicalOrder(forward, duration.length);
    if (sorted.cycle === null) return { forward, backward, order: sorted.order };
    const onCycle = sorted.cycle;
    const loosest = onCycle.reduce((a, b) => (startToStart(b, duration) < startToStart(a, duration) ? b : a));
    if (startToStart(loosest, duration) > 0) return { cycle: onCycle.map((arc) => arc.from) };
    forward = forward.filter((arc) => arc !== loosest);
    backward.push(loosest);
  }
}

/** Kahn's order, smallest index first; where a cycle stops it, the arcs of one cycle. */
function topologicalOrder(
  arcs: readonly Arc[],
  count: number,
): { readonly order: Int32Array; readonly cycle: readonly Arc[] | null } {
  const leaving: Arc[][] = Array.from({ length: count }, () => []);
  const waiting = new Int32Array(count);
  for (const arc of arcs) {
    leaving[arc.from]?.push(arc);
    waiting[arc.to] = (waiting[arc.to] ?? 0) + 1;
  }
  const order: number[] = [];
  for (let i = 0; i < count; i++) if (waiting[i] === 0) order.push(i);
  for (let done = 0; done < order.length; done++) {
    for (const arc of leaving[order[done] ?? 0] ?? []) {
      const left = (waiting[arc.to] ?? 0) - 1;
      waiting[arc.to] = left;
      if (left === 0) order.push(arc.to);
    }
  }
  if (order.length === count) return { order: Int32Array.from(order), cycle: null };
  return { order: new Int32Array(0), cycle: someCycle(arcs, waiting) };
}

/** Walks back along arcs between stopped activities until one comes round again. */
function someCycle(arcs: readonly Arc[], waiting: Int32Array): readonly Arc[] {
  const entering = new Map<number, Arc>();
  for (const arc of arcs) {
    if ((waiting[arc.from] ?? 0) > 0 && !entering.has(arc.to)) entering.set(arc.to, arc);
  }
  const seenAt = new Map<number, number>();
  const walked: Arc[] = [];
  let at = waiting.findIndex((left) => left > 0);
  for (;;) {
    const seen = seenAt.get(at);
    if (seen !== undefined) return walked.slice(seen).reverse();
    seenAt.set(at, walked.length);
    const arc = entering.get(at);
    if (arc === undefined) return walked; // cannot be: a stopped activity waits for a stopped one
    walked.push(arc);
    at = arc.from;
  }
}

/** Stands for "no path": far below any distance, far above overflow. */
export const NO_PATH = -1_000_000_000;

/**
 * Longest start-to-start distance from each activity to each other, row by row; null where a cycle is longer than 0,
 * so that no schedule exists. Queue-based longest paths, one source at a time.
 */
export function startDistances(arcs: readonly Arc[], duration: ArrayLike<number>): Int32Array | null {
  const count = duration.length;
  const leaving: { to: number; weight: number }[][] = Array.from({ length: count }, () => []);
  for (const arc of arcs) {
    leaving[arc.from]?.push({ to: arc.to, weight: startToStart(arc, duration) });
  }
  const distance = new Int32Array(count * count).fill(NO_PATH);
  for (let source = 0; source < count; source++) {
    const row = distance.subarray(source * count, (source + 1) * count);
    const hops = new Int32Array(count);
    row[source] = 0;
    const queue = [source];
    for (let head = 0; head < queue.length; head++) {
      const at = queue[head] ?? 0;
      for (const { to, weight } of leaving[at] ?? []) {
        const reached = (row[at] ?? 0) + weight;
        if (reached <= (row[to] ?? 0)) continue;
        row[to] = reached;
        hops[to] = (hops[at] ?? 0) + 1;
        if ((hops[to] ?? 0) > count || to === source) return null;
        queue.push(to);
      }
    }
  }
  return distance;
}
