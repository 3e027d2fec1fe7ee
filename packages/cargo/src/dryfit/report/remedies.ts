// What would make it go in, each tried out by a run of its own: lower, shallower, a corner clipped, something taken off,
// another state or opening, two parts. What is cut off only ever takes away, so the least cut is found by bisection.
import type { CavityResult } from '@gusset/contracts/cargo';
import type { BodyPart, DryFitQuestion, DryFitRemedy, TightPlace } from '@gusset/contracts/dryfit';
import type { PointMm, PolygonMm, Pose } from '@gusset/contracts/geometry';
import { isRefusal } from '@gusset/units';
import type { SceneWalls } from '../../dry-fit-scene.ts';
import { boundsOf, clippedTo, counterClockwise, signedAreaMm2 } from '../../plane/polygon.ts';
import { lengthOf, minus, plus, unit } from '../../plane/vector.ts';
import { dryFit } from '../dry-fit.ts';
import type { SearchLimits } from '../search-way.ts';
import { middled, reportCase } from './report-case.ts';

/** No more than this share of height, depth or an edge is offered to be cut off. */
const MOST_CUT_SHARE = 0.5;
const MM3_PER_LITRE = 1e6;

type Trial = { readonly path: readonly Pose[]; readonly atWorst: boolean };
type Cut = Pick<DryFitRemedy, 'kind' | 'cornerIndex' | 'cornerPlace'> & {
  readonly mostMm: number;
  readonly cutBy: (mm: number) => PolygonMm;
};

export function remediesFor(
  question: DryFitQuestion,
  jam: TightPlace | null,
  limits: SearchLimits,
  onFound: (remedies: readonly DryFitRemedy[]) => void,
): DryFitRemedy[] {
  const asked = { ...question, profile: counterClockwise(question.profile) };
  const found: DryFitRemedy[] = [];
  for (const look of [
    ...freeRemedies(asked, limits),
    ...cutRemedies(asked, jam, limits),
    () => split(asked, limits),
  ]) {
    if (limits.shouldStop()) break;
    const remedy = look();
    if (remedy === null) continue;
    found.push(remedy);
    found.sort((a, b) => a.outsideLitresLost - b.outsideLitresLost || (a.id < b.id ? -1 : 1));
    onFound(found);
  }
  return found;
}

/** Those that leave the box as it is. */
function freeRemedies(asked: DryFitQuestion, limits: SearchLimits): (() => DryFitRemedy | null)[] {
  const { cavity, removable, alternatives, profile, widthMm } = asked;
  const whole = {
    byMm: null,
    cornerIndex: null,
    cornerPlace: null,
    profiles: [profile],
    widthMm,
    outsideLitresLost: 0,
  };
  const takenOff = cavity.obstructions
    .filter(({ id }) => removable.includes(id))
    .map(({ id, name }) => () => {
      const without = { ...cavity, obstructions: cavity.obstructions.filter((it) => it.id !== id) };
      const trial = tried(asked, without, profile, asked.final, limits);
      return (
        trial && {
          ...whole,
          ...trial,
          kind: 'take-off' as const,
          id: `take-off ${id}`,
          subject: { id, name },
        }
      );
    });
  const otherwise = alternatives.map(({ id, name, kind, cavity: other, final }) => () => {
    const trial = tried(asked, other, profile, final ?? asked.final, limits);
    return trial && { ...whole, ...trial, kind, id: `${kind} ${id}`, subject: { id, name } };
  });
  return [...takenOff, ...otherwise];
}

function cutRemedies(
  asked: DryFitQuestion,
  jam: TightPlace | null,
  limits: SearchLimits,
): (() => DryFitRemedy | null)[] {
  return cutsOf(asked, jam).map((cut) => () => leastCut(asked, cut, limits));
}

function cutsOf({ profile, final, cavity }: DryFitQuestion, jam: TightPlace | null): Cut[] {
  const { xMinMm, xMaxMm, yMinMm, yMaxMm } = boundsOf(profile);
  const isRearward = (cavity.opening.from.xMm + cavity.opening.to.xMm) / 2 >= final.xMm;
  const front = isRearward ? { edge: xMaxMm, sign: 1 } : { edge: xMinMm, sign: -1 };
  const plain = { cornerIndex: null, cornerPlace: null };
  const corners = (jam?.contacts ?? []).flatMap(({ part }) => cornersOf(profile, part));
  return [
    {
      ...plain,
      kind: 'lower',
      mostMm: (yMaxMm - yMinMm) * MOST_CUT_SHARE,
      cutBy: (mm) => clippedTo(profile, { xMm: 0, yMm: yMaxMm - mm }, { xMm: 0, yMm: 1 }),
    },
    {
      ...plain,
      kind: 'shallower',
      mostMm: (xMaxMm - xMinMm) * MOST_CUT_SHARE,
      cutBy: (mm) =>
        clippedTo(profile, { xMm: front.edge - front.sign * mm, yMm: 0 }, { xMm: front.sign, yMm: 0 }),
    },
    ...[...new Set(corners)].map(
      (index): Cut => ({
        kind: 'clip-corner',
        cornerIndex: index,
        cornerPlace: cornerPlace(profile, index, front.sign),
        mostMm: shortestEdgeAt(profile, index) * MOST_CUT_SHARE,
        cutBy: (mm) => clipped(profile, index, mm),
      }),
    ),
  ];
}

