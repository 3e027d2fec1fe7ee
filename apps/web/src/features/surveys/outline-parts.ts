// Outlines of what stands in a space, as a person enters them: mostly a box from here to there, else corner by corner.

import type { SurveyCorner, SurveyExtras, TypedMm } from '@gusset/contracts/survey';

export type BoxSides = {
  readonly near: TypedMm;
  readonly far: TypedMm;
  readonly low: TypedMm;
  readonly high: TypedMm;
};

/** The four sides where the corners make an upright box; null where they don't. */
export function boxSidesOf(corners: readonly SurveyCorner[]): BoxSides | null {
  const [a, b, c, d] = corners;
  if (corners.length !== 4 || a === undefined || b === undefined || c === undefined || d === undefined)
    return null;
  const isBox =
    a.x.mm === d.x.mm &&
    b.x.mm === c.x.mm &&
    a.y.mm === b.y.mm &&
    c.y.mm === d.y.mm &&
    a.x.mm <= b.x.mm &&
    a.y.mm <= d.y.mm;
  return isBox ? { near: a.x, far: b.x, low: a.y, high: d.y } : null;
}

export function cornersOfBox({ near, far, low, high }: BoxSides): SurveyCorner[] {
  return [
    { x: near, y: low },
    { x: far, y: low },
    { x: far, y: high },
    { x: near, y: high },
  ];
}

const plain = (mm: number): TypedMm => ({ mm, typed: `${mm} mm`, unit: 'mm' });

/** Something to start from: a block of this size at the back wall. */
export function newBox(depthMm: number, heightMm: number): SurveyCorner[] {
  return cornersOfBox({ near: plain(0), far: plain(depthMm), low: plain(0), high: plain(heightMm) });
}

export function newObstruction(): SurveyExtras['obstructions'][number] {
  return {
    id: crypto.randomUUID(),
    name: 'Hinge arm',
    corners: newBox(60, 120),
    left: plain(-520),
    right: plain(-480),
    plusMinusMm: 5,
    appliesTo: 'fit',
    moves: true,
  };
}

export function newKeepFree(): SurveyExtras['keepFree'][number] {
  return {
    id: crypto.randomUUID(),
    name: 'Tether anchor',
    kind: 'child-seat-tether',
    corners: newBox(120, 120),
    left: plain(-60),
    right: plain(60),
    plusMinusMm: 10,
  };
}

export function newNarrowing(): SurveyExtras['narrowings'][number] {
  return {
    id: crypto.randomUUID(),
    name: 'Side pocket',
    corners: newBox(300, 200),
    width: plain(900),
    plusMinusMm: 5,
  };
}

export function newState(): SurveyExtras['states'][number] {
  return { id: crypto.randomUUID(), name: 'Seat folded', replaced: [], absent: [] };
}

/** A corner half way to the first one, as a place to start from. */
export function withCorner(corners: readonly SurveyCorner[]): SurveyCorner[] {
  const [first] = corners;
  const last = corners.at(-1);
  if (first === undefined || last === undefined) return newBox(100, 100);
  const half = (a: TypedMm, b: TypedMm) => plain(Math.round((a.mm + b.mm) / 2));
  return [...corners, { x: half(last.x, first.x), y: half(last.y, first.y) }];
}
