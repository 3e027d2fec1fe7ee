// The front: designs that no other one beats in low corner, output, litres and cost together.
//
// One beats another when it is nowhere worse and somewhere better; of two that are equal in all four the one with the
// lower key stays. An unknown cost counts as higher than any known one, and as equal to another unknown one.
import type { FoundDesign } from '@gusset/contracts/acoustics';
import { UNKNOWN_COST_MINOR } from './ranking.ts';

/** What a design can at best be; its litres and cost are known. */
export type BestCase = Pick<FoundDesign, 'lowCornerHz' | 'outputDb' | 'netLitres' | 'costMinor'>;

export type Front = {
  /** Takes the point in if nothing on the front beats it, and drops what it beats. */
  offer(point: FoundDesign): void;
  /** True if something on the front beats all that such a design can be. */
  rulesOut(best: BestCase): boolean;
  /** By corner, then output, then key. */
  points(): FoundDesign[];
};

export function makeFront(): Front {
  let points: FoundDesign[] = [];
  return {
    offer(point) {
      if (points.some((standing) => beats(standing, point))) return;
      points = points.filter((standing) => !beats(point, standing));
      points.push(point);
    },
    rulesOut: (best) =>
      points.some((standing) => isNowhereWorse(standing, best) && isSomewhereBetter(standing, best)),
    points: () =>
      [...points].sort(
        (a, b) => a.lowCornerHz - b.lowCornerHz || b.outputDb - a.outputDb || (a.key < b.key ? -1 : 1),
      ),
  };
}

function beats(a: FoundDesign, b: FoundDesign): boolean {
  if (!isNowhereWorse(a, b)) return false;
  return isSomewhereBetter(a, b) || a.key < b.key;
}

function isNowhereWorse(a: BestCase, b: BestCase): boolean {
  return (
    a.lowCornerHz <= b.lowCornerHz &&
    a.outputDb >= b.outputDb &&
    a.netLitres <= b.netLitres &&
    costOf(a) <= costOf(b)
  );
}

function isSomewhereBetter(a: BestCase, b: BestCase): boolean {
  return (
    a.lowCornerHz < b.lowCornerHz ||
    a.outputDb > b.outputDb ||
    a.netLitres < b.netLitres ||
    costOf(a) < costOf(b)
  );
}

function costOf({ costMinor }: BestCase): number {
  return costMinor ?? UNKNOWN_COST_MINOR;
}
