// Is there a way from a pose to wholly outside? Adaptive cells: a chain of free cells is a proved way, a wall of
// blocked cells round the start a proved no (Zhu and Latombe 1991). Only cells that could be part of a way are halved:
// those that lie on nearly the cheapest chain, counted from both ends.

import type { CellMap } from './cell-map.ts';
import { BLOCKED, CENTRE_OUTSIDE, FREE, MIXED } from './cell-state.ts';
import { CostHeap } from './cost-heap.ts';

export type WaySearch = {
  readonly outcome: 'way' | 'no-way' | 'undecided';
  /** Vertices from the start to one whose centre is wholly outside; empty unless there is a way. */
  readonly chain: readonly number[];
  readonly cells: number;
};

export type SearchLimits = {
  /** Cells whose points move less than this are not halved further, mm. */
  readonly finestMm: number;
  readonly mostCells: number;
  readonly shouldStop: () => boolean;
};

/** A chain that needs a cell of the finest size is as good as none. */
const HOPELESS = 1e9;
/** A cell is halved where it lies on a chain that is cheaper than the best one by less than this share of its own cost. */
const OWN_SHARE = 0.75;

/** `starts`: vertices that hold the pose (one for each layer it is in). */
export function searchWay(
  map: CellMap,
  startNode: () => number,
  layers: readonly number[],
  limits: SearchLimits,
): WaySearch {
  const runs = new CostRuns(map, limits);
  for (;;) {
    const best = runs.fromStart(layers.map((layer) => startNode() * map.layers + layer));
    const cells = map.tree.count;
    if (best === Number.POSITIVE_INFINITY) return { outcome: 'no-way', chain: [], cells };
    if (best === 0) return { outcome: 'way', chain: runs.chain(), cells };
    if (best >= HOPELESS || cells > limits.mostCells || limits.shouldStop())
      return { outcome: 'undecided', chain: [], cells };
    runs.fromOutside(best);
    if (runs.refine(best) === 0) return { outcome: 'undecided', chain: [], cells };
  }
}

class CostRuns {
  private readonly map: CellMap;
  private readonly finestLevel: number;
  /** What a cell of each level that isn't free costs: its side, in finest sides. */
  private readonly ownCosts: Float64Array;
  private readonly heap = new CostHeap();
  private fromS = new Float64Array(0);
  private fromG = new Float64Array(0);
  private before = new Int32Array(0);
  /** Vertices reached in this round, and of those the ones that may be outside. */
  private reached: number[] = [];
  private gates: number[] = [];
  private last = -1;

  constructor(map: CellMap, { finestMm }: SearchLimits) {
    this.map = map;
    let level = 0;
    while (map.tree.reachMm(level) > finestMm && level < 20) level++;
    this.finestLevel = level;
    this.ownCosts = Float64Array.from({ length: level + 1 }, (_, i) => 2 ** (level - i));
  }

  /** Cheapest chain to outside: 0 = all free, infinite = walled in. */
  fromStart(sources: readonly number[]): number {
    const { map, heap } = this;
    this.fit();
    heap.clear();
    this.reached = [];
    this.gates = [];
    this.last = -1;
    let best = Number.POSITIVE_INFINITY;
    for (const vertex of sources) this.reachS(vertex, 0, -1);
    while (heap.size > 0) {
      const cost = heap.leastCost;
      if (cost > best + this.ownCost(0)) break;
      const vertex = heap.pop();
      if (cost > (this.fromS[vertex] as number)) continue;
      const node = Math.floor(vertex / map.layers);
      const out = this.gateCost(vertex, node);
      if (out < Number.POSITIVE_INFINITY) {
        this.gates.push(vertex);
        if (cost + out < best) {
          best = cost + out;
          this.last = vertex;
          if (best === 0) return 0;
        }
      }
      if (out === 0) continue; // outside already: nothing is gained by going on
      this.expand(vertex, node, (next) => this.reachS(next, cost, vertex));
    }
    return best;
  }

