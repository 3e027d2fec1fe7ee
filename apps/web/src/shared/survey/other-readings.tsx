'use client';

import type { Dimension, SectionForm } from '@gusset/contracts/cargo';
import type { Reading } from '@gusset/contracts/survey';
import { Button } from '../controls/button.tsx';
import { ReadField } from '../controls/read-field.tsx';
import { Select } from '../controls/select.tsx';
import type { TypedReading } from '../controls/typed-reading.ts';
import { useDisplay } from '../shell/display-provider.tsx';
import styles from './other-readings.module.css';
import { readEntry } from './reading-entry.ts';
import { valueWords } from './reading-words.ts';

export type OtherReadingsProps = {
  readonly form: SectionForm;
  /** Without them: what each letter reads otherwise. */
  readonly measured: readonly Reading[];
  readonly replaced: readonly Reading[];
  readonly onChange: (replaced: readonly Reading[]) => void;
  readonly label: string;
  readonly hint: string;
  readonly isReadOnly: boolean;
};

/** Letters that read otherwise: in a state of seat and floor, or in one customer's car. */
export function OtherReadings({
  form,
  measured,
  replaced,
  onChange,
  label,
  hint,
  isReadOnly,
}: OtherReadingsProps) {
  const taken = new Set(replaced.map(({ key }) => key));
  const put = (reading: Reading) =>
    onChange(
      taken.has(reading.key)
        ? replaced.map((each) => (each.key === reading.key ? reading : each))
        : [...replaced, reading],
    );
  return (
    <>
      {replaced.map((reading) => {
        const dimension = form.dimensions.find(({ key }) => key === reading.key);
        if (dimension === undefined) return null;
        return (
          <OtherReading
            key={reading.key}
            dimension={dimension}
            reading={reading}
            measured={measured.find(({ key }) => key === reading.key) ?? null}
            onCommit={put}
            onDrop={() => onChange(replaced.filter(({ key }) => key !== reading.key))}
            isReadOnly={isReadOnly}
          />
        );
      })}
      {isReadOnly ? null : (
        <Select
          label={label}
          hint={hint}
          options={form.dimensions
            .filter(({ key }) => !taken.has(key) && measured.some((reading) => reading.key === key))
            .map(({ key, letter, label: words }) => ({ id: key, label: `${letter}, ${words}` }))}
          value={null}
          onChange={(chosen) => {
            const found = measured.find(({ key }) => key === chosen);
            if (found === undefined) return;
            const { key, value, typed, plusMinus, method } = found;
            put({ key, value, typed, plusMinus, method });
          }}
        />
      )}
    </>
  );
}

type OtherReadingProps = {
  readonly dimension: Dimension;
  readonly reading: Reading;
  readonly measured: Reading | null;
  readonly onCommit: (reading: Reading) => void;
  readonly onDrop: () => void;
  readonly isReadOnly: boolean;
};

function OtherReading({ dimension, reading, measured, onCommit, onDrop, isReadOnly }: OtherReadingProps) {
  const { lengthUnit, shop } = useDisplay();
  const manner = { unit: lengthUnit, denominator: shop.inchDenominator };
  const read = (text: string): TypedReading<Reading> => {
    const outcome = readEntry(dimension, { text, method: reading.method, plusMinus: null }, lengthUnit);
    if (outcome.kind === 'reading') return { kind: 'value', value: outcome.reading, note: null };
    return outcome;
  };
  return (
    <div className={styles.reading}>
      <ReadField
        label={`${dimension.letter}, ${dimension.label}`}
        hint={measured === null ? undefined : `As measured ${valueWords(dimension, measured.value, manner)}`}
        shown={reading.typed}
        read={read}
        step={null}
        format={(kept) => kept.typed}
        unitText=""
        onCommit={(kept) => (kept === null ? undefined : onCommit(kept))}
        isReadOnly={isReadOnly}
      />
      {isReadOnly ? null : (
        <Button look="quiet" aria-label={`${dimension.letter} as measured`} onPress={onDrop}>
          As measured
        </Button>
      )}
    </div>
  );
}
