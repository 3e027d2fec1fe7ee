import type { SoundInput } from '@gusset/contracts/sound';
import type { SoundSheet } from '../use-sound-sheet.ts';

/** What every page of the settings works on. */
export type SettingPageProps = { readonly sheet: SoundSheet };

/** Why a field cannot have what stands in it, and what it may have; null = nothing is wrong there. */
export function errorAt({ outcome }: Pick<SoundSheet, 'outcome'>, field: string): string | null {
  if (outcome.state !== 'refused') return null;
  const refusal = outcome.refusals.find((one) => one.field === field);
  return refusal === undefined ? null : `${refusal.why}. Accepted: ${refusal.allowed}.`;
}

/** A part of a nested group of the input changed, the rest of the group kept. */
export function changeIn<Group extends 'port' | 'rearPort' | 'radiator' | 'amplifier' | 'front'>(
  { input, change }: SoundSheet,
  group: Group,
  changes: Partial<SoundInput[Group]>,
): void {
  const changed: Partial<SoundInput> = {};
  changed[group] = { ...input[group], ...changes };
  change(changed);
}

type Committed = { readonly value: number; readonly typed: string };

/** What a field commits, as the sheet keeps it. */
export const keptFigure = (figure: Committed | null): Committed | null =>
  figure === null ? null : { value: figure.value, typed: figure.typed };
