// A design question's system on its way to the solver and back.
import type { DesignSystem, SoundSystem } from '@gusset/contracts/acoustics';
import type { Refusal } from '@gusset/units';

/** For `compileSystem`, which takes any frequencies: the sweep brings its own. */
export function withFrequencies(system: DesignSystem): SoundSystem {
  return { ...system, frequenciesHz: [] };
}

/** A refusal on a system, named from the question that holds it. */
export function inSystem({ refusal }: Refusal): Refusal {
  return { refusal: { ...refusal, field: `system.${refusal.field}` } };
}
