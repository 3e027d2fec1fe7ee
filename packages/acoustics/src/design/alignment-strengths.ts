// Which of several designs does what best, by the numbers that stand behind each word.
import type { AlignmentDesign, AlignmentStrength } from '@gusset/contracts/acoustics';

/** A rise that nobody hears: drivers themselves are further from flat. */
const UNHEARD_RISE_DB = 0.1;

type Measure = {
  readonly strength: AlignmentStrength;
  /** The lowest wins; a later number decides between equals. */
  readonly of: (design: AlignmentDesign) => readonly [number, number];
};

const MEASURES: readonly Measure[] = [
  {
    strength: 'flattest',
    of: ({ peakDb, unevennessDb }) => [peakDb > UNHEARD_RISE_DB ? peakDb : 0, unevennessDb],
  },
  { strength: 'deepest', of: ({ f3Hz, netLitres }) => [f3Hz, netLitres] },
  { strength: 'gentlest', of: ({ octaveDropDb, netLitres }) => [octaveDropDb, netLitres] },
  { strength: 'shortest-ringing', of: ({ settleMs, netLitres }) => [settleMs, netLitres] },
  { strength: 'smallest', of: ({ netLitres, f3Hz }) => [netLitres, f3Hz] },
];

/** The same designs, each with what it does better than all others. One alone does nothing "best". */
export function withStrengths(designs: readonly AlignmentDesign[]): AlignmentDesign[] {
  if (designs.length < 2) return [...designs];
  const winners = MEASURES.map(({ strength, of }) => ({
    strength,
    winner: designs.reduce((best, next) => (isBelow(of(next), of(best)) ? next : best)),
  }));
  return designs.map((design) => ({
    ...design,
    strengths: winners.filter(({ winner }) => winner === design).map(({ strength }) => strength),
  }));
}

function isBelow(a: readonly [number, number], b: readonly [number, number]): boolean {
  return a[0] === b[0] ? a[1] < b[1] : a[0] < b[0];
}
