// From above, cut at half the height of the box: sides of the car, boards, drivers behind the baffle, braces.
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { CavityResult } from '@gusset/contracts/cargo';
import type { PointMm, PolygonMm, Pose } from '@gusset/contracts/geometry';
import {
  boxPlan,
  cavityPlan,
  type DrawingView,
  type DrawnDimension,
  type DrawnEdge,
  hatch,
  placeInFrame,
  polygon,
  posed,
  SCREEN_VIEW,
  type Scene,
  type SceneItem,
} from '@gusset/drawings';
import { AT_ORIGIN, at, middleHeightMm, poseIn, rectangle, spanAt } from './box-outline.ts';
import { clearanceNote } from './box-section-scene.ts';

const OFFSET_PT = 26;

export function boxPlanScene(
  result: BoxSheetResult,
  cavity: CavityResult | null,
  partial: Partial<DrawingView> = {},
): Scene {
  const view = { ...SCREEN_VIEW, ...partial };
  if (cavity === null || result.place === null) return alone(result, view);
  const edges = sidesAt(cavity, middleHeightMm(result, poseIn(result)));
  return edges.length === 0 ? alone(result, view) : inTheCar(result, cavity, edges, view);
}

type Cut = {
  readonly boards: readonly PolygonMm[];
  readonly hidden: readonly PolygonMm[];
  readonly outer: PolygonMm;
  readonly width: { readonly from: PointMm; readonly to: PointMm };
};

function cutOf(result: BoxSheetResult, pose: Pose): Cut {
  const { box, design } = result;
  const yMm = middleHeightMm(result, pose);
  const [xFrom, xTo] = spanAt(posed(box.section.wood, pose), yMm) ?? [0, 0];
  const [inFrom, inTo] = spanAt(posed(box.section.inner, pose), yMm) ?? [xFrom, xTo];
  const half = box.sizes.wood.widthMm / 2;
  const [zFrom, zTo] = [pose.zMm - half, pose.zMm + half];
  const { inner } = box.plan;
  const [zInFrom, zInTo] = [inner.zMinMm + pose.zMm, inner.zMaxMm + pose.zMm];
  const boards = [
    rectangle(xFrom, xTo, zFrom, zInFrom),
    rectangle(xFrom, inFrom, zInFrom, zInTo),
    rectangle(xFrom, xTo, zInTo, zTo),
    rectangle(inTo, xTo, zInFrom, zInTo),
    ...dividers(result, pose, [inFrom, inTo], [zInFrom, zInTo]),
  ];
  const brace = (design.stock.brace ?? design.stock.carcass).thicknessMm / 2;
  const braces = box.braces.zMm.map((zMm) =>
    rectangle(inFrom, inTo, zMm + pose.zMm - brace, zMm + pose.zMm + brace),
  );
  const depthMm = design.drivers?.body.mountingDepthMm ?? 0;
  const drivers = box.drivers.map(({ seatMm, axis, cutoutDiaMm }) => {
    const ends = posed(
      [at(seatMm.x, seatMm.y), at(seatMm.x - axis.x * depthMm, seatMm.y - axis.y * depthMm)],
      pose,
    );
    const xs = ends.map(({ xMm }) => xMm);
    const z = seatMm.z + pose.zMm;
    return rectangle(Math.min(...xs), Math.max(...xs), z - cutoutDiaMm / 2, z + cutoutDiaMm / 2);
  });
  return {
    boards,
    hidden: [...braces, ...drivers],
    outer: rectangle(xFrom, xTo, zFrom, zTo),
    width: { from: at(xTo, zTo), to: at(xTo, zFrom) },
  };
}

/** A divider along the width where the cut meets it, or one that stands across it from end to end. */
function dividers(
  result: BoxSheetResult,
  pose: Pose,
  [inFrom, inTo]: readonly [number, number],
  [zFrom, zTo]: readonly [number, number],
): PolygonMm[] {
  return result.box.bodies.flatMap(({ role, section, placement, thicknessMm }): PolygonMm[] => {
    if (role !== 'divider') return [];
    if (section !== null) {
      const span = spanAt(posed(section, pose), middleHeightMm(result, pose));
      return span === null ? [] : [rectangle(span[0], span[1], zFrom, zTo)];
    }
    const outer = placement.originMm.z + pose.zMm;
    const inner = outer - placement.normal.z * thicknessMm;
    return [rectangle(inFrom, inTo, Math.min(outer, inner), Math.max(outer, inner))];
  });
}

const widthOf = ({ width }: Cut): DrawnDimension => ({
  ...width,
  text: null,
  offsetPt: OFFSET_PT,
  key: 'outside.width',
  failing: false,
});

const words = (result: BoxSheetResult, { formatLength }: DrawingView) => ({
  title: 'Plan, cut at half height',
  description: `Box ${formatLength(result.box.sizes.carcass.widthMm)} wide, seen from above.`,
});

