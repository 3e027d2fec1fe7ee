// A binary heap of (cost, vertex) in typed arrays; the same vertex may stand in it more than once.
import { longer } from './pose-tree.ts';

export class CostHeap {
  size = 0;
  private costs = new Float64Array(1 << 12);
  private items = new Int32Array(1 << 12);

  clear(): void {
    this.size = 0;
  }

  get leastCost(): number {
    return this.costs[0] as number;
  }

  push(cost: number, item: number): void {
    if (this.size === this.costs.length) {
      this.costs = longer(this.costs, new Float64Array(this.size * 2));
      this.items = longer(this.items, new Int32Array(this.size * 2));
    }
    const { costs, items } = this;
    let at = this.size++;
    while (at > 0) {
      const up = (at - 1) >> 1;
      if ((costs[up] as number) <= cost) break;
      costs[at] = costs[up] as number;
      items[at] = items[up] as number;
      at = up;
    }
    costs[at] = cost;
    items[at] = item;
  }

  /** The item of least cost; read `leastCost` before. */
  pop(): number {
    const { costs, items } = this;
    const top = items[0] as number;
    const size = --this.size;
    const cost = costs[size] as number;
    const item = items[size] as number;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= size) break;
      if (down + 1 < size && (costs[down + 1] as number) < (costs[down] as number)) down++;
      if ((costs[down] as number) >= cost) break;
      costs[at] = costs[down] as number;
      items[at] = items[down] as number;
      at = down;
    }
    costs[at] = cost;
    items[at] = item;
    return top;
  }
}
