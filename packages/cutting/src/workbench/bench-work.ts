// What is left for router and drill once the blanks are cut.
import type {
  BenchWork,
  CutListRow,
  DrilledHoles,
  FlushTrim,
  RoutedCentre,
  RoutedCircle,
  RoutedOpening,
  RoutedRebate,
  RouterTools,
} from '@gusset/contracts/cutting';
import type { PanelHole } from '@gusset/contracts/panel';

/** Up to here a hole is drilled, from here it is routed about a pivot. */
const LARGEST_DRILL_MM = 20;
/** Centres this close are one: a recess and its cut-out. */
const SAME_CENTRE_MM = 0.01;
/** Three holes fix a circle. */
const LEAST_OF_A_RING = 3;
const ON_RING_MM = 0.05;

type Circle = Extract<PanelHole, { shape: 'circle' }>;
type Place = Pick<RoutedCentre, 'panelId' | 'mark' | 'pieces'>;

/**
 * All openings, holes, steps and flush trims of these rows, by panel. Positions are from each panel's datum corner, the
 * outline's (0, 0). Circles of one centre are cut shallow ones first: a recess before the hole takes its middle away.
 */
export function benchWork(rows: readonly CutListRow[], tools: RouterTools): BenchWork {
  return {
    circles: rows.flatMap((row) => routedCentres(row, tools)),
    openings: rows.flatMap((row) => routedOpenings(row, tools)),
    rebates: rows.flatMap((row) => rebates(row, tools)),
    holes: rows.flatMap(drilledHoles),
    flushTrims: rows.flatMap(flushTrims),
  };
}

function placeOf({ panelId, mark, quantity }: CutListRow): Place {
  return { panelId, mark, pieces: quantity };
}

function passesFor(row: CutListRow, depthMm: number | null, { passMm }: RouterTools): number {
  return Math.max(1, Math.ceil((depthMm ?? row.thicknessMm) / passMm - 1e-9));
}

function circlesOf({ holes }: CutListRow, isRouted: boolean): readonly Circle[] {
  return holes.flatMap((hole) =>
    hole.shape === 'circle' && hole.diameterMm > LARGEST_DRILL_MM === isRouted ? [hole] : [],
  );
}

function routedCentres(row: CutListRow, tools: RouterTools): readonly RoutedCentre[] {
  const groups: Circle[][] = [];
  for (const hole of circlesOf(row, true)) {
    const group = groups.find(
      ([first]) =>
        first !== undefined &&
        Math.hypot(first.centreXMm - hole.centreXMm, first.centreYMm - hole.centreYMm) < SAME_CENTRE_MM,
    );
    if (group === undefined) groups.push([hole]);
    else group.push(hole);
  }
  return groups.flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const circles = group
      .toSorted((one, two) => depthOf(one) - depthOf(two) || two.diameterMm - one.diameterMm)
      .map((hole) => routedCircle(row, hole, tools));
    return [{ ...placeOf(row), xMm: first.centreXMm, yMm: first.centreYMm, circles }];
  });
}

function depthOf({ depthMm }: Circle): number {
  return depthMm ?? Number.POSITIVE_INFINITY;
}

/** The bit runs inside the circle; the bush runs inside the template, larger by what bush and bit differ. */
function routedCircle(row: CutListRow, hole: Circle, tools: RouterTools): RoutedCircle {
  const { purpose, diameterMm, depthMm } = hole;
  const { bitDiaMm, bushDiaMm } = tools;
  return {
    purpose,
    diameterMm,
    depthMm,
    passes: passesFor(row, depthMm, tools),
    pivotMm: Math.max(0, (diameterMm - bitDiaMm) / 2),
    templateDiaMm: bushDiaMm === null ? null : diameterMm + bushDiaMm - bitDiaMm,
  };
}

function routedOpenings(row: CutListRow, tools: RouterTools): readonly RoutedOpening[] {
  const { bitDiaMm, bushDiaMm } = tools;
  return row.holes.flatMap((hole): readonly RoutedOpening[] => {
    if (hole.shape !== 'rectangle') return [];
    const larger = bushDiaMm === null ? null : bushDiaMm - bitDiaMm;
    return [
      {
        ...placeOf(row),
        purpose: hole.purpose,
        xMm: hole.centreXMm,
        yMm: hole.centreYMm,
        lengthMm: hole.widthMm,
        widthMm: hole.heightMm,
        cornerRadiusMm: hole.cornerRadiusMm,
        isCornerBelowBit: hole.cornerRadiusMm < bitDiaMm / 2,
        depthMm: hole.depthMm,
        passes: passesFor(row, hole.depthMm, tools),
        templateMm:
          larger === null ? null : { lengthMm: hole.widthMm + larger, widthMm: hole.heightMm + larger },
      },
    ];
  });
}

function rebates(row: CutListRow, tools: RouterTools): readonly RoutedRebate[] {
  return row.edges.flatMap(({ rebate, lengthMm }, edge): readonly RoutedRebate[] =>
    rebate === undefined
      ? []
      : [{ ...placeOf(row), edge, lengthMm, ...rebate, passes: passesFor(row, rebate.depthMm, tools) }],
  );
}

function flushTrims(row: CutListRow): readonly FlushTrim[] {
  return row.edges.flatMap(({ oversizeMm, lengthMm }, edge): readonly FlushTrim[] =>
    oversizeMm === 0 ? [] : [{ ...placeOf(row), edge, lengthMm, oversizeMm }],
  );
}

/** Holes of one size and purpose; bolts of one driver lie on a circle about its centre. */
function drilledHoles(row: CutListRow): readonly DrilledHoles[] {
  const groups = Map.groupBy(
    circlesOf(row, false),
    (hole) => `${ringOf(hole.purpose)} ${hole.diameterMm} ${hole.depthMm}`,
  );
  return [...groups.values()].flatMap((holes): readonly DrilledHoles[] => {
    const [first] = holes;
    if (first === undefined) return [];
    return [
      {
        ...placeOf(row),
        purpose: ringOf(first.purpose),
        diameterMm: first.diameterMm,
        depthMm: first.depthMm,
        ring: ringThrough(holes),
        centres: holes.map(({ centreXMm, centreYMm }) => ({ xMm: centreXMm, yMm: centreYMm })),
      },
    ];
  });
}

/** `bolt 3 of driver 1` and its sisters are the bolts of driver 1. */
function ringOf(purpose: string): string {
  return purpose.replace(/^(\S+) \d+ of /u, '$1s of ');
}

function ringThrough(holes: readonly Circle[]): DrilledHoles['ring'] {
  if (holes.length < LEAST_OF_A_RING) return null;
  const xMm = holes.reduce((sum, hole) => sum + hole.centreXMm, 0) / holes.length;
  const yMm = holes.reduce((sum, hole) => sum + hole.centreYMm, 0) / holes.length;
  const radii = holes.map((hole) => Math.hypot(hole.centreXMm - xMm, hole.centreYMm - yMm));
  const radiusMm = radii.reduce((sum, radius) => sum + radius, 0) / radii.length;
  if (radiusMm === 0 || radii.some((radius) => Math.abs(radius - radiusMm) > ON_RING_MM)) return null;
  return { xMm, yMm, diameterMm: 2 * radiusMm };
}
