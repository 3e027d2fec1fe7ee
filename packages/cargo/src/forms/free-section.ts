// Sections of any shape: corners by x and y from one datum, or offsets square to a straightedge: on the floor from the back
// wall, or placed anywhere by its start and tilt.

import type { Dimension, FreeCorner, SectionForm, WallRole } from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import { signedAreaMm2 } from '../plane/polygon.ts';
import { plus, turned } from '../plane/vector.ts';
import {
  type Construction,
  type DimensionValues,
  type PlannedCorner,
  type PlannedWall,
  reader,
} from './construction.ts';
import { angleDimension, lengthDimension } from './dimension.ts';
import { straight } from './shared-walls.ts';
import { acrossAt, openingWidthComparison, wholeWidthSlab } from './widths.ts';

const MAX_CORNERS = 60;
const MAX_STATIONS = 80;
const REACH_MM = 5000;

function widthDimensions(): Dimension[] {
  return [
    lengthDimension({
      key: 'width',
      letter: 'W',
      label: 'Width of the space',
      hint: 'Trim to trim at the narrowest place.',
      view: 'plan',
      highlights: ['whole'],
      rangeMm: [50, 3000],
      typicalMm: 1000,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: 'openingWidth',
      letter: 'V',
      label: 'Opening, narrowest width',
      hint: 'Seal to seal at bottom, middle and top; enter the smallest.',
      view: 'plan',
      highlights: ['opening'],
      rangeMm: [50, 3000],
      typicalMm: 950,
    }),
  ];
}

/** Corners go round the section, either way; x from the foot of the back wall toward the opening, y up. */
export function freePointsForm(name: string, corners: readonly FreeCorner[]): SectionForm | Refusal {
  const ids = new Set(corners.map((corner) => corner.id));
  const openings = corners.filter((corner) => corner.role === 'opening').length;
  if (corners.length < 3 || corners.length > MAX_CORNERS) {
    return refuse('corners', {
      allowed: `3 to ${MAX_CORNERS}`,
      got: corners.length,
      why: 'a section needs an inside',
    });
  }
  if (ids.size !== corners.length) {
    return refuse('corners', { allowed: 'ids that differ', got: null, why: 'two corners have the same id' });
  }
  if (openings !== 1) {
    return refuse('corners', {
      allowed: 'one wall with the role opening',
      got: openings,
      why: 'a box has one way in',
    });
  }
  const dimensions = corners.flatMap((corner, index) => cornerDimensions(corner, index, corners.length));
  return {
    id: 'free-points',
    kind: 'free-section',
    name,
    construction: { by: 'points', corners },
    dimensions: [...dimensions, ...widthDimensions()],
  };
}

function cornerDimensions(corner: FreeCorner, index: number, count: number): Dimension[] {
  const turn = (2 * Math.PI * index) / count - (3 * Math.PI) / 4;
  const shared = {
    highlights: [corner.id],
    rangeMm: [-REACH_MM, REACH_MM],
    onSoftTrim: corner.surface === 'soft',
  } as const;
  const label = `Corner ${index + 1}, where ${corner.wallName.toLowerCase()} begins`;
  return [
    lengthDimension({
      ...shared,
      key: `${corner.id}-x`,
      letter: `${index + 1}x`,
      label: `${label}: along`,
      hint: 'Level from the foot of the back wall, plus toward the opening.',
      typicalMm: Math.round(400 + 400 * Math.cos(turn)),
    }),
    lengthDimension({
      ...shared,
      key: `${corner.id}-y`,
      letter: `${index + 1}y`,
      label: `${label}: up`,
      hint: 'Plumb from the floor at the back wall, plus upward.',
      typicalMm: Math.round(300 + 300 * Math.sin(turn)),
    }),
  ];
}

