'use client';

import { type InchDenominator, LENGTH_LIMIT_MM, type LengthUnit, type TypedLength } from '@gusset/units';
import { useRef, useState } from 'react';
import { Input } from 'react-aria-components/Input';
import { TextField as AriaTextField } from 'react-aria-components/TextField';
import { useDisplay } from '../shell/display-provider.tsx';
import { COARSE_POINTER, useMediaQuery } from '../shell/use-media-query.ts';
import { classNames } from './class-names.ts';
import styles from './field.module.css';
import { FieldLabel, FieldNotes, type FieldText } from './field-frame.tsx';
import { type LengthValue, lengthInField, lengthNote, readLengthEntry, stepLength } from './length-entry.ts';
import { LengthPad } from './length-pad.tsx';
import { type PadKey, pressPadKey } from './length-pad-keys.ts';
import { useTypedEntry } from './use-typed-entry.ts';

export type LengthFieldProps = FieldText & {
  readonly value: LengthValue | null;
  /** Called once a readable length (or an emptied field) is committed, with what was typed for it. */
  readonly onCommit: (length: TypedLength | null) => void;
  readonly minMm?: number;
  readonly maxMm?: number;
  /** Finest division of the inch shown; the shop's own where nothing is said. */
  readonly denominator?: InchDenominator;
  readonly isDisabled?: boolean;
  readonly isReadOnly?: boolean;
  readonly isRequired?: boolean;
  readonly autoFocus?: boolean;
  readonly name?: string;
};

/** A text that names its unit; the field's own would then contradict it. */
const SAYS_ITS_UNIT = /[a-z"'″′]/iu;

const LENGTH_INPUTS = 'input[data-length]:not([disabled], [readonly])';

/** The next length on the page in reading order; null at the last one. */
const nextLengthInput = (from: HTMLInputElement | null): HTMLInputElement | null => {
  const all = [...document.querySelectorAll<HTMLInputElement>(LENGTH_INPUTS)];
  return from === null ? null : (all[all.indexOf(from) + 1] ?? null);
};

/**
 * One length: takes 438, 43.8cm, 17 1/4, 17¼", 1' 5 1/4" and sums alike, shows it in this device's unit and
 * keeps what was typed. Enter, Tab and blur commit, Esc restores, arrows step one division (Shift: ten).
 */
export function LengthField({
  label,
  hint,
  error = null,
  isOptional,
  value,
  onCommit,
  minMm = 0,
  maxMm = LENGTH_LIMIT_MM,
  denominator,
  isReadOnly = false,
  ...rest
}: LengthFieldProps) {
  const { lengthUnit, shop } = useDisplay();
  const isCoarse = useMediaQuery(COARSE_POINTER);
  const [padIsOpen, setPadIsOpen] = useState(false);
  const [prefersKeyboard, setPrefersKeyboard] = useState(false);
  // The unit chosen on the pad before any digit; null follows the field.
  const [padUnit, setPadUnit] = useState<LengthUnit | null>(null);
  // The first key after focus replaces the selected text, as typing would.
  const startsFresh = useRef(false);
  const inputRef = useRef<HTMLInputElement>(null);
  const rules = { unit: lengthUnit, denominator: denominator ?? shop.inchDenominator, minMm, maxMm };

  const entry = useTypedEntry<TypedLength>({
    shown: value === null ? '' : lengthInField(value.mm, rules),
    read: (text) => readLengthEntry(text, rules),
    step: (text, steps) => stepLength(text, steps, rules),
    format: (length) => lengthInField(length.mm, rules),
    onCommit,
  });
  const usesPad = isCoarse && !prefersKeyboard && !isReadOnly;
  const message = entry.refusal ?? error;
  const restingNote = entry.note ?? lengthNote(value, rules);

  const pressKey = (key: PadKey): void => {
    const isUntouched = startsFresh.current || entry.text === '';
    if (key.kind === 'unit') setPadUnit(key.unit);
    // Before the first digit a unit key only says what the digits will mean.
    if (key.kind === 'unit' && isUntouched) return;
    const replaces = startsFresh.current && key.kind !== 'erase' && key.kind !== 'sign';
    startsFresh.current = false;
    const typed = pressPadKey(replaces ? '' : entry.text, key);
    const meansOther = padUnit !== null && padUnit !== lengthUnit && key.kind !== 'erase';
    const needsUnit = meansOther && /\d$/u.test(typed) && !SAYS_ITS_UNIT.test(typed);
    entry.type(needsUnit ? `${typed} ${padUnit}` : typed);
  };

  const goToNext = (): void => {
    const next = nextLengthInput(inputRef.current);
    if (next) next.focus();
    else inputRef.current?.blur();
  };

  return (
    <AriaTextField
      {...rest}
      className={styles.field}
      isReadOnly={isReadOnly}
      isInvalid={message !== null}
      validationBehavior="aria"
      value={entry.text}
      onChange={entry.type}
    >
      <div className={styles.cell}>
        <FieldLabel label={label} isOptional={isOptional} />
        <Input
          {...entry.inputHandlers}
          ref={inputRef}
          data-length=""
          className={classNames(styles.input, styles.figures)}
          inputMode={usesPad ? 'none' : 'text'}
          enterKeyHint="next"
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          onFocus={(event) => {
            entry.inputHandlers.onFocus(event);
            startsFresh.current = true;
            setPadUnit(null);
            setPadIsOpen(true);
            if (isCoarse) event.currentTarget.scrollIntoView({ block: 'center' });
          }}
          onBlur={() => {
            entry.inputHandlers.onBlur();
            setPadIsOpen(false);
          }}
        />
        {lengthUnit === 'mm' && !SAYS_ITS_UNIT.test(entry.text) ? (
          <span className={styles.unit}>mm</span>
        ) : null}
      </div>
      <FieldNotes hint={hint ?? restingNote} error={message} />
      {padIsOpen && usesPad ? (
        <LengthPad
          label={label}
          text={entry.text}
          unit={padUnit ?? lengthUnit}
          allowsNegative={minMm < 0}
          onKey={pressKey}
          onNext={goToNext}
          onKeyboard={() => {
            setPrefersKeyboard(true);
            inputRef.current?.blur();
            requestAnimationFrame(() => inputRef.current?.focus());
          }}
        />
      ) : null}
    </AriaTextField>
  );
}
