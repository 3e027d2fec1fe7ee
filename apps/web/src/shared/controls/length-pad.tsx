'use client';

import type { LengthUnit } from '@gusset/units';
import type { PointerEvent, ReactNode } from 'react';
import { useEffect } from 'react';
import { createPortal } from 'react-dom';
import { classNames } from './class-names.ts';
import styles from './length-pad.module.css';
import { type PadKey, TAPE_FRACTIONS, type TapeFraction } from './length-pad-keys.ts';

const DIGIT_ROWS = ['789', '456', '123'] as const;
const MARK_LENGTH_PX: Readonly<Record<string, number>> = { '2': 18, '4': 14, '8': 10, '16': 6 };

export type LengthPadProps = {
  readonly label: string;
  readonly text: string;
  readonly unit: LengthUnit;
  readonly onKey: (key: PadKey) => void;
  readonly onNext: () => void;
  /** Hands over to the device's own keyboard. */
  readonly onKeyboard: () => void;
  readonly allowsNegative: boolean;
  /** An angle has degrees only: no tape, no second unit. */
  readonly isAngle?: boolean;
  /** Stands over the keys: what else belongs to this reading. */
  readonly head?: ReactNode;
};

type KeyProps = {
  readonly name: string;
  readonly children: ReactNode;
  readonly className?: string;
  readonly isOn?: boolean;
  /** Length of the tape mark over a fraction. */
  readonly markPx?: number;
  readonly onPress: () => void;
};

/** Acts on release inside the key, and never takes the focus from the field. */
function Key({ name, children, className, isOn, markPx, onPress }: KeyProps) {
  const keepFocus = (event: PointerEvent) => event.preventDefault();
  return (
    <button
      type="button"
      tabIndex={-1}
      aria-label={name}
      aria-pressed={isOn}
      className={classNames(styles.key, className, isOn && styles.isOn)}
      style={markPx === undefined ? undefined : ({ '--mark-length': `${markPx}px` } as React.CSSProperties)}
      onPointerDown={keepFocus}
      onMouseDown={(event) => event.preventDefault()}
      onClick={onPress}
    >
      {children}
    </button>
  );
}

const PAD_HEIGHT = '--pad-height';

/** Keys for a length under the thumb: digits, the sixteenths of a tape, units, next. */
export function LengthPad({
  label,
  text,
  unit,
  onKey,
  onNext,
  onKeyboard,
  allowsNegative,
  isAngle = false,
  head,
}: LengthPadProps) {
  const typesInches = !isAngle && (/in|″|"/u.test(text) || (unit === 'in' && !/mm/u.test(text)));
  const other = typesInches ? 'mm' : 'in';
  const isFractionOn = (fraction: TapeFraction) => new RegExp(`(^|\\s)${fraction}(\\s|$|″)`, 'u').test(text);

  // The page scrolls clear of the pad while it is open.
  useEffect(() => {
    const { style } = document.documentElement;
    style.setProperty(PAD_HEIGHT, '324px');
    return () => {
      style.removeProperty(PAD_HEIGHT);
    };
  }, []);

  return createPortal(
    <section className={styles.pad} aria-label={`Keys for ${label}`} data-screen-only="">
      {head}
      {typesInches ? (
        <div className={styles.tape}>
          {TAPE_FRACTIONS.map((fraction) => (
            <Key
              key={fraction}
              name={`${fraction} inch`}
              className={styles.division}
              markPx={MARK_LENGTH_PX[fraction.split('/')[1] ?? '']}
              isOn={isFractionOn(fraction)}
              onPress={() => onKey({ kind: 'fraction', fraction })}
            >
              {fraction}
            </Key>
          ))}
          <Key name="Clear" className={styles.division} onPress={() => onKey({ kind: 'clear' })}>
            clear
          </Key>
        </div>
      ) : null}
      <div className={styles.keys}>
        {DIGIT_ROWS.map((row, rowIndex) => [
          ...[...row].map((digit) => (
            <Key key={digit} name={digit} onPress={() => onKey({ kind: 'digit', digit })}>
              {digit}
            </Key>
          )),
          rowIndex === 0 ? (
            <Key key="erase" name="Erase" className={styles.small} onPress={() => onKey({ kind: 'erase' })}>
              ⌫
            </Key>
          ) : rowIndex === 1 && isAngle ? (
            <Key key="clear" name="Clear" className={styles.small} onPress={() => onKey({ kind: 'clear' })}>
              clear
            </Key>
          ) : rowIndex === 1 ? (
            <Key
              key="unit"
              name={`${typesInches ? 'in → mm' : 'mm → in'}, type in ${other === 'mm' ? 'millimetres' : 'inches'}`}
              className={styles.small}
              onPress={() => onKey({ kind: 'unit', unit: other })}
            >
              {typesInches ? 'in → mm' : 'mm → in'}
            </Key>
          ) : allowsNegative ? (
            <Key
              key="sign"
              name="Change sign"
              className={styles.small}
              onPress={() => onKey({ kind: 'sign' })}
            >
              ±
            </Key>
          ) : (
            <Key key="plus" name="Plus" className={styles.small} onPress={() => onKey({ kind: 'plus' })}>
              +
            </Key>
          ),
        ])}
        <Key name="Decimal point" onPress={() => onKey({ kind: 'point' })}>
          .
        </Key>
        <Key name="0" onPress={() => onKey({ kind: 'digit', digit: '0' })}>
          0
        </Key>
        <Key name="Device keyboard" className={styles.small} onPress={onKeyboard}>
          abc
        </Key>
        <Key name="Next field" className={styles.next} onPress={onNext}>
          Next
        </Key>
      </div>
    </section>,
    document.body,
  );
}