function alone(result: BoxSheetResult, view: DrawingView): Scene {
  const cut = cutOf(result, AT_ORIGIN);
  return boxPlan(
    {
      ...words(result, view),
      parts: [
        ...cut.boards.map((outline) => ({ mark: null, outline, standing: 'cut' as const })),
        ...cut.hidden.map((outline) => ({ mark: null, outline, standing: 'hidden' as const })),
      ],
      centreLines: [],
      dimensions: [widthOf(cut)],
      notes: [],
    },
    view,
  );
}

function inTheCar(
  result: BoxSheetResult,
  cavity: CavityResult,
  edges: readonly DrawnEdge[],
  view: DrawingView,
): Scene {
  const { opening } = cavity;
  const cut = cutOf(result, poseIn(result));
  const end = Math.max(...edges.flatMap(({ from, to }) => [from.xMm, to.xMm]));
  const clearances = result.place?.placement.clearances ?? [];
  // Several surfaces may bound a side (an arch, the wall above it): the nearest says it all.
  const sides = (['left', 'right'] as const).flatMap((side) =>
    clearances
      .filter(({ surface }) => surface.type === 'side' && surface.side === side)
      .sort((a, b) => a.clearanceMm - b.clearanceMm)
      .slice(0, 1),
  );
  const scene = cavityPlan(
    {
      ...words(result, view),
      edges,
      obstructions: [],
      opening: {
        from: at(end, -opening.widthMm / 2),
        to: at(end, opening.widthMm / 2),
        text: `opening ${view.formatLength(opening.widthMm)}`,
      },
      labels: [],
      box: { outer: cut.outer, inner: null, pose: AT_ORIGIN },
      wayOut: null,
      clearances: sides.map((clearance) => {
        const [onBox, onSurface] = clearance.at;
        const note = clearanceNote(clearance, view, false);
        return {
          ...note,
          text: [note.text[0] ?? '', `${clearance.surface.side ?? 'one'} side`],
          from: at(onBox.xMm, onBox.zMm),
          to: at(onSurface.xMm, onSurface.zMm),
        };
      }),
      dimensions: [widthOf(cut)],
    },
    view,
  );
  const { world } = scene;
  if (world === null) return scene;
  const place = (ring: PolygonMm) => ring.map((point) => placeInFrame(world, point));
  const items: SceneItem[] = [
    ...cut.boards.flatMap((ring, index): SceneItem[] => [
      hatch([place(ring)], index % 2 === 0 ? 'panel' : 'counter-panel'),
      polygon(place(ring), 'thin'),
    ]),
    ...cut.hidden.map((ring) => polygon(place(ring), 'hidden')),
  ];
  const boxAt = scene.layers.findIndex(({ id }) => id === 'box');
  return {
    ...scene,
    layers: [...scene.layers.slice(0, boxAt + 1), { id: 'boards', items }, ...scene.layers.slice(boxAt + 1)],
  };
}

/** The sides of the space along a level line, narrower where an arch stands; open at the end of the way out. */
export function sidesAt(cavity: CavityResult, yMm: number): readonly DrawnEdge[] {
  const whole = spanAt(cavity.polygon, yMm);
  if (whole === null) return [];
  const slabs = cavity.widthSlabs.flatMap((slab) => {
    const span = spanAt(slab.polygon, yMm);
    return span === null ? [] : [{ span, zMinMm: slab.zMinMm, zMaxMm: slab.zMaxMm }];
  });
  const breaks = [...whole, ...slabs.flatMap(({ span }) => span)]
    .filter((x) => x >= whole[0] && x <= whole[1])
    .sort((a, b) => a - b);
  const stretches = breaks.slice(1).flatMap((to, index) => {
    const from = breaks[index] ?? to;
    const here = slabs.filter(({ span }) => span[0] < (from + to) / 2 && span[1] > (from + to) / 2);
    if (to - from < 1 || here.length === 0) return [];
    return [
      {
        from,
        to,
        low: Math.max(...here.map((slab) => slab.zMinMm)),
        high: Math.min(...here.map((slab) => slab.zMaxMm)),
      },
    ];
  });
  const first = stretches[0];
  const last = stretches.at(-1);
  if (first === undefined || last === undefined) return [];
  const right = stretches.flatMap(({ from, to, low }) => [at(from, low), at(to, low)]);
  const left = [...stretches].reverse().flatMap(({ from, to, high }) => [at(to, high), at(from, high)]);
  const ring = [...right, ...left].filter(
    (point, index, all) => !isSame(point, all[(index + all.length - 1) % all.length]),
  );
  return ring.map((from, index): DrawnEdge => {
    const to = ring[(index + 1) % ring.length] ?? from;
    const isEnd = from.xMm === last.to && to.xMm === last.to;
    return { from, to, name: isEnd ? 'Opening' : 'Side', kind: isEnd ? 'open' : 'rigid' };
  });
}

const isSame = (a: PointMm, b: PointMm | undefined) => b !== undefined && a.xMm === b.xMm && a.yMm === b.yMm;
