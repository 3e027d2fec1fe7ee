'use client';

import type { TypedLitres } from '@gusset/contracts/sound';
import { formatVolume } from '@gusset/units';
import { VolumeField } from '../../../shared/controls/volume-field.tsx';
import { DragSlider } from './drag-slider.tsx';

const LEAST_LITRES = 5;
const MOST_LITRES = 300;
const RESTING_LITRES = 40;

export type LitresSliderProps = {
  readonly label: string;
  readonly litres: number | null;
  readonly onChange: (net: TypedLitres | null) => void;
  readonly isDisabled: boolean;
  readonly error: string | null;
};

/** Air of a chamber, dragged or typed. */
export function LitresSlider({ label, litres, onChange, isDisabled, error }: LitresSliderProps) {
  return (
    <DragSlider
      label={label}
      value={litres}
      resting={RESTING_LITRES}
      least={LEAST_LITRES}
      most={MOST_LITRES}
      words={(value) => formatVolume(value, 'metric')}
      onDrag={(value) => onChange({ litres: value, typed: value.toFixed(1) })}
      isDisabled={isDisabled}
    >
      <VolumeField
        label={label}
        hint="Litres, or 1.5 ft3"
        litres={litres}
        minLitres={0.5}
        maxLitres={2_000}
        onCommit={(volume) =>
          onChange(volume === null ? null : { litres: volume.litres, typed: volume.typed })
        }
        isDisabled={isDisabled}
        error={error}
      />
    </DragSlider>
  );
}
