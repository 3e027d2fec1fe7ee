'use client';

import { DEFAULT_ROUTER_TOOLS } from '@gusset/contracts/cutting';
import type { CuttingInput } from '@gusset/contracts/cutting-sheet';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { keptLength } from '../../shared/job/length-rule.ts';
import type { SettingsProps } from './cutting-types.ts';

type Machines = CuttingInput['machines'];

/** What is in the router and what the hand saw runs along. */
export function MachineSettings({ sheet, errorOf, rule }: SettingsProps) {
  const { machines } = sheet.input;
  const field = (key: keyof Machines, label: string, hint: string, maxMm: number) => (
    <LengthField
      label={label}
      isOptional
      hint={hint}
      value={machines[key]}
      onCommit={(value) => sheet.change({ machines: { ...machines, [key]: keptLength(value) } })}
      maxMm={maxMm}
      isReadOnly={!sheet.mayEdit}
      error={errorOf(`machines.${key}`)}
    />
  );
  return (
    <FieldGrid cellMinPx={170}>
      {field('bit', 'Router bit', `Empty = ${rule.words(DEFAULT_ROUTER_TOOLS.bitDiaMm)}`, 60)}
      {field('bush', 'Guide bush, outside', 'Empty = no templates', 100)}
      {field('pass', 'Deepest pass', `Empty = ${rule.words(DEFAULT_ROUTER_TOOLS.passMm)}`, 30)}
      {field('baseToBlade', 'Base edge to blade', 'Empty = a rail whose edge is the cut', 500)}
    </FieldGrid>
  );
}

export function machineWords({ sheet, rule }: SettingsProps): string {
  const { bit, bush } = sheet.input.machines;
  const fitted = `bit ${rule.words(bit?.mm ?? DEFAULT_ROUTER_TOOLS.bitDiaMm)}`;
  return bush === null ? `${fitted}, no bush` : `${fitted}, bush ${rule.words(bush.mm)}`;
}
