'use client';

import { SWEEP_USES, type SweepView } from '@gusset/contracts/measurement';
import { Select } from '../../shared/controls/select.tsx';

const NONE = 'none';

export type SweepChoiceProps = {
  readonly label: string;
  readonly sweeps: readonly SweepView[];
  readonly value: string | null;
  readonly onChange: (sweepId: string | null) => void;
  /** What no sweep means; left out where one must be chosen. */
  readonly without?: string;
};

/** One of the sweeps that were taken in, by what it is and when. */
export function SweepChoice({ label, sweeps, value, onChange, without }: SweepChoiceProps) {
  const options = [
    ...(without === undefined ? [] : [{ id: NONE, label: without }]),
    ...sweeps.map((sweep) => ({ id: sweep.id, label: sweepName(sweep), detail: sweepDetail(sweep) })),
  ];
  return (
    <Select
      label={label}
      options={options}
      value={value ?? (without === undefined ? null : NONE)}
      placeholder={sweeps.length === 0 ? 'none taken in yet' : 'Choose'}
      isDisabled={options.length === 0}
      onChange={(id) => onChange(id === NONE ? null : id)}
    />
  );
}

/** "Driver with added mass, 60 g". */
export function sweepName({ use, conditions }: SweepView): string {
  const { words } = SWEEP_USES[use];
  if (conditions.addedMass !== null) return `${words}, ${conditions.addedMass.grams} g`;
  return conditions.knownBox === null ? words : `${words}, ${conditions.knownBox.litres} L`;
}

/** When, by whom, from which file, and what was noted. */
export function sweepDetail({ takenOn, importedAt, takenBy, fileName, notes }: SweepView): string {
  return [takenOn ?? importedAt.slice(0, 10), takenBy, fileName, notes]
    .filter((word) => word !== '')
    .join(', ');
}
