'use client';

import type { BoxLength } from '@gusset/contracts/box';
import { keyedPlaces, type Scene } from '@gusset/drawings';
import type { TypedLength } from '@gusset/units';
import { type KeyboardEvent, useRef } from 'react';
import { Button } from 'react-aria-components/Button';
import { Dialog, DialogTrigger } from 'react-aria-components/Dialog';
import { Popover } from 'react-aria-components/Popover';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { keptLength, type LengthRule } from '../../shared/job/length-rule.ts';
import styles from './box-drawings.module.css';
import type { BoxJobSheet, OutsideKey } from './box-types.ts';
import { OUTSIDE_WORDS, outsideKeyOf } from './box-types.ts';

export type DimensionOverlayProps = {
  readonly scene: Scene;
  readonly sheet: BoxJobSheet;
  readonly rule: LengthRule;
  readonly errorOf: (field: string) => string | null;
};

/** Each figure on the drawing that can be changed: a press opens its field there. */
export function DimensionOverlay({ scene, sheet, rule, errorOf }: DimensionOverlayProps) {
  const { input, change } = sheet;
  const set = (key: OutsideKey, length: TypedLength | null) =>
    change({ outside: { ...input.outside, [key]: keptLength(length) } });
  return (
    <div>
      {keyedPlaces(scene).map((place) => {
        const key = outsideKeyOf(place.key);
        if (key === null) return null;
        const value = input.outside[key];
        return (
          <DialogTrigger key={place.key}>
            <Button
              className={styles.figure}
              style={{
                insetInlineStart: `${(place.centre.x / scene.widthPt) * 100}%`,
                insetBlockStart: `${(place.centre.y / scene.heightPt) * 100}%`,
              }}
              aria-label={`${OUTSIDE_WORDS[key]}${value === null ? '' : `, ${rule.words(value.mm)}`}: change`}
            />
            <Popover className={styles.popover} placement="bottom" offset={4}>
              <Dialog className={styles.dialog} aria-label={OUTSIDE_WORDS[key]}>
                {({ close }) => (
                  <FigureField
                    name={OUTSIDE_WORDS[key]}
                    value={value}
                    onCommit={(length) => set(key, length)}
                    error={errorOf(place.key)}
                    onDone={close}
                  />
                )}
              </Dialog>
            </Popover>
          </DialogTrigger>
        );
      })}
    </div>
  );
}

type FigureFieldProps = {
  readonly name: string;
  readonly value: BoxLength | null;
  readonly onCommit: (length: TypedLength | null) => void;
  readonly error: string | null;
  readonly onDone: () => void;
};

/** Enter takes a readable length and closes; an unreadable one stays with its message. */
function FigureField({ name, value, onCommit, error, onDone }: FigureFieldProps) {
  // The Enter that opened this may be let go of here; only one that was pressed here counts.
  const isPressed = useRef(false);
  const doneByEnter = (event: KeyboardEvent<HTMLElement>) => {
    if (!isPressed.current) return;
    isPressed.current = false;
    const isRefused =
      event.target instanceof HTMLInputElement && event.target.getAttribute('aria-invalid') === 'true';
    if (event.key === 'Enter' && !isRefused) onDone();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only listens for the Enter of the field inside.
    <div
      onKeyDownCapture={(event) => {
        isPressed.current = event.key === 'Enter';
      }}
      onKeyUp={doneByEnter}
    >
      <LengthField label={name} value={value} onCommit={onCommit} maxMm={20_000} error={error} autoFocus />
    </div>
  );
}