/** Offsets up and down, square to a straightedge that lies level from the back wall unless its place is taken too. */
export function stationsForm(name: string, stationsMm: readonly number[]): SectionForm | Refusal {
  if (stationsMm.length < 2 || stationsMm.length > MAX_STATIONS) {
    return refuse('stationsMm', {
      allowed: `2 to ${MAX_STATIONS}`,
      got: stationsMm.length,
      why: 'a line has two ends',
    });
  }
  const stuck = stationsMm.findIndex((it, index) => !(it > (stationsMm[index - 1] ?? -1)));
  if (stuck !== -1 || stationsMm[0] !== 0 || !stationsMm.every(Number.isFinite)) {
    return refuse(`stationsMm[${Math.max(0, stuck)}]`, {
      allowed: 'rising, from 0',
      got: stationsMm[Math.max(0, stuck)] ?? null,
      why: 'stations run from the back wall toward the opening',
    });
  }
  const last = stationsMm.length - 1;
  return {
    id: 'free-stations',
    kind: 'free-section',
    name,
    construction: { by: 'stations', stationsMm },
    dimensions: [
      ...stationsMm.flatMap((atMm, index) => stationDimensions(atMm, index, last)),
      lengthDimension({
        key: 'sillHeight',
        letter: 'S',
        label: 'Sill at the last station',
        hint: 'Straightedge up to the top of the lip, minus where the lip is lower. 0 where the floor runs straight out.',
        need: 'optional',
        tighter: 'larger',
        highlights: ['sill'],
        rangeMm: [-3000, 1500],
        typicalMm: 0,
        assumed: { valueMm: 0, plusMinusMm: 0, why: 'no sill' },
      }),
      ...lineDimensions(),
      ...widthDimensions(),
    ],
  };
}

/** Where the straightedge begins and how it is tilted: left out, at the foot of the back wall and level. */
function lineDimensions(): Dimension[] {
  const placed = { need: 'optional', highlights: ['back'] } as const;
  return [
    lengthDimension({
      ...placed,
      key: 'lineAlong',
      letter: 'Lx',
      label: 'Start of the straightedge, along',
      hint: 'Level from the foot of the back wall to its zero. Left out: it begins there.',
      rangeMm: [-REACH_MM, REACH_MM],
      typicalMm: 0,
    }),
    lengthDimension({
      ...placed,
      key: 'lineUp',
      letter: 'Ly',
      label: 'Start of the straightedge, up',
      hint: 'Plumb from the foot of the back wall to its zero. Left out: it lies on the floor.',
      rangeMm: [-REACH_MM, REACH_MM],
      typicalMm: 0,
    }),
    angleDimension({
      ...placed,
      key: 'lineTilt',
      letter: 'La',
      label: 'Straightedge, tilt from level',
      hint: 'Angle finder on it. Plus where its far end is higher. The offsets are square to it.',
      rangeDegrees: [-85, 85],
      typicalDegrees: 0,
    }),
  ];
}

function stationDimensions(atMm: number, index: number, last: number): Dimension[] {
  return [
    lengthDimension({
      key: `up-${index}`,
      letter: `${index + 1}u`,
      label: `Height at ${atMm} mm`,
      hint: 'Square from the straightedge up to the first thing that stops the rule.',
      highlights: [`roof-${Math.min(index, last - 1)}`],
      rangeMm: [0, 3000],
      typicalMm: 500,
      onSoftTrim: true,
    }),
    lengthDimension({
      key: `down-${index}`,
      letter: `${index + 1}d`,
      label: `Floor below the straightedge at ${atMm} mm`,
      hint: 'Square from the straightedge down to the floor.',
      need: 'optional',
      highlights: [`floor-${Math.min(index, last - 1)}`],
      rangeMm: [0, 3000],
      typicalMm: 0,
      onSoftTrim: true,
      assumed: { valueMm: 0, plusMinusMm: 3, why: 'floor lies against the straightedge' },
    }),
  ];
}

export function constructFreePoints(
  form: SectionForm,
  values: DimensionValues,
  free: readonly FreeCorner[],
): Construction {
  const read = reader(form, values);
  const placed: PlannedCorner[] = free.map(({ id }) => ({
    id,
    at: { xMm: read.of(`${id}-x`), yMm: read.of(`${id}-y`) },
  }));
  const named: PlannedWall[] = free.map(({ id, wallName, role, surface }) => ({
    id,
    name: wallName,
    role,
    surface,
  }));
  const clockwise = signedAreaMm2(placed.map((corner) => corner.at)) < 0;
  const anchors = placed.flatMap(({ id, at }) => [
    straight(`${id}-x`, { xMm: 0, yMm: at.yMm }, at),
    straight(`${id}-y`, { xMm: at.xMm, yMm: 0 }, at),
  ]);
  const outline = clockwise
    ? { corners: turnedRound(placed), walls: [...named].reverse() }
    : { corners: placed, walls: named };
  return {
    ...outline,
    ...freeWidths(form, values, outline.corners),
    anchors: [...anchors, ...widthAnchors(form, values, placed)],
  };
}

