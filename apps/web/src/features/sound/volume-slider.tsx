'use client';

import { formatVolume } from '@gusset/units';
import { useId } from 'react';
import { VolumeField } from '../../shared/controls/volume-field.tsx';
import styles from './sound-screen.module.css';

const LEAST_LITRES = 5;
const MOST_LITRES = 200;
/** A step of the slider is the same share anywhere on it: 1 %. */
const STEP = 0.01;

export type VolumeSliderProps = {
  readonly litres: number | null;
  readonly onChange: (target: { litres: number; typed: string } | null) => void;
  readonly isDisabled: boolean;
  readonly error: string | null;
};

/** Net volume by dragging (logarithmic, so that small boxes are not cramped) or by typing. */
export function VolumeSlider({ litres, onChange, isDisabled, error }: VolumeSliderProps) {
  const id = useId();
  const shown = litres ?? 40;
  const set = (value: number) => onChange({ litres: value, typed: value.toFixed(1) });
  return (
    <div className={styles.volume}>
      <div className={styles.slider}>
        <label className="caption" htmlFor={id}>
          Net volume, drag
        </label>
        <input
          id={id}
          type="range"
          min={Math.log(LEAST_LITRES)}
          max={Math.log(MOST_LITRES)}
          step={STEP}
          value={Math.log(Math.min(MOST_LITRES, Math.max(LEAST_LITRES, shown)))}
          disabled={isDisabled}
          aria-valuetext={formatVolume(shown, 'metric', { both: true })}
          onChange={(event) => set(Number(Math.exp(Number(event.target.value)).toFixed(1)))}
        />
        <div className={styles.ends} aria-hidden="true">
          <span>{LEAST_LITRES} L</span>
          <span>{litres === null ? '' : formatVolume(litres, 'metric', { both: true })}</span>
          <span>{MOST_LITRES} L</span>
        </div>
      </div>
      <VolumeField
        label="Net volume"
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
    </div>
  );
}
