'use client';

import { SMOOTHINGS, type TransferSetting } from '@gusset/contracts/measurement';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';

const SMOOTHING_OPTIONS = SMOOTHINGS.map((parts) => ({ id: String(parts), label: `1/${parts} octave` }));

export type TransferSettingFieldsProps = {
  readonly setting: TransferSetting;
  readonly onChange: (setting: TransferSetting) => void;
  /** Of the band's upper end: the schema looks at both ends together. */
  readonly bandError: string | null;
};

/** How the sweeps are read: smoothing, the band that counts, and how far above the noise they must stand. */
export function TransferSettingFields({ setting, onChange, bandError }: TransferSettingFieldsProps) {
  return (
    <FieldGrid cellMinPx={140}>
      <Select
        label="Smoothed over"
        options={SMOOTHING_OPTIONS}
        value={String(setting.smoothing)}
        onChange={(id) =>
          onChange({
            ...setting,
            smoothing: SMOOTHINGS.find((parts) => String(parts) === id) ?? setting.smoothing,
          })
        }
      />
      <NumberField
        label="Counts from"
        unit="hertz"
        min={5}
        max={500}
        value={setting.lowHz}
        onCommit={(figure) => figure !== null && onChange({ ...setting, lowHz: figure.value })}
      />
      <NumberField
        label="Counts to"
        unit="hertz"
        min={20}
        max={1_000}
        value={setting.highHz}
        error={bandError}
        onCommit={(figure) => figure !== null && onChange({ ...setting, highHz: figure.value })}
      />
      <NumberField
        label="Least above the noise"
        unit="decibel"
        min={3}
        max={60}
        value={setting.leastSnrDb}
        onCommit={(figure) => figure !== null && onChange({ ...setting, leastSnrDb: figure.value })}
      />
    </FieldGrid>
  );
}
