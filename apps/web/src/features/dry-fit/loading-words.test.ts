import type { LoadingAnswer, TightPlace } from '@gusset/contracts/dry-fit-sheet';
import { describe, expect, it } from 'vitest';
import { loadingHeadline, remedyWords, tightWords } from './loading-words.ts';

const mm = (value: number) => `${Math.round(value * 10) / 10} mm`;
const litres = (value: number) => `${value.toFixed(1)} L`;
const at = { xMm: 0, yMm: 0 };

const TIGHT: TightPlace = {
  pose: { ...at, thetaRad: 0, zMm: 0 },
  at: [at, at],
  gapMm: -11,
  wall: 'upper edge of the opening',
  corner: { height: 'upper', end: 'front' },
  tippedRad: -0.2443,
};
const ANSWER: LoadingAnswer = {
  verdict: 'goes-in',
  asMeasured: 'loads',
  spare: { atLeastMm: 6.4, atMostMm: 7 },
  short: null,
  decidedBy: 'search',
  path: [],
  tightest: null,
  assumptions: [],
  provedToMm: 1,
  cells: 0,
};
const ROOF = {
  walls: [{ name: 'Roof', plusMinusMm: 4 }],
  opening: {
    from: { xMm: 800, yMm: 0 },
    to: { xMm: 800, yMm: 500 },
    heightPlusMinusMm: 5,
    fromPlusMinusMm: 2,
    toPlusMinusMm: 21,
  },
};

describe('the verdict', () => {
  it('says first that it goes in, then by how much', () => {
    const said = loadingHeadline(ANSWER, ROOF, mm);
    expect(said.words).toBe('Goes in, comes out');
    expect(said.lines[0]).toBe('At least 6.4 mm of room all round on the way, less than 7 mm.');
  });
  it('names what is short, the corner and what it meets', () => {
    const no = { ...ANSWER, verdict: 'does-not-go-in', spare: null, tightest: TIGHT } as const;
    const said = loadingHeadline({ ...no, short: { atLeastMm: 10, atMostMm: 11 } }, ROOF, mm);
    expect(said.words).toBe(
      'Does not go in: short by 11 mm, upper front corner on the upper edge of the opening',
    );
    expect(said.lines).toContain('It would go in with 11 mm more room all round, and does not with 10 mm.');
  });
  it('names the surface whose ± decides', () => {
    const close = {
      ...ANSWER,
      verdict: 'too-close',
      spare: null,
      tightest: { ...TIGHT, wall: 'Roof' },
    } as const;
    expect(loadingHeadline(close, ROOF, mm).lines.join(' ')).toContain(
      'measure to the roof once more, now known to ± 4 mm',
    );
  });
  it('asks where the edge of the opening is, which is known less well than its height', () => {
    const close = { ...ANSWER, verdict: 'too-close', spare: null, tightest: TIGHT } as const;
    expect(loadingHeadline(close, ROOF, mm).lines.join(' ')).toContain(
      'measure where the upper edge of the opening is once more, now known to ± 21 mm',
    );
  });
  it('tells the tilt at the tightest place', () => {
    expect(tightWords(TIGHT, mm)).toBe(
      'Tightest place: upper front corner 11 mm into the upper edge of the opening, 14° tipped, walls as measured.',
    );
  });
});

describe('a remedy', () => {
  it('says what it costs before it is taken', () => {
    const cut = { kind: 'height', byMm: 12, part: null, costLitres: 1.64, netLitres: 40.2 } as const;
    expect(remedyWords(cut, mm, litres)).toEqual({
      act: 'Build it 12 mm lower',
      cost: 'costs 1.6 L, leaves 40.2 L',
    });
  });
  it('that takes something out costs no air', () => {
    const out = { kind: 'take-out', byMm: null, part: 'Hinge cover', costLitres: 0, netLitres: 40 } as const;
    expect(remedyWords(out, mm, litres)).toEqual({
      act: 'Take out the hinge cover while it goes in',
      cost: 'costs no air',
    });
  });
});
