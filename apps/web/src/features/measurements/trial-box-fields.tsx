'use client';

import { useQuery } from '@tanstack/react-query';
import { ComboBox } from '../../shared/controls/combo-box.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { VolumeField } from '../../shared/controls/volume-field.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { TrialDraft } from './trial-box.ts';

export type TrialBoxFieldsProps = {
  readonly trial: TrialDraft;
  readonly onChange: (trial: TrialDraft) => void;
};

/** Which box played: the prediction comes from it. */
export function TrialBoxFields({ trial, onChange }: TrialBoxFieldsProps) {
  const trpc = useTRPC();
  const drivers = useQuery(trpc.part.driver.list.queryOptions({ limit: 200 }));
  const options = (drivers.data?.rows ?? []).map(({ id, maker, name }) => ({
    id,
    label: [maker, name].filter((word) => word !== '').join(' '),
  }));
  return (
    <FieldGrid cellMinPx={170}>
      <ComboBox
        label="Driver of the trial box"
        options={options}
        value={trial.driverId}
        onChange={(driverId) => onChange({ ...trial, driverId })}
      />
      <VolumeField
        label="Its net air"
        minLitres={0.05}
        maxLitres={2_000}
        litres={trial.net?.litres ?? null}
        onCommit={(volume) =>
          onChange({ ...trial, net: volume === null ? null : { litres: volume.litres, typed: volume.typed } })
        }
      />
      <NumberField
        label="Its tuning"
        hint="Empty for a closed box"
        isOptional
        unit="hertz"
        min={5}
        max={500}
        value={trial.tuning?.hz ?? null}
        onCommit={(figure) =>
          onChange({ ...trial, tuning: figure === null ? null : { hz: figure.value, typed: figure.typed } })
        }
      />
      <NumberField
        label="Voltage while sweeping"
        unit="volt"
        min={0.001}
        max={1_000}
        value={trial.drive?.volts ?? null}
        onCommit={(figure) =>
          onChange({ ...trial, drive: figure === null ? null : { volts: figure.value, typed: figure.typed } })
        }
      />
    </FieldGrid>
  );
}
