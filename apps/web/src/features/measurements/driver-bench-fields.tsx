'use client';

import type { CoilWiring } from '@gusset/contracts/acoustics';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { fieldError, type ShownError } from '../../shared/data/shop-error.ts';
import type { Bench } from './driver-bench.ts';

const WIRINGS: readonly { readonly id: CoilWiring; readonly label: string }[] = [
  { id: 'series', label: 'Both coils in series' },
  { id: 'parallel', label: 'Both coils side by side' },
  { id: 'single', label: 'One coil, the other open' },
];

export type DriverBenchFieldsProps = {
  readonly bench: Bench;
  readonly onChange: (bench: Bench) => void;
  readonly coils: 1 | 2;
  readonly error: ShownError | null;
};

/** What only a meter and a tape can say. */
export function DriverBenchFields({ bench, onChange, coils, error }: DriverBenchFieldsProps) {
  return (
    <>
      <NumberField
        label="Resistance by the meter"
        hint="At the terminals as wired, cold, leads taken off; empty = from the fit"
        isOptional
        unit="ohm"
        min={0.05}
        max={400}
        value={bench.reOhm}
        error={fieldError(error, 'bench.reOhm')}
        onCommit={(figure) => onChange({ ...bench, reOhm: figure?.value ?? null })}
      />
      <NumberField
        label="Cone area Sd, cm²"
        hint="By the diameter to the middle of the surround"
        isOptional
        min={1}
        max={20_000}
        digits={1}
        value={bench.sdCm2}
        error={fieldError(error, 'bench.sdCm2')}
        onCommit={(figure) => onChange({ ...bench, sdCm2: figure?.value ?? null })}
      />
      {coils === 2 ? (
        <Select
          label="Coils while swept"
          options={WIRINGS}
          value={bench.wiring}
          error={fieldError(error, 'bench.wiring')}
          onChange={(wiring) => onChange({ ...bench, wiring })}
        />
      ) : null}
    </>
  );
}
