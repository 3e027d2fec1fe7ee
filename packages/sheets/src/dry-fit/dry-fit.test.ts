import type { BoxInput } from '@gusset/contracts/box';
import { isRefusal, type Refusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import {
  BOX_FACTS,
  BOX_INPUT,
  BOX_UPSTREAM,
  boxResult,
  leaningCavity,
  length,
  squareCavity,
} from '../box/box-fixture.ts';
import { boxSheet } from '../box/box-sheet.ts';
import { answerLoading } from './answer-loading.ts';
import { loadingQuestion } from './loading-case.ts';
import { loadingRemedies } from './loading-remedies.ts';
import { loadingScene, poseOnWay, shareOfTightest } from './loading-scene.ts';

const UPRIGHT = { mayTurnOver: false };

function answered<Answer>(answer: Answer | Refusal): Answer {
  if (isRefusal(answer)) throw new Error(JSON.stringify(answer));
  return answer;
}

const sized = (heightMm: number, depthMm = 320): Partial<BoxInput> => ({
  outside: { ...BOX_INPUT.outside, height: length(heightMm), depth: length(depthMm) },
});

/** What the search learns at once; how much it is by is asked where a test reads it. */
function answerFor(changes: Partial<BoxInput>, cavity = squareCavity(), measures = false) {
  const result = boxResult(changes, BOX_FACTS, { ...BOX_UPSTREAM, survey: { cavity } });
  return answered(answerLoading(answered(loadingQuestion(result, cavity, UPRIGHT)), { measures }));
}

describe('whether the box of sheet 04 goes in', () => {
  it('is a yes with every ± against it, and tells the room all round', () => {
    // It stands 15 mm off the seat back at worst, and nothing else is as near: 500 high against 440.
    const answer = answerFor(sized(440), squareCavity(), true);
    expect(answer).toMatchObject({ verdict: 'goes-in', asMeasured: 'loads', short: null });
    expect(answer.spare?.atLeastMm).toBeCloseTo(15, 1);
    expect(answer.spare?.atMostMm ?? 0).toBeGreaterThan(answer.spare?.atLeastMm ?? 0);
    expect(answer.path.length).toBeGreaterThan(1);
  });

  it('is too close to call where only the tape stands between yes and no', () => {
    expect(answerFor(sized(495))).toMatchObject({
      verdict: 'too-close',
      asMeasured: 'loads',
      tightest: { wall: 'Roof', gapMm: 2.5, corner: { height: 'upper', end: 'front' } },
    });
  });

  it('is a no where it does not even stand there, and shows no way', () => {
    expect(answerFor(sized(420, 500), leaningCavity(), true)).toMatchObject({
      verdict: 'does-not-go-in',
      decidedBy: 'place',
      short: null,
      path: [],
      tightest: null,
    });
  });

  it('is told before it is known by how much', () => {
    const cavity = squareCavity();
    const question = answered(loadingQuestion(boxResult(), cavity, UPRIGHT));
    const told: string[] = [];
    answered(answerLoading(question, { onDecided: ({ verdict }) => told.push(verdict) }));
    expect(told).toEqual(['goes-in']);
  });

  it('is never a yes once it has been stopped', () => {
    const cavity = leaningCavity();
    const result = boxResult(sized(300, 500), BOX_FACTS, { ...BOX_UPSTREAM, survey: { cavity } });
    const question = answered(loadingQuestion(result, cavity, UPRIGHT));
    const answer = answered(answerLoading(question, { shouldStop: () => true, measures: false }));
    expect(answer.verdict).toBe('too-close');
  });

  it('asks for a survey and for a place', () => {
    const { box, place } = boxResult();
    expect(loadingQuestion({ box, place }, null, UPRIGHT)).toMatchObject({ refusal: { field: 'survey' } });
    expect(loadingQuestion({ box, place: null }, squareCavity(), UPRIGHT)).toMatchObject({
      refusal: { field: 'place' },
    });
  });
});

describe('remedies', () => {
  // As measured 2.5 mm below the roof of a box 495 high, whose ± is more: a lower box clears it.
  const question = { input: { ...BOX_INPUT, ...sized(495) }, facts: BOX_FACTS, upstream: BOX_UPSTREAM };
  const remedies = loadingRemedies({ ...question, choices: UPRIGHT });
  const lower = remedies.find(({ kind }) => kind === 'height');

  it('go in at worst when they are taken, and a few millimetres less do not', () => {
    const byMm = lower?.byMm ?? 0;
    expect(answerFor(sized(495 - byMm)).verdict).toBe('goes-in');
    expect(answerFor(sized(495 - byMm + 4)).verdict).not.toBe('goes-in');
  });

  it('cost what the sheet says of the box it then is', () => {
    const outcome = boxSheet.compute(lower?.input ?? BOX_INPUT, BOX_FACTS, BOX_UPSTREAM);
    const now = boxResult(sized(495)).box.volumes.netLitres;
    const then = outcome.state === 'ready' ? outcome.result.box.volumes.netLitres : Number.NaN;
    expect(lower?.costLitres).toBeCloseTo(now - then, 9);
    expect(lower?.netLitres).toBeCloseTo(then, 9);
    expect(lower?.costLitres).toBeGreaterThan(0);
  });

  it('keep what was typed elsewhere and write the new size as if it had been typed', () => {
    expect(lower?.input?.outside.height).toEqual(length(495 - (lower?.byMm ?? 0)));
    expect(lower?.input?.outside.width).toEqual(BOX_INPUT.outside.width);
  });

  it('are none without a survey', () => {
    const upstream = { ...BOX_UPSTREAM, survey: null };
    expect(loadingRemedies({ ...question, upstream, choices: UPRIGHT })).toEqual([]);
  });
});

describe('the drawn way', () => {
  const cavity = squareCavity();
  const result = boxResult(sized(440));
  const answer = answerFor(sized(440));

  it('begins in its place and ends outside', () => {
    expect(poseOnWay(answer.path, 0)).toEqual(answer.path[0]);
    expect(poseOnWay(answer.path, 1)).toEqual(answer.path.at(-1));
    expect(poseOnWay([], 0.5)).toBeNull();
  });

  it('comes by the tightest place where it says', () => {
    const tightest = answer.tightest;
    const share = tightest === null ? 0 : shareOfTightest(answer.path, tightest.pose);
    const pose = poseOnWay(answer.path, share);
    expect(pose?.xMm).toBeCloseTo(tightest?.pose.xMm ?? Number.NaN, -1);
  });

  it('draws ghosts, the box that moves and the tightest place', () => {
    const ids = loadingScene({ result, cavity, answer, share: 0.4 }).layers.map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(['way-out', 'tightest', 'moving']));
    const still = loadingScene({ result, cavity, answer: null, share: 0 }).layers.map(({ id }) => id);
    expect(still).not.toContain('way-out');
  });
});
