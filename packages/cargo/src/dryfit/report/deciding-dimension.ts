// Which dimension of the survey decides an answer that its ± leaves open: the one whose ± moves the surfaces at the
// tightest place most, and whether knowing it exactly would settle the matter.
import type { CavityResult } from '@gusset/contracts/cargo';
import type { ContactSurface, DecidingDimension, TightPlace } from '@gusset/contracts/dryfit';

/** Contacts of the tightest place whose surfaces count. */
const CONTACTS_COUNTED = 2;

/** `settles`: whether the answer is a yes or a no once a cavity of less ± is asked about. */
export function decidingDimension(
  cavity: CavityResult,
  tight: TightPlace | null,
  settles: (surer: CavityResult) => boolean,
): DecidingDimension | null {
  const byKey = new Map<string, { readonly mm: number; readonly surface: ContactSurface }>();
  for (const { surface } of (tight?.contacts ?? []).slice(0, CONTACTS_COUNTED)) {
    for (const { key, plusMinusMm } of sharesAt(cavity, surface)) {
      const before = byKey.get(key);
      byKey.set(key, { mm: (before?.mm ?? 0) + plusMinusMm, surface: before?.surface ?? surface });
    }
  }
  const first = [...byKey].sort(([a, x], [b, y]) => y.mm - x.mm || (a < b ? -1 : 1))[0];
  if (first === undefined) return null;
  const [key, { mm, surface }] = first;
  return { key, plusMinusMm: mm, surface, settles: settles(knownExactly(cavity, key)) };
}

/** What moves a surface: of an end of the opening, what moves the walls that meet there. */
function sharesAt({ walls, opening }: CavityResult, { type, id }: ContactSurface) {
  if (type === 'wall') return walls.find((wall) => wall.id === id)?.shares ?? [];
  if (type !== 'opening-end') return [];
  const beside = opening.wallIndex + (id === 'from' ? -1 : 1);
  const wall = walls[(beside + walls.length) % walls.length];
  const own = walls[opening.wallIndex];
  return [...(wall?.shares ?? []), ...(own?.shares ?? [])];
}

function knownExactly(cavity: CavityResult, key: string): CavityResult {
  const less = (mm: number | undefined, shareMm: number) => Math.max(0, (mm ?? 0) - shareMm);
  const { opening } = cavity;
  const shareAt = (id: 'from' | 'to') =>
    sharesAt(cavity, { type: 'opening-end', id, name: '' }).find((it) => it.key === key)?.plusMinusMm ?? 0;
  return {
    ...cavity,
    walls: cavity.walls.map((wall) => {
      const shares = wall.shares.filter((it) => it.key !== key);
      const shareMm = wall.shares.find((it) => it.key === key)?.plusMinusMm ?? 0;
      return { ...wall, shares, plusMinusMm: less(wall.plusMinusMm, shareMm) };
    }),
    opening: {
      ...opening,
      fromPlusMinusMm: less(opening.fromPlusMinusMm ?? opening.heightPlusMinusMm, shareAt('from')),
      toPlusMinusMm: less(opening.toPlusMinusMm ?? opening.heightPlusMinusMm, shareAt('to')),
    },
  };
}