/** Same polygon the other way round, so that wall i (reversed too) again starts at corner i. */
function turnedRound(corners: readonly PlannedCorner[]): PlannedCorner[] {
  const [first, ...others] = corners;
  return first === undefined ? [] : [first, ...others.reverse()];
}

export function constructStations(
  form: SectionForm,
  values: DimensionValues,
  stationsMm: readonly number[],
): Construction {
  const read = reader(form, values);
  const start: PointMm = { xMm: read.ifKnown('lineAlong') ?? 0, yMm: read.ifKnown('lineUp') ?? 0 };
  const tiltRad = read.ifKnown('lineTilt') ?? 0;
  const from = (alongMm: number, offMm: number): PointMm =>
    plus(start, turned({ xMm: alongMm, yMm: offMm }, tiltRad));
  const floor: PlannedCorner[] = stationsMm.map((atMm, i) => ({
    id: `down-${i}`,
    at: from(atMm, -read.of(`down-${i}`)),
  }));
  const roof: PlannedCorner[] = stationsMm.map((atMm, i) => ({
    id: `up-${i}`,
    at: from(atMm, read.of(`up-${i}`)),
  }));
  const endMm = stationsMm.at(-1) ?? 0;
  const lip: PlannedCorner = { id: 'lip', at: from(endMm, read.of('sillHeight')) };
  const between = stationsMm.slice(1).map((_, index) => index);
  const part = (id: string, name: string, role: WallRole): PlannedWall => ({
    id,
    name,
    role,
    surface: 'soft',
  });
  const walls: PlannedWall[] = [
    ...between.map((i) => part(`floor-${i}`, `Floor from ${stationsMm[i]} mm`, 'floor')),
    { id: 'sill', name: 'Sill', role: 'sill', surface: 'hard' },
    { id: 'opening', name: 'Opening', role: 'opening', surface: 'open' },
    ...[...between].reverse().map((i) => part(`roof-${i}`, `Roof from ${stationsMm[i]} mm`, 'roof')),
    part('back', 'Back wall', 'seat-back'),
  ];
  const corners = [...floor, lip, ...[...roof].reverse()];
  const anchors = stationsMm.flatMap((atMm, i) => [
    straight(`up-${i}`, from(atMm, 0), from(atMm, read.of(`up-${i}`))),
    straight(`down-${i}`, from(atMm, 0), from(atMm, -read.of(`down-${i}`))),
  ]);
  const levelAt = { xMm: start.xMm + Math.max(100, endMm / 3), yMm: start.yMm };
  return {
    corners,
    walls,
    ...freeWidths(form, values, corners),
    anchors: [
      ...anchors,
      straight('sillHeight', from(endMm, 0), lip.at),
      straight('lineAlong', { xMm: 0, yMm: start.yMm }, start),
      straight('lineUp', { xMm: start.xMm, yMm: 0 }, start),
      {
        key: 'lineTilt',
        view: 'section',
        from: levelAt,
        to: from(levelAt.xMm - start.xMm, 0),
        vertex: start,
      },
      ...widthAnchors(form, values, corners),
    ],
  };
}

function freeWidths(
  form: SectionForm,
  values: DimensionValues,
  corners: readonly PlannedCorner[],
): Omit<Construction, 'corners' | 'walls' | 'anchors'> {
  const read = reader(form, values);
  const slab = wholeWidthSlab(
    'width',
    read,
    corners.map((corner) => corner.at),
  );
  const openingWidthMm = read.of('openingWidth');
  return {
    slabs: [slab],
    openingWidthMm,
    lidFrameMm: 0,
    derived: new Map(),
    comparisons: [openingWidthComparison('openingWidth', openingWidthMm, [slab])],
    impossible: [],
    findings: [],
  };
}

function widthAnchors(form: SectionForm, values: DimensionValues, corners: readonly PlannedCorner[]) {
  const read = reader(form, values);
  const alongMm = corners.map((corner) => corner.at.xMm);
  const nearMm = Math.min(...alongMm);
  const farMm = Math.max(...alongMm);
  return [
    acrossAt('width', (nearMm + farMm) / 2, read.of('width')),
    acrossAt('openingWidth', farMm, read.of('openingWidth')),
  ];
}
