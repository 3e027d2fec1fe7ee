'use client';

import { keyedPlaces, type Scene } from '@gusset/drawings';
import type { TypedLength } from '@gusset/units';
import { Button } from 'react-aria-components/Button';
import { Dialog, DialogTrigger } from 'react-aria-components/Dialog';
import { Popover } from 'react-aria-components/Popover';
import { LengthField } from '../../shared/controls/length-field.tsx';
import styles from './box-drawings.module.css';
import type { BoxJobSheet, OutsideKey } from './box-types.ts';
import { keptLength, OUTSIDE_WORDS, outsideKeyOf } from './box-types.ts';
import type { LengthRule } from './use-length-rule.ts';

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
    <div data-screen-only="">
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
                <LengthField
                  label={OUTSIDE_WORDS[key]}
                  value={value}
                  onCommit={(length) => set(key, length)}
                  maxMm={20_000}
                  error={errorOf(place.key)}
                  autoFocus
                />
              </Dialog>
            </Popover>
          </DialogTrigger>
        );
      })}
    </div>
  );
}
