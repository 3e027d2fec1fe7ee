// The best designs for an aim, one for each driver, count and kind of box, in an order with no ties.
import type { FoundDesign, SearchAim } from '@gusset/contracts/acoustics';
import { scoreFor } from './aims.ts';

/** An unknown cost comes after every known one. */
export const UNKNOWN_COST_MINOR = Number.MAX_SAFE_INTEGER;

/** Negative = `a` comes first: by the aim, then louder, smaller, cheaper, at last by key. */
export function compareDesigns(aim: SearchAim, a: FoundDesign, b: FoundDesign): number {
  return (
    scoreFor(aim, a) - scoreFor(aim, b) ||
    b.outputDb - a.outputDb ||
    a.netLitres - b.netLitres ||
    (a.costMinor ?? UNKNOWN_COST_MINOR) - (b.costMinor ?? UNKNOWN_COST_MINOR) ||
    (a.key < b.key ? -1 : Number(a.key > b.key))
  );
}

export type Ranking<Design extends FoundDesign> = {
  /** The best of a driver, count and kind of box; each such group comes once. */
  offer(design: Design): void;
  /** True if no design with a score of at least `bestScore` can take a place. */
  rulesOut(bestScore: number): boolean;
  /** Best first. */
  designs(): readonly Design[];
};

export function makeRanking<Design extends FoundDesign>(aim: SearchAim, places: number): Ranking<Design> {
  let designs: Design[] = [];
  return {
    offer(design) {
      designs = [...designs, design].sort((a, b) => compareDesigns(aim, a, b)).slice(0, places);
    },
    rulesOut(bestScore) {
      const last = designs[places - 1];
      return last !== undefined && bestScore > scoreFor(aim, last);
    },
    designs: () => designs,
  };
}
