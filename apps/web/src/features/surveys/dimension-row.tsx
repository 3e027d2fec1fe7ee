'use client';

import { DEFAULT_PLUS_MINUS_MM, type Dimension, MEASURING_METHODS } from '@gusset/contracts/cargo';
import { useEffect, useId, useRef, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { classNames } from '../../shared/controls/class-names.ts';
import { LengthPad } from '../../shared/controls/length-pad.tsx';
import { type PadKey, pressPadKey } from '../../shared/controls/length-pad-keys.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { COARSE_POINTER, PHONE_WIDTH, useMediaQuery } from '../../shared/shell/use-media-query.ts';
import { plusMinusSteps } from '../../shared/survey/reading-entry.ts';
import { METHOD_WORDS, plusMinusWords, valueWords } from '../../shared/survey/reading-words.ts';
import styles from './measuring-screen.module.css';
import { CameraButton, PhotoStrip } from './photo-strip.tsx';
import type { SurveyAnswer } from './photo-upload.ts';
import type { KeptReading, SurveyAct } from './survey-acts.ts';
import type { UsedEntry } from './use-entry.ts';

export type DimensionRowProps = {
  readonly dimension: Dimension;
  readonly reading: KeptReading | null;
  /** Waiting acts at this dimension: not sent, or in trouble. */
  readonly acts: readonly SurveyAct[];
  readonly photos: SurveyAnswer['photos'];
  readonly isActive: boolean;
  readonly isReadOnly: boolean;
  /** False when the page opens: nobody asked for the keys yet. */
  readonly takesFocus: boolean;
  readonly entry: UsedEntry;
  readonly onSelect: () => void;
  readonly onNext: () => void;
  readonly onRemove: () => void;
  readonly onCompare: () => void;
  readonly onPhoto: (photo: File) => void;
  readonly onRemovePhoto: (photoId: string) => void;
};

/** One lettered dimension: what it says, and while it is asked for, everything to take it with. */
export function DimensionRow(props: DimensionRowProps) {
  const { dimension, isActive, onSelect } = props;
  return (
    <li className={classNames(styles.row, isActive && styles.on)} data-dimension={dimension.key}>
      <button type="button" className={styles.rowHead} aria-expanded={isActive} onClick={onSelect}>
        <span className={styles.letter} aria-hidden="true">
          {dimension.letter}
        </span>
        <span className={styles.label}>
          <span className="unseen">{dimension.letter}: </span>
          {dimension.label}
          {isActive ? null : <RowTrouble acts={props.acts} />}
        </span>
        <RowValue {...props} />
      </button>
      {isActive ? <OpenRow {...props} /> : null}
    </li>
  );
}

function RowTrouble({ acts }: { readonly acts: readonly SurveyAct[] }) {
  const trouble = acts.find((act) => act.trouble !== null)?.trouble;
  if (trouble == null) return null;
  return (
    <span className={styles.trouble}>
      {trouble.kind === 'conflict' ? 'Taken twice: compare both readings' : trouble.message}
    </span>
  );
}

function RowValue({ dimension, reading, photos }: DimensionRowProps) {
  const { lengthUnit, shop } = useDisplay();
  const manner = { unit: lengthUnit, denominator: shop.inchDenominator };
  if (reading === null) {
    return (
      <span className={styles.value}>
        <span aria-hidden="true">–</span>
        <span className="unseen">not taken</span>
      </span>
    );
  }
  const typedOtherwise =
    (lengthUnit === 'mm') === /in|″|"/u.test(reading.typed) && dimension.unit === 'length';
  const facts = [
    typedOtherwise ? reading.typed : null,
    plusMinusWords(dimension, reading.plusMinus, manner),
    METHOD_WORDS[reading.method],
    photos.length === 0 ? null : photos.length === 1 ? '1 photo' : `${photos.length} photos`,
  ];
  return (
    <span className={styles.value}>
      {valueWords(dimension, reading.value, manner)}
      <small>{facts.filter((fact) => fact !== null).join(' · ')}</small>
    </span>
  );
}

function OpenRow(props: DimensionRowProps) {
  const { dimension, reading, acts, photos, isReadOnly, entry, onRemove, onCompare, onRemovePhoto } = props;
  const conflict = acts.find((act) => act.trouble?.kind === 'conflict');
  return (
    <div className={styles.open}>
      <p className={styles.hint}>{dimension.hint}</p>
      {isReadOnly ? null : (
        <>
          <ReadingField {...props} />
          <PlusMinusChips dimension={dimension} entry={entry} />
          <MethodChips dimension={dimension} entry={entry} />
        </>
      )}
      {conflict === undefined ? null : (
        <p className={styles.trouble}>
          Someone else took this letter too. <Button onPress={onCompare}>Compare both readings</Button>
        </p>
      )}
      {reading === null ? null : (
        <p className={styles.who}>
          {reading.takenBy}, <TakenAt iso={reading.takenAt} />
        </p>
      )}
      <div className={styles.rowActs}>
        <PhotoStrip
          about={`${dimension.letter}, ${dimension.label}`}
          photos={photos}
          waiting={acts.filter((act) => act.kind === 'photo')}
          isReadOnly={isReadOnly}
          onRemove={onRemovePhoto}
        />
        {reading !== null && !isReadOnly ? (
          <Button look="quiet" onPress={onRemove}>
            Remove this reading
          </Button>
        ) : null}
      </div>
    </div>
  );
}

function TakenAt({ iso }: { readonly iso: string }) {
  const { shop } = useDisplay();
  const words = new Intl.DateTimeFormat(shop.locale, {
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    timeZone: shop.timeZone,
  }).format(new Date(iso));
  return <time dateTime={iso}>{words}</time>;
}

function ReadingField({ dimension, entry, takesFocus, onNext, onPhoto }: DimensionRowProps) {
  const { lengthUnit } = useDisplay();
  const isCoarse = useMediaQuery(COARSE_POINTER);
  const isPhone = useMediaQuery(PHONE_WIDTH);
  const [prefersKeyboard, setPrefersKeyboard] = useState(false);
  const [padUnit, setPadUnit] = useState<'mm' | 'in' | null>(null);
  const [isFocused, setIsFocused] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const usesPad = isCoarse && !prefersKeyboard;
  const isAngle = dimension.unit === 'angle';

  // The row was opened by a press: the field is what it was opened for.
  useEffect(() => {
    if (!takesFocus) return;
    input.current?.focus({ preventScroll: true });
    // On a phone the drawing stays above and the keys below: the letter goes between them.
    const block = isPhone ? 'start' : 'nearest';
    input.current?.closest('[data-dimension]')?.scrollIntoView({ block, behavior: 'instant' });
  }, [takesFocus, isPhone]);

  const press = (key: PadKey) => {
    if (key.kind === 'unit') setPadUnit(key.unit);
    const isUntouched = entry.isFresh || entry.text === '';
    if (key.kind === 'unit' && isUntouched) return;
    const replaces = entry.isFresh && key.kind !== 'erase' && key.kind !== 'sign';
    const typed = pressPadKey(replaces ? '' : entry.text, key);
    const meansOther = padUnit !== null && padUnit !== lengthUnit && key.kind !== 'erase';
    const needsUnit = meansOther && /\d$/u.test(typed) && !/[a-z'"″′]/iu.test(typed);
    entry.type(needsUnit ? `${typed} ${padUnit}` : typed);
  };
  const allowsNegative = dimension.unit === 'angle' ? dimension.minRad < 0 : dimension.minMm < 0;
  return (
    <div className={styles.entry}>
      <label className="unseen" htmlFor={id}>
        {dimension.letter}, {dimension.label}
      </label>
      <input
        ref={input}
        id={id}
        className={styles.input}
        value={entry.text}
        inputMode={usesPad ? 'none' : 'text'}
        enterKeyHint="next"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        placeholder={placeholderOf(dimension, lengthUnit)}
        aria-invalid={entry.refusal !== null}
        aria-describedby={entry.refusal === null ? undefined : `${id}-why`}
        onChange={(event) => entry.type(event.target.value)}
        onFocus={(event) => {
          setIsFocused(true);
          event.target.select();
        }}
        onBlur={() => setIsFocused(false)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') {
            event.preventDefault();
            onNext();
          }
          if (event.key === 'Escape') entry.restore();
        }}
      />
      <span className={styles.unit} aria-hidden="true">
        {/[a-z'"″′°]/iu.test(entry.text) ? '' : isAngle ? '°' : (padUnit ?? lengthUnit)}
      </span>
      <CameraButton about={`${dimension.letter}, ${dimension.label}`} onPhoto={onPhoto} />
      {usesPad ? null : (
        <Button look="primary" onPress={onNext}>
          Next
        </Button>
      )}
      {entry.refusal === null ? null : (
        <p id={`${id}-why`} className={styles.refusal} role="alert">
          {entry.refusal}
        </p>
      )}
      {usesPad && isFocused ? (
        <LengthPad
          label={`${dimension.letter}, ${dimension.label}`}
          text={entry.text}
          unit={padUnit ?? lengthUnit}
          isAngle={isAngle}
          allowsNegative={allowsNegative}
          onKey={press}
          onNext={onNext}
          onKeyboard={() => {
            setPrefersKeyboard(true);
            requestAnimationFrame(() => input.current?.focus());
          }}
        />
      ) : null}
    </div>
  );
}

function placeholderOf({ unit }: Dimension, lengthUnit: 'mm' | 'in'): string {
  if (unit === 'angle') return 'degrees';
  return lengthUnit === 'mm' ? '812 or 32 in' : '19 5/8 or 500 mm';
}

type ChipsProps = { readonly dimension: Dimension; readonly entry: UsedEntry };

/** A tap on a chip never takes the focus: the pad stays. */
const keepFocus = (event: React.PointerEvent) => event.preventDefault();

function MethodChips({ dimension, entry }: ChipsProps) {
  const fitting = MEASURING_METHODS.filter((method) => dimension.unit === 'length' || method !== 'laser');
  return (
    <Chips label="How it is taken">
      {fitting.map((method) => (
        <Chip key={method} isOn={method === entry.method} onPress={() => entry.setMethod(method)}>
          {METHOD_WORDS[method]}
        </Chip>
      ))}
    </Chips>
  );
}

function PlusMinusChips({ dimension, entry }: ChipsProps) {
  const { lengthUnit, shop } = useDisplay();
  const manner = { unit: lengthUnit, denominator: shop.inchDenominator };
  const [usual, ...others] = plusMinusSteps(dimension, entry.method);
  if (usual === undefined) return null;
  const trim = dimension.unit === 'length' && usual > (DEFAULT_PLUS_MINUS_MM[entry.method] ?? 0);
  return (
    <Chips label="How sure">
      <Chip isOn={entry.plusMinus === null} onPress={() => entry.setPlusMinus(null)}>
        {plusMinusWords(dimension, usual, manner)} usual{trim ? ', soft trim' : ''}
      </Chip>
      {others.map((step) => (
        <Chip key={step} isOn={entry.plusMinus === step} onPress={() => entry.setPlusMinus(step)}>
          {plusMinusWords(dimension, step, manner)}
        </Chip>
      ))}
    </Chips>
  );
}

function Chips({ label, children }: { readonly label: string; readonly children: React.ReactNode }) {
  return (
    <fieldset className={styles.chips}>
      <legend className="caption">{label}</legend>
      <div className={styles.chipLine}>{children}</div>
    </fieldset>
  );
}

type ChipProps = { readonly isOn: boolean; readonly onPress: () => void; readonly children: React.ReactNode };

function Chip({ isOn, onPress, children }: ChipProps) {
  return (
    <button
      type="button"
      className={styles.chip}
      aria-pressed={isOn}
      onPointerDown={keepFocus}
      onClick={onPress}
    >
      {children}
    </button>
  );
}