  /** The same from outside, through what the first run reached, up to where it is free to the start. */
  fromOutside(best: number): void {
    const { heap } = this;
    heap.clear();
    for (const vertex of this.reached) this.fromG[vertex] = Number.POSITIVE_INFINITY;
    for (const vertex of this.gates) {
      const node = Math.floor(vertex / this.map.layers);
      const cost = this.gateCost(vertex, node) + this.cost(vertex, node);
      if (cost < (this.fromG[vertex] as number)) {
        this.fromG[vertex] = cost;
        heap.push(cost, vertex);
      }
    }
    while (heap.size > 0) {
      const cost = heap.leastCost;
      if (cost > best + this.ownCost(0)) break;
      const vertex = heap.pop();
      if (cost > (this.fromG[vertex] as number) || this.fromS[vertex] === 0) continue;
      this.expand(vertex, Math.floor(vertex / this.map.layers), (next) => {
        if ((this.fromS[next] as number) === Number.POSITIVE_INFINITY) return;
        const total = cost + this.cost(next, Math.floor(next / this.map.layers));
        if (total >= (this.fromG[next] as number)) return;
        this.fromG[next] = total;
        heap.push(total, next);
      });
    }
  }

  /** Halves what lies on nearly the cheapest chain; how many cells. */
  refine(best: number): number {
    const { map } = this;
    const chosen = new Set<number>();
    for (const vertex of this.reached) {
      const node = Math.floor(vertex / map.layers);
      const level = map.tree.level[node] as number;
      if (level >= this.finestLevel || !map.tree.isLeaf(node)) continue;
      const isGate = map.stateOf(vertex) === FREE && this.gateCost(vertex, node) > 0;
      if (
        map.stateOf(vertex) !== MIXED &&
        !(isGate && this.gateCost(vertex, node) < Number.POSITIVE_INFINITY)
      )
        continue;
      const own = this.ownCost(level);
      const through = (this.fromS[vertex] as number) + (this.fromG[vertex] as number) - own;
      if (through < best + OWN_SHARE * own) chosen.add(node);
    }
    for (const node of chosen) map.split(node);
    return chosen.size;
  }

  /** From the start to outside, along the last run. */
  chain(): number[] {
    const chain: number[] = [];
    for (let at = this.last; at >= 0; at = this.before[at] as number) chain.push(at);
    return chain.reverse();
  }

  private reachS(vertex: number, cost: number, from: number): void {
    const total = cost + this.cost(vertex, Math.floor(vertex / this.map.layers));
    if (total >= (this.fromS[vertex] as number)) return;
    if (this.fromS[vertex] === Number.POSITIVE_INFINITY) this.reached.push(vertex);
    this.fromS[vertex] = total;
    this.before[vertex] = from;
    this.heap.push(total, vertex);
  }

  private expand(vertex: number, node: number, reach: (next: number) => void): void {
    const { map } = this;
    const layer = vertex - node * map.layers;
    const count = map.tree.neighbours(node);
    for (let i = 0; i < count; i++) {
      const next = (map.tree.found[i] as number) * map.layers + layer;
      if (map.stateOf(next) !== BLOCKED) reach(next);
    }
    if (layer > 0 && map.stateOf(vertex - 1) !== BLOCKED) reach(vertex - 1);
    if (layer + 1 < map.layers && map.stateOf(vertex + 1) !== BLOCKED) reach(vertex + 1);
  }

  private cost(vertex: number, node: number): number {
    if (this.map.stateOf(vertex) === FREE) return 0;
    const level = this.map.tree.level[node] as number;
    return level >= this.finestLevel ? HOPELESS : this.ownCost(level);
  }

  /** What it takes to be outside from here: nothing where the centre is, a cell's own size where that is not shown. */
  private gateCost(vertex: number, node: number): number {
    const { map } = this;
    if (map.isNowhereOutside(node)) return Number.POSITIVE_INFINITY;
    if (map.outsideOf(node) === CENTRE_OUTSIDE && map.stateOf(vertex) === FREE) return 0;
    const level = map.tree.level[node] as number;
    return level >= this.finestLevel ? HOPELESS : this.ownCost(level);
  }

  private ownCost(level: number): number {
    return this.ownCosts[level] as number;
  }

  private fit(): void {
    const size = this.map.tree.count * this.map.layers;
    if (this.fromS.length < size) {
      this.fromS = new Float64Array(size * 2);
      this.fromG = new Float64Array(size * 2);
      this.before = new Int32Array(size * 2);
    }
    this.fromS.fill(Number.POSITIVE_INFINITY, 0, size);
  }
}