/** A jamming corner, or both ends of a jamming edge; only those that bulge can be clipped. */
function cornersOf(profile: PolygonMm, { kind, index }: BodyPart): number[] {
  const indices = kind === 'corner' ? [index] : [index, (index + 1) % profile.length];
  return indices.filter((i) => {
    const [before, at, after] = around(profile, i);
    const [into, out] = [minus(at, before), minus(after, at)];
    return into.xMm * out.yMm - into.yMm * out.xMm > 0;
  });
}

function clipped(profile: PolygonMm, index: number, mm: number): PolygonMm {
  const [before, at, after] = around(profile, index);
  const ends = [plus(at, unit(minus(before, at)), mm), plus(at, unit(minus(after, at)), mm)];
  return profile.flatMap((corner, i) => (i === index ? ends : [corner]));
}

function shortestEdgeAt(profile: PolygonMm, index: number): number {
  const [before, at, after] = around(profile, index);
  return Math.min(lengthOf(minus(before, at)), lengthOf(minus(after, at)));
}

function around(profile: PolygonMm, index: number): readonly [PointMm, PointMm, PointMm] {
  const n = profile.length;
  const at = profile[index % n] ?? { xMm: 0, yMm: 0 };
  return [profile[(index + n - 1) % n] ?? at, at, profile[(index + 1) % n] ?? at];
}

function cornerPlace(profile: PolygonMm, index: number, out: number): BodyPart['place'] {
  const { xMinMm, xMaxMm, yMinMm, yMaxMm } = boundsOf(profile);
  const [, at] = around(profile, index);
  const upper = at.yMm > (yMinMm + yMaxMm) / 2 ? 'upper' : 'lower';
  return `${upper}-${(at.xMm - (xMinMm + xMaxMm) / 2) * out > 0 ? 'front' : 'back'}`;
}

/** In whole mm; null where not even the most helps. */
function leastCut(asked: DryFitQuestion, cut: Cut, limits: SearchLimits): DryFitRemedy | null {
  let high = Math.floor(cut.mostMm);
  const ask = (mm: number) => tried(asked, asked.cavity, cut.cutBy(mm), asked.final, limits);
  let best = high < 1 ? null : ask(high);
  if (best === null) return null;
  let low = 0;
  while (high - low > 1 && !limits.shouldStop()) {
    const middle = Math.floor((low + high) / 2);
    const trial = ask(middle);
    if (trial !== null && trial.atWorst === best.atWorst) [high, best] = [middle, trial];
    else low = middle;
  }
  const profile = cut.cutBy(high);
  return {
    ...best,
    kind: cut.kind,
    id: cut.cornerIndex === null ? cut.kind : `${cut.kind} ${cut.cornerIndex}`,
    byMm: high,
    cornerIndex: cut.cornerIndex,
    cornerPlace: cut.cornerPlace,
    subject: null,
    profiles: [profile],
    widthMm: asked.widthMm,
    outsideLitresLost: litres(signedAreaMm2(asked.profile) - signedAreaMm2(profile), asked.widthMm),
  };
}

/** Two boxes side by side across the car, the second beside the first in its place: each half goes in alone. */
function split(asked: DryFitQuestion, limits: SearchLimits): DryFitRemedy | null {
  const widthMm = Math.floor(asked.widthMm / 2);
  const final = { ...asked.final, zMm: asked.final.zMm - widthMm / 2 };
  const left = tried({ ...asked, widthMm }, asked.cavity, asked.profile, final, limits);
  if (left === null) return null;
  const right = tried(
    { ...asked, widthMm },
    asked.cavity,
    asked.profile,
    { ...final, zMm: asked.final.zMm + widthMm / 2 },
    limits,
  );
  if (right === null) return null;
  const profiles = [asked.profile, asked.profile];
  const plain = { byMm: null, cornerIndex: null, cornerPlace: null, subject: null };
  const atWorst = left.atWorst && right.atWorst;
  return {
    ...plain,
    kind: 'split',
    id: 'split',
    profiles,
    widthMm,
    outsideLitresLost: 0,
    atWorst,
    path: left.path,
  };
}

/** At worst, else as measured; null where neither is proved to go in. */
function tried(
  asked: DryFitQuestion,
  cavity: CavityResult,
  profile: PolygonMm,
  final: Pose,
  limits: SearchLimits,
): Trial | null {
  for (const walls of ['worst', 'nominal'] as const satisfies readonly SceneWalls[]) {
    const built = reportCase(cavity, { ...asked, profile, final }, walls);
    if (isRefusal(built)) continue;
    const result = dryFit(built.input, limits);
    if (!isRefusal(result) && result.verdict === 'loads')
      return { path: middled(result.path, asked.widthMm), atWorst: walls === 'worst' };
  }
  return null;
}

function litres(areaMm2: number, widthMm: number): number {
  return (areaMm2 * widthMm) / MM3_PER_LITRE;
}
