// Which of several designs does what best, by the number that stands behind each word.
import type { AlignmentDesign, AlignmentStrength } from '@gusset/contracts/acoustics';

/** The lowest wins; a tie goes to the first, which is the smaller box. */
const MEASURES: readonly {
  readonly strength: AlignmentStrength;
  readonly of: (design: AlignmentDesign) => number;
}[] = [
  { strength: 'flattest', of: ({ unevennessDb }) => unevennessDb },
  { strength: 'deepest', of: ({ f3Hz }) => f3Hz },
  { strength: 'gentlest', of: ({ octaveDropDb }) => octaveDropDb },
  { strength: 'shortest-ringing', of: ({ settleMs }) => settleMs },
  { strength: 'smallest', of: ({ netLitres }) => netLitres },
];

/** The same designs, each with what it does better than all others. One alone does nothing "best". */
export function withStrengths(designs: readonly AlignmentDesign[]): AlignmentDesign[] {
  if (designs.length < 2) return [...designs];
  const winners = MEASURES.map(({ strength, of }) => ({
    strength,
    winner: designs.reduce((best, next) => (of(next) < of(best) ? next : best)),
  }));
  return designs.map((design) => ({
    ...design,
    strengths: winners.filter(({ winner }) => winner === design).map(({ strength }) => strength),
  }));
}
