// Cells of (x, y, theta), halved in all three at once where it matters. Numbers in typed arrays, eight children side by
// side: no object per cell.
import type { Bounds } from '../plane/polygon.ts';

export type TreeExtent = {
  /** Where the centre of the body's circle can be, mm. */
  readonly bounds: Bounds;
  readonly thetaFromRad: number;
  /** A whole turn joins its ends. */
  readonly thetaSpanRad: number;
  readonly isWholeTurn: boolean;
  readonly radiusMm: number;
};

const ROOTS_ALONG = 16;
/** Turning by a root cell's share moves the rim of the body about as far as its side: one halving serves both. */
const RIM_PER_SIDE = 1.4;
const FIRST_CAPACITY = 1 << 14;
const FACES = 6;

export class PoseTree {
  readonly rootSideMm: number;
  readonly rootsX: number;
  readonly rootsY: number;
  readonly rootsT: number;
  readonly rootThetaRad: number;
  count = 0;
  child = new Int32Array(FIRST_CAPACITY);
  level = new Uint8Array(FIRST_CAPACITY);
  ix = new Int32Array(FIRST_CAPACITY);
  iy = new Int32Array(FIRST_CAPACITY);
  it = new Int32Array(FIRST_CAPACITY);
  /** Leaves across a face, filled by `neighbours`. */
  readonly found = new Int32Array(1 << 15);
  private readonly stack = new Int32Array(1 << 12);
  readonly extent: TreeExtent;

  constructor(extent: TreeExtent) {
    this.extent = extent;
    const { xMinMm, xMaxMm, yMinMm, yMaxMm } = extent.bounds;
    const [width, height] = [Math.max(xMaxMm - xMinMm, 1), Math.max(yMaxMm - yMinMm, 1)];
    this.rootSideMm = Math.max(width, height) / ROOTS_ALONG;
    this.rootsX = Math.max(1, Math.ceil(width / this.rootSideMm - 1e-9));
    this.rootsY = Math.max(1, Math.ceil(height / this.rootSideMm - 1e-9));
    const wanted = (RIM_PER_SIDE * this.rootSideMm) / Math.max(extent.radiusMm, 1);
    this.rootsT = Math.max(extent.isWholeTurn ? 3 : 1, Math.ceil(extent.thetaSpanRad / wanted));
    this.rootThetaRad = extent.thetaSpanRad / this.rootsT;
    for (let t = 0; t < this.rootsT; t++)
      for (let y = 0; y < this.rootsY; y++) for (let x = 0; x < this.rootsX; x++) this.add(0, x, y, t);
  }

  sideMm(level: number): number {
    return this.rootSideMm / 2 ** level;
  }

  thetaRad(level: number): number {
    return this.rootThetaRad / 2 ** level;
  }

  /** How far a body point can be from where it is at the centre of a cell of this level, mm. */
  reachMm(level: number): number {
    return this.sideMm(level) * Math.SQRT1_2 + (this.extent.radiusMm * this.thetaRad(level)) / 2;
  }

  centreX(node: number): number {
    return (
      this.extent.bounds.xMinMm + ((this.ix[node] as number) + 0.5) * this.sideMm(this.level[node] as number)
    );
  }

  centreY(node: number): number {
    return (
      this.extent.bounds.yMinMm + ((this.iy[node] as number) + 0.5) * this.sideMm(this.level[node] as number)
    );
  }

  centreTheta(node: number): number {
    return (
      this.extent.thetaFromRad + ((this.it[node] as number) + 0.5) * this.thetaRad(this.level[node] as number)
    );
  }

  isLeaf(node: number): boolean {
    return (this.child[node] as number) < 0;
  }

  /** Makes the eight children; the first one's number. */
  split(node: number): number {
    const first = this.count;
    const level = (this.level[node] as number) + 1;
    const [x, y, t] = [
      (this.ix[node] as number) * 2,
      (this.iy[node] as number) * 2,
      (this.it[node] as number) * 2,
    ];
    for (let k = 0; k < 8; k++) this.add(level, x + (k & 1), y + ((k >> 1) & 1), t + (k >> 2));
    this.child[node] = first;
    return first;
  }

