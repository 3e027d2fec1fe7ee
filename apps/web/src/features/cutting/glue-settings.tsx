'use client';

import { ADHESIVE_KINDS, USUAL_ADHESIVES } from '@gusset/contracts/cutting';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { RadioGroup } from '../../shared/controls/radio-group.tsx';
import type { SettingsProps } from './cutting-types.ts';

/** Which glue, and how warm the shop is while it sets. */
export function GlueSettings({ sheet, errorOf }: SettingsProps) {
  const { gluing } = sheet.input;
  return (
    <>
      <RadioGroup
        label="Glue"
        isRow
        value={gluing.adhesive}
        onChange={(adhesive) => sheet.change({ gluing: { ...gluing, adhesive } })}
        isDisabled={!sheet.mayEdit}
        options={ADHESIVE_KINDS.map((id) => ({ id, label: USUAL_ADHESIVES[id].name }))}
      />
      <FieldGrid cellMinPx={170}>
        <NumberField
          label="Warmth of the shop, °C"
          hint="While the glue sets"
          value={gluing.temperatureC}
          onCommit={(figure) =>
            figure === null ? undefined : sheet.change({ gluing: { ...gluing, temperatureC: figure.value } })
          }
          min={-20}
          max={45}
          digits={0}
          isReadOnly={!sheet.mayEdit}
          error={errorOf('gluing.temperatureC')}
        />
      </FieldGrid>
    </>
  );
}

export function glueWords({ sheet }: SettingsProps): string {
  const { adhesive, temperatureC } = sheet.input.gluing;
  return `${USUAL_ADHESIVES[adhesive].name}, ${temperatureC} °C`;
}
