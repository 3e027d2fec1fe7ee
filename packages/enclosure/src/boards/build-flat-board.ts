// A flat board besides the box, as one or two panels that cutting reads like any other. Planning aid only: what holds
// a board in a vehicle, and what is behind it, follows the vehicle's and the devices' makers.
import type { FlatBoardDesign, FlatBoardResult } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import type { Panel, PanelHole } from '@gusset/contracts/panel';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { boardFindings } from './board-checks.ts';
import {
  cornerOffcuts,
  type Patch,
  polygonPatch,
  type RoundedOutline,
  roundedOutline,
} from './rounded-outline.ts';

/** As many as a panel's contract takes. */
const MOST_HOLES = 60;

const round = (purpose: string, at: PointMm, diameterMm: number): PanelHole => ({
  shape: 'circle',
  purpose,
  centreXMm: at.xMm,
  centreYMm: at.yMm,
  diameterMm,
  depthMm: null,
});

function fixingHoles({ fixings, boltCircles }: FlatBoardDesign): PanelHole[] {
  const single = fixings.map(({ at, holeDiaMm }, index) => round(`fixing ${index + 1}`, at, holeDiaMm));
  const circles = boltCircles.flatMap(({ centre, diameterMm, count, holeDiaMm, startRad }, circle) =>
    Array.from({ length: count }, (_, index) => {
      const angle = startRad + (2 * Math.PI * index) / count;
      const at = {
        xMm: centre.xMm + (diameterMm / 2) * Math.cos(angle),
        yMm: centre.yMm + (diameterMm / 2) * Math.sin(angle),
      };
      return round(`bolt ${circle + 1}.${index + 1}`, at, holeDiaMm);
    }),
  );
  return [...single, ...circles];
}

function holePatch(hole: PanelHole): Patch {
  const centre = { xMm: hole.centreXMm, yMm: hole.centreYMm };
  if (hole.shape === 'circle') return { areaMm2: (Math.PI * hole.diameterMm ** 2) / 4, centre };
  const areaMm2 = hole.widthMm * hole.heightMm - (4 - Math.PI) * hole.cornerRadiusMm ** 2;
  return { areaMm2, centre };
}

/** Volumes with signs, each at its place: what is there, less what is cut away. */
type Amount = { readonly amount: number; readonly at: PointMm };

function woodMm3(outline: RoundedOutline, holes: readonly PanelHole[], thicknessMm: number): Amount[] {
  const whole = polygonPatch(outline.corners);
  return [
    { amount: whole.areaMm2 * thicknessMm, at: whole.centre },
    ...cornerOffcuts(outline).map(({ areaMm2, centre }) => ({ amount: -areaMm2 * thicknessMm, at: centre })),
    ...holes.map((hole) => {
      const { areaMm2, centre } = holePatch(hole);
      return { amount: -areaMm2 * Math.min(hole.depthMm ?? thicknessMm, thicknessMm), at: centre };
    }),
  ];
}

const total = (amounts: readonly Amount[]) => amounts.reduce((sum, { amount }) => sum + amount, 0);

function balance(amounts: readonly Amount[], fallback: PointMm): PointMm {
  const sum = total(amounts);
  if (sum <= 0) return fallback;
  const mean = (key: 'xMm' | 'yMm') => amounts.reduce((m, { amount, at }) => m + amount * at[key], 0) / sum;
  return { xMm: mean('xMm'), yMm: mean('yMm') };
}

function holeRefusal(openings: readonly PanelHole[], holeCount: number, thicknessMm: number): Refusal | null {
  if (holeCount > MOST_HOLES) {
    const why = 'more holes than one panel can carry on its drawing';
    return refuse('fixings', { allowed: `at most ${MOST_HOLES} holes in all`, got: holeCount, why });
  }
  for (const [index, hole] of openings.entries()) {
    if (hole.depthMm !== null && hole.depthMm >= thicknessMm) {
      return refuse(`openings[${index}].depthMm`, {
        allowed: `below ${thicknessMm} mm, or none for right through`,
        got: hole.depthMm,
        why: `the first layer is ${thicknessMm} mm thick`,
      });
    }
    if (hole.shape === 'rectangle' && 2 * hole.cornerRadiusMm > Math.min(hole.widthMm, hole.heightMm)) {
      return refuse(`openings[${index}].cornerRadiusMm`, {
        allowed: `at most ${Math.min(hole.widthMm, hole.heightMm) / 2} mm`,
        got: hole.cornerRadiusMm,
        why: 'the roundings of the opening run into each other',
      });
    }
  }
  return null;
}

/**
 * Panels, area, weight, balance and findings of a flat board. Holes that overlap are each taken off in full, so the
 * weight is then too low: `holes-meet` and `hole-off-board` say so. Refused: an outline that crosses itself, a radius
 * without room, a recess as deep as its layer, more than 60 holes.
 */
export function buildFlatBoard(design: FlatBoardDesign): FlatBoardResult | Refusal {
  const { stock, layers, openings, devices } = design;
  const { thicknessMm, densityKgM3 } = stock;
  if (thicknessMm <= 0) {
    const why = 'a board without thickness cannot be cut';
    return refuse('stock.thicknessMm', { allowed: 'above 0 mm', got: thicknessMm, why });
  }
  const outline = roundedOutline(design.outline);
  if (isRefusal(outline)) return outline;
  const fixings = fixingHoles(design);
  const holes = [...openings, ...fixings];
  const refusal = holeRefusal(openings, holes.length, thicknessMm);
  if (refusal !== null) return refusal;
  const through = holes.filter(({ depthMm }) => depthMm === null);
  const hasRecess = through.length < holes.length;
  const topWood = woodMm3(outline, holes, thicknessMm);
  const restWood = woodMm3(outline, through, thicknessMm);
  const panelOf = (
    id: string,
    name: string,
    cut: readonly PanelHole[],
    wood: readonly Amount[],
    quantity: number,
  ): Panel => ({
    id,
    mark: design.mark,
    name,
    materialId: stock.materialId,
    thicknessMm,
    lengthMm: outline.widthMm,
    widthMm: outline.heightMm,
    outline: [...outline.corners],
    ...(outline.radiiMm.some((radius) => radius > 0) ? { cornerRadiiMm: [...outline.radiiMm] } : {}),
    edges: outline.corners.map(() => ({ bevelRad: 0, joint: 'free', runsThrough: true })),
    holes: [...cut],
    grain: stock.hasGrain ? 'length' : 'none',
    quantity,
    solidMm3: total(wood),
    massKg: (total(wood) * densityKgM3) / 1e9,
  });
  const top = panelOf(design.id, design.name, holes, topWood, hasRecess ? 1 : layers);
  const behind =
    hasRecess && layers > 1
      ? [panelOf(`${design.id}-behind`, design.name, through, restWood, layers - 1)]
      : [];
  const panels = [top, ...behind];
  const inKg = (wood: readonly Amount[], count: number) =>
    wood.map(({ amount, at }) => ({ amount: (count * amount * densityKgM3) / 1e9, at }));
  const board = [...inKg(topWood, 1), ...inKg(restWood, layers - 1)];
  const loaded = [...board, ...devices.map(({ massKg, centre }) => ({ amount: massKg, at: centre }))];
  return {
    panels,
    faceAreaMm2: total(restWood) / thicknessMm,
    thicknessMm: layers * thicknessMm,
    boardKg: total(board),
    withDevicesKg: total(loaded),
    centreMm: balance(loaded, polygonPatch(outline.corners).centre),
    fixingCount: fixings.length,
    findings: boardFindings({ outline, openings, fixings, devices }),
  };
}
