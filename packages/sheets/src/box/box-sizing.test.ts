import type { BoxResult } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import {
  BOX_FACTS,
  BOX_INPUT,
  BOX_UPSTREAM,
  boxResult,
  CARPET_ID,
  leaningCavity,
  length,
} from './box-fixture.ts';
import { boxFromSection, boxWithNet } from './box-sizing.ts';

const answered = <T>(answer: T): Exclude<T, null | { readonly refusal: unknown }> => {
  if (answer === null || isRefusal(answer)) throw new Error(JSON.stringify(answer));
  // Sound: null and refusals have just been ruled out.
  return answer as Exclude<T, null | { readonly refusal: unknown }>;
};

describe('boxWithNet', () => {
  it.each(['depth', 'height', 'width'] as const)('meets the target by its %s alone', (vary) => {
    const set = answered(boxWithNet(BOX_INPUT, BOX_FACTS, BOX_UPSTREAM, vary));
    expect(Math.abs(boxResult(set).box.volumes.overTargetLitres ?? 1)).toBeLessThan(0.03);
    for (const other of ['depth', 'height', 'width'] as const) {
      if (other === vary) expect(set.outside[other]).not.toEqual(BOX_INPUT.outside[other]);
      else expect(set.outside[other]).toEqual(BOX_INPUT.outside[other]);
    }
  });
  it('keeps the lean of a wedge when its depth moves', () => {
    const wedge = {
      ...BOX_INPUT,
      shape: 'wedge' as const,
      outside: { ...BOX_INPUT.outside, depthTop: length(240) },
    };
    const { outside } = answered(boxWithNet(wedge, BOX_FACTS, BOX_UPSTREAM, 'depth'));
    expect((outside.depth?.mm ?? 0) - (outside.depthTop?.mm ?? 0)).toBeCloseTo(80, 1);
  });
  it('is refused at the field where a dimension is not entered yet', () => {
    const half = { ...BOX_INPUT, outside: { ...BOX_INPUT.outside, width: null } };
    const answer = boxWithNet(half, BOX_FACTS, BOX_UPSTREAM, 'depth');
    expect(answer).toMatchObject({ refusal: { field: 'outside.width' } });
  });
  it('is refused without a target', () => {
    const answer = boxWithNet(BOX_INPUT, BOX_FACTS, {}, 'depth');
    expect(answer).toMatchObject({ refusal: { field: 'targetNet' } });
  });
});

/** Litres round the finished side view, across the wood. */
function outsideOf({ section, sizes }: BoxResult): number {
  const ring = section.finished;
  const twiceMm2 = ring.reduce((sum, { xMm, yMm }, index) => {
    const next = ring[(index + 1) % ring.length] ?? { xMm, yMm };
    return sum + xMm * next.yMm - next.xMm * yMm;
  }, 0);
  return ((twiceMm2 / 2) * sizes.finished.widthMm) / 1e6;
}

describe('boxFromSection', () => {
  it('fills the section up to the wanted clearances at worst', () => {
    const { input } = answered(boxFromSection(BOX_INPUT, BOX_FACTS, BOX_UPSTREAM));
    const { place } = boxResult(input);
    expect(place?.placement.clearances.every(({ verdict, rests }) => rests || verdict === 'clear')).toBe(
      true,
    );
    // 500 high less 10 above and the ± of the walls
    expect(input.outside.height?.mm).toBeGreaterThan(480);
    expect(input.outside.height?.mm).toBeLessThan(490);
  });
  it('takes the finish off the wood and still clears', () => {
    const covered = {
      ...BOX_INPUT,
      finishes: {
        front: CARPET_ID,
        back: CARPET_ID,
        top: CARPET_ID,
        bottom: CARPET_ID,
        left: CARPET_ID,
        right: CARPET_ID,
        slopes: null,
      },
    };
    const bare = answered(boxFromSection(BOX_INPUT, BOX_FACTS, BOX_UPSTREAM)).input;
    const { input } = answered(boxFromSection(covered, BOX_FACTS, BOX_UPSTREAM));
    expect((bare.outside.width?.mm ?? 0) - (input.outside.width?.mm ?? 0)).toBeCloseTo(8, 6);
    const { place } = boxResult(input);
    expect(place?.placement.clearances.every(({ verdict, rests }) => rests || verdict === 'clear')).toBe(
      true,
    );
  });
  it('fills a leaning space with a carpeted wedge and still clears', () => {
    const [front, back, top, bottom] = [CARPET_ID, CARPET_ID, CARPET_ID, CARPET_ID];
    const wedge = {
      ...BOX_INPUT,
      shape: 'wedge' as const,
      slopedFace: 'back' as const,
      finishes: { front, back, top, bottom, left: null, right: null, slopes: null },
    };
    const upstream = { ...BOX_UPSTREAM, survey: { cavity: leaningCavity() } };
    const { input, found } = answered(boxFromSection(wedge, BOX_FACTS, upstream));
    const { place, box } = boxResult(input, BOX_FACTS, upstream);
    expect(place?.placement.clearances.every(({ verdict, rests }) => rests || verdict === 'clear')).toBe(
      true,
    );
    // Nothing is given away beyond the tenths of the saw.
    expect(found.outsideLitres - outsideOf(box)).toBeLessThan(0.3);
  });
  it('is refused while nobody has measured the car', () => {
    expect(boxFromSection(BOX_INPUT, BOX_FACTS, {})).toMatchObject({ refusal: { field: 'survey' } });
  });
});
