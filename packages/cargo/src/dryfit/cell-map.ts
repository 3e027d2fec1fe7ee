// The tree together with what is known of each of its cells, in each sideways layer. A vertex is a cell in a layer.
import {
  BLOCKED,
  type CellPlace,
  type CellState,
  cellState,
  MIXED,
  type NearWalls,
  NOT_OUTSIDE,
  outsideState,
  UNKNOWN,
} from './cell-state.ts';
import type { FlatBody } from './flat-body.ts';
import type { FlatScene } from './flat-scene.ts';
import { longer, PoseTree, type TreeExtent } from './pose-tree.ts';

const OUTSIDE_UNKNOWN = 255;

export class CellMap {
  readonly tree: PoseTree;
  readonly layers: number;
  readonly scene: FlatScene;
  readonly body: FlatBody;
  readonly clearanceMm: number;
  private state: Uint8Array;
  private beyond: Uint8Array;
  private nearFrom: Int32Array;
  private nearTo: Int32Array;
  private readonly near: NearWalls = { list: new Int32Array(1 << 16), end: 0 };
  private readonly place: CellPlace = { x: 0, y: 0, cos: 1, sin: 0, shift: 0, turn: 0 };

  constructor(scene: FlatScene, body: FlatBody, clearanceMm: number, extent: TreeExtent) {
    this.scene = scene;
    this.body = body;
    this.clearanceMm = clearanceMm;
    this.tree = new PoseTree(extent);
    this.layers = scene.layers.length;
    const size = this.tree.child.length * this.layers;
    this.state = new Uint8Array(size);
    this.beyond = new Uint8Array(this.tree.child.length).fill(OUTSIDE_UNKNOWN);
    this.nearFrom = new Int32Array(size);
    this.nearTo = new Int32Array(size);
    for (const [layer, { walls }] of scene.layers.entries()) {
      const from = this.near.end;
      this.near.list.set(walls, from);
      this.near.end += walls.length;
      for (let node = 0; node < this.tree.count; node++)
        this.listFor(node * this.layers + layer, from, this.near.end);
    }
  }

  stateOf(vertex: number): CellState {
    const known = this.state[vertex] as CellState;
    if (known !== UNKNOWN) return known;
    const node = Math.floor(vertex / this.layers);
    const layer = this.scene.layers[vertex - node * this.layers];
    if (layer === undefined) return BLOCKED;
    this.placeAt(node);
    this.reserve(layer.walls.length);
    const begin = this.near.end;
    const from = this.nearFrom[vertex] as number;
    const to = this.nearTo[vertex] as number;
    const found = cellState(this.scene, layer, this.body, this.clearanceMm, this.place, this.near, from, to);
    this.state[vertex] = found;
    this.listFor(vertex, begin, this.near.end); // what its children look at
    return found;
  }

  outsideOf(node: number): number {
    const known = this.beyond[node] as number;
    if (known !== OUTSIDE_UNKNOWN) return known;
    this.placeAt(node);
    const found = outsideState(this.scene, this.body, this.place);
    this.beyond[node] = found;
    return found;
  }

  isNowhereOutside(node: number): boolean {
    return this.outsideOf(node) === NOT_OUTSIDE;
  }

  split(node: number): number {
    const first = this.tree.split(node);
    this.fit();
    for (let k = 0; k < 8; k++) {
      this.beyond[first + k] = (this.beyond[node] as number) === NOT_OUTSIDE ? NOT_OUTSIDE : OUTSIDE_UNKNOWN;
      for (let layer = 0; layer < this.layers; layer++) {
        const parent = node * this.layers + layer;
        const vertex = (first + k) * this.layers + layer;
        const known = this.state[parent] as CellState;
        // What holds for the whole cell holds for each part of it.
        this.state[vertex] = known === MIXED ? UNKNOWN : known;
        this.listFor(vertex, this.nearFrom[parent] as number, this.nearTo[parent] as number);
      }
    }
    return first;
  }

  private placeAt(node: number): void {
    const theta = this.tree.centreTheta(node);
    this.place.x = this.tree.centreX(node);
    this.place.y = this.tree.centreY(node);
    this.place.cos = Math.cos(theta);
    this.place.sin = Math.sin(theta);
    const level = this.tree.level[node] as number;
    this.place.shift = this.tree.sideMm(level) * Math.SQRT1_2;
    this.place.turn = this.tree.thetaRad(level) / 2;
  }

  private listFor(vertex: number, from: number, to: number): void {
    this.nearFrom[vertex] = from;
    this.nearTo[vertex] = to;
  }

  private reserve(more: number): void {
    if (this.near.end + more > this.near.list.length)
      this.near.list = longer(this.near.list, new Int32Array(this.near.list.length * 2));
  }

  private fit(): void {
    const size = this.tree.child.length;
    if (this.beyond.length === size) return;
    this.beyond = longer(this.beyond, new Uint8Array(size));
    this.state = longer(this.state, new Uint8Array(size * this.layers));
    this.nearFrom = longer(this.nearFrom, new Int32Array(size * this.layers));
    this.nearTo = longer(this.nearTo, new Int32Array(size * this.layers));
  }
}
