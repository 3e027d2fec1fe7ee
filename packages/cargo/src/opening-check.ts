// The opening square-on: the box moved straight out along the normal of the opening, upright or tipped to its least
// caliper width. Turning on the way, and room inside to tip it, are not looked at: this never says that a box loads.
import {
  type CavityResult,
  type ClearanceSettings,
  DEFAULT_CLEARANCES,
  type OpeningCheck,
  type OpeningTrial,
} from '@gusset/contracts/cargo';
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import { boxRefusal, distanceRefusal } from './box-input.ts';
import { extentAlong, leastCaliperWidth } from './plane/hull.ts';
import { minus, turned, unit } from './plane/vector.ts';

export type OpeningCheckInput = {
  readonly cavity: CavityResult;
  /** In the box's own frame, mm. */
  readonly profile: PolygonMm;
  readonly widthMm: number;
  /** Thickness of finish still to be added to each face, mm; 0 where the profile is the finished outside. */
  readonly finishMm: number;
  /** How the box stands in its place. */
  readonly thetaRad?: number;
  readonly clearances?: ClearanceSettings;
};

const SENTENCES = {
  passes: 'square-on-passes-turning-not-considered',
  'does-not-pass': 'square-on-does-not-pass-turning-not-considered',
  'too-close': 'square-on-too-close-turning-not-considered',
} as const satisfies Record<OpeningCheck['verdict'], OpeningCheck['sentenceCode']>;

/**
 * Passes = the wanted clearance on both sides is left with every ± against us. Does not pass = not even touching, with
 * every ± for us. Between lies too close to say: try a card panel.
 */
export function passesOpeningSquareOn(input: OpeningCheckInput): OpeningCheck | Refusal {
  const { cavity, profile, widthMm, finishMm, thetaRad = 0, clearances = DEFAULT_CLEARANCES } = input;
  const refusal =
    boxRefusal(profile, widthMm) ?? distanceRefusal({ finishMm, openingMm: clearances.openingMm });
  if (refusal !== null) return refusal;
  if (!Number.isFinite(thetaRad)) {
    return refuse('thetaRad', {
      allowed: 'a definite angle',
      got: thetaRad,
      why: 'the box stands at no angle',
    });
  }
  const { opening } = cavity;
  const jaws = unit(minus(opening.to, opening.from));
  const trials = trialsOf(profile, jaws, thetaRad, finishMm, opening.heightMm);
  const heightSpareMm = Math.max(...trials.map((trial) => trial.heightSpareMm));
  const widthSpareMm = opening.widthMm - widthMm - 2 * finishMm;
  const wantedSpareMm = 2 * clearances.openingMm;
  const worstHeightSpareMm = heightSpareMm - opening.heightPlusMinusMm;
  const worstWidthSpareMm = widthSpareMm - opening.widthPlusMinusMm;
  const sure = worstHeightSpareMm >= wantedSpareMm && worstWidthSpareMm >= wantedSpareMm;
  const hopeless =
    heightSpareMm + opening.heightPlusMinusMm < 0 || widthSpareMm + opening.widthPlusMinusMm < 0;
  const verdict = sure ? 'passes' : hopeless ? 'does-not-pass' : 'too-close';
  return {
    verdict,
    heightSpareMm,
    widthSpareMm,
    worstHeightSpareMm,
    worstWidthSpareMm,
    wantedSpareMm,
    minCaliperWidthMm: leastCaliperWidth(profile).widthMm + 2 * finishMm,
    trials,
    sentenceCode: SENTENCES[verdict],
  };
}

/** The finish grows a face square to itself, so it adds twice its thickness to any extent of a convex box. */
function trialsOf(
  profile: PolygonMm,
  jaws: PointMm,
  thetaRad: number,
  finishMm: number,
  openingMm: number,
): OpeningTrial[] {
  const upright = extentAlong(
    profile.map((corner) => turned(corner, thetaRad)),
    jaws,
  );
  const least = leastCaliperWidth(profile);
  const trial = (orientation: OpeningTrial['orientation'], tiltRad: number, bareMm: number): OpeningTrial => {
    const extentMm = bareMm + 2 * finishMm;
    return { orientation, tiltRad, extentMm, heightSpareMm: openingMm - extentMm };
  };
  return [
    trial('upright', 0, upright),
    trial('least-caliper', tiltBetween(turned(least.direction, thetaRad), jaws), least.widthMm),
  ];
}

/** Smallest turn that lays one line along another, lines having no head: within a quarter turn either way. */
function tiltBetween(from: PointMm, to: PointMm): number {
  const turn = Math.atan2(to.yMm, to.xMm) - Math.atan2(from.yMm, from.xMm);
  return turn - Math.PI * Math.round(turn / Math.PI);
}