  /** The leaf that holds a pose; -1 outside of the extent. */
  leafAt(x: number, y: number, theta: number): number {
    const { bounds, thetaFromRad, thetaSpanRad, isWholeTurn } = this.extent;
    const turn = isWholeTurn
      ? theta - Math.floor((theta - thetaFromRad) / thetaSpanRad) * thetaSpanRad
      : theta;
    let fx = (x - bounds.xMinMm) / this.rootSideMm;
    let fy = (y - bounds.yMinMm) / this.rootSideMm;
    let ft = (turn - thetaFromRad) / this.rootThetaRad;
    if (fx < 0 || fy < 0 || ft < 0 || fx >= this.rootsX || fy >= this.rootsY || ft > this.rootsT) return -1;
    ft = Math.min(ft, this.rootsT - 1e-12);
    let [cx, cy, ct] = [Math.floor(fx), Math.floor(fy), Math.floor(ft)];
    let node = this.root(cx, cy, ct);
    while ((this.child[node] as number) >= 0) {
      [fx, fy, ft] = [(fx - cx) * 2, (fy - cy) * 2, (ft - ct) * 2];
      [cx, cy, ct] = [fx >= 1 ? 1 : 0, fy >= 1 ? 1 : 0, ft >= 1 ? 1 : 0];
      node = (this.child[node] as number) + cx + 2 * cy + 4 * ct;
    }
    return node;
  }

  /** Writes all leaves that share a piece of a face with this one to `found`; how many. */
  neighbours(node: number): number {
    let count = 0;
    for (let face = 0; face < FACES; face++) count = this.across(node, face, count);
    return count;
  }

  private across(node: number, face: number, from: number): number {
    const level = this.level[node] as number;
    const axis = face >> 1;
    const step = (face & 1) * 2 - 1;
    let x = this.ix[node] as number;
    let y = this.iy[node] as number;
    let t = this.it[node] as number;
    if (axis === 0) x += step;
    else if (axis === 1) y += step;
    else t += step;
    // Half of all faces lie between children of one cell, which stand side by side.
    const bit = 1 << axis;
    const along = axis === 0 ? x : axis === 1 ? y : t;
    if (level > 0 && (along ^ (along - step)) === 1) {
      const sibling = node + ((along & 1) === 0 ? -bit : bit);
      if ((this.child[sibling] as number) < 0) {
        this.found[from] = sibling;
        return from + 1;
      }
      return this.leavesOnFace(sibling, axis, step > 0 ? 0 : 1, from);
    }
    if (x < 0 || y < 0 || x >> level >= this.rootsX || y >> level >= this.rootsY) return from;
    const turns = this.rootsT << level;
    if (t < 0 || t >= turns) {
      if (!this.extent.isWholeTurn) return from;
      t = t < 0 ? t + turns : t - turns;
    }
    let other = this.root(x >> level, y >> level, t >> level);
    for (let k = level - 1; k >= 0 && (this.child[other] as number) >= 0; k--) {
      other = (this.child[other] as number) + ((x >> k) & 1) + 2 * ((y >> k) & 1) + 4 * ((t >> k) & 1);
    }
    if ((this.child[other] as number) < 0) {
      this.found[from] = other;
      return from + 1;
    }
    return this.leavesOnFace(other, axis, step > 0 ? 0 : 1, from);
  }

  /** Leaves under `node` that touch its low (0) or high (1) face across `axis`. */
  private leavesOnFace(node: number, axis: number, side: number, from: number): number {
    let count = from;
    let depth = 0;
    this.stack[depth++] = node;
    while (depth > 0) {
      const at = this.stack[--depth] as number;
      const first = this.child[at] as number;
      if (first < 0) {
        this.found[count++] = at;
        continue;
      }
      for (let k = 0; k < 8; k++) if (((k >> axis) & 1) === side) this.stack[depth++] = first + k;
    }
    return count;
  }

  private root(x: number, y: number, t: number): number {
    return (t * this.rootsY + y) * this.rootsX + x;
  }

  private add(level: number, x: number, y: number, t: number): void {
    if (this.count === this.child.length) this.grow();
    const node = this.count++;
    this.child[node] = -1;
    this.level[node] = level;
    this.ix[node] = x;
    this.iy[node] = y;
    this.it[node] = t;
  }

  private grow(): void {
    const size = this.child.length * 2;
    this.child = longer(this.child, new Int32Array(size));
    this.level = longer(this.level, new Uint8Array(size));
    this.ix = longer(this.ix, new Int32Array(size));
    this.iy = longer(this.iy, new Int32Array(size));
    this.it = longer(this.it, new Int32Array(size));
  }
}

export function longer<T extends { set(from: T): void }>(from: T, to: T): T {
  to.set(from);
  return to;
}
