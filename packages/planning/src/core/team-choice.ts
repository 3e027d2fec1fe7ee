import type { Team } from './compile-project.ts';

/** Different free workers for all slots, the least needed first (augmenting paths); null where there are too few. */
export function chooseTeam(team: Team, free: readonly boolean[]): readonly number[] | null {
  const slotOf = new Int32Array(team.choices.length).fill(-1);
  const tried = new Uint8Array(team.choices.length);
  const man = (slot: number): boolean => {
    const fits = team.fits[slot] ?? [];
    for (let c = 0; c < fits.length; c++) {
      if (!fits[c] || !free[c] || tried[c]) continue;
      tried[c] = 1;
      const held = slotOf[c] ?? -1;
      if (held >= 0 && !man(held)) continue;
      slotOf[c] = slot;
      return true;
    }
    return false;
  };
  for (let slot = 0; slot < team.slots.length; slot++) {
    tried.fill(0);
    if (!man(slot)) return null;
  }
  const members = Array<number>(team.slots.length).fill(-1);
  for (const [c, choice] of team.choices.entries()) {
    const slot = slotOf[c] ?? -1;
    if (slot >= 0) members[slot] = choice.worker;
  }
  return members;
}
