'use client';

import { type ReactNode, useId } from 'react';
import styles from './settings.module.css';

/** One step of the slider is the same share anywhere on it: 1 %. */
const STEP = 0.01;

export type DragSliderProps = {
  readonly label: string;
  readonly value: number | null;
  /** Where the handle rests while nothing is entered. */
  readonly resting: number;
  readonly least: number;
  readonly most: number;
  readonly words: (value: number) => string;
  readonly onDrag: (value: number) => void;
  readonly isDisabled: boolean;
  /** The same figure as a field, for typing it. */
  readonly children: ReactNode;
};

/** A figure by dragging (logarithmic, so that small ones are not cramped) beside the field that takes it typed. */
export function DragSlider(props: DragSliderProps) {
  const { label, value, resting, least, most, words, onDrag, isDisabled, children } = props;
  const id = useId();
  const shown = Math.min(most, Math.max(least, value ?? resting));
  return (
    <div className={styles.drag}>
      <div className={styles.slider}>
        <label className="caption" htmlFor={id}>
          {label}, drag
        </label>
        <input
          id={id}
          type="range"
          min={Math.log(least)}
          max={Math.log(most)}
          step={STEP}
          value={Math.log(shown)}
          disabled={isDisabled}
          aria-valuetext={words(value ?? resting)}
          onChange={(event) => onDrag(Number(Math.exp(Number(event.target.value)).toFixed(1)))}
        />
        <div className={styles.ends} aria-hidden="true">
          <span>{words(least)}</span>
          <span>{words(most)}</span>
        </div>
      </div>
      {children}
    </div>
  );
}
