'use client';

import type { SectionForm } from '@gusset/contracts/cargo';
import type { Reading, SurveyExtras, SurveyState } from '@gusset/contracts/survey';
import { Button } from '../../shared/controls/button.tsx';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { ReadField } from '../../shared/controls/read-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import type { TypedReading } from '../../shared/controls/typed-reading.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import styles from './measuring-screen.module.css';
import { readEntry } from './reading-entry.ts';

export type StateFieldsProps = {
  readonly state: SurveyState;
  readonly form: SectionForm;
  /** As measured, without any state. */
  readonly readings: readonly Reading[];
  readonly extras: Pick<SurveyExtras, 'obstructions' | 'keepFree'>;
  readonly set: (changes: Partial<SurveyState>) => void;
  readonly isReadOnly: boolean;
};

/** The space with a seat folded or a panel out: which letters read otherwise, and what is gone then. */
export function StateFields({ state, form, readings, extras, set, isReadOnly }: StateFieldsProps) {
  const { lengthUnit } = useDisplay();
  const { replaced, absent } = state;
  const taken = new Set(replaced.map(({ key }) => key));
  const put = (reading: Reading) =>
    set({ replaced: [...replaced.filter(({ key }) => key !== reading.key), reading] });
  const parts = [...extras.obstructions, ...extras.keepFree];
  return (
    <>
      {replaced.map((reading) => {
        const dimension = form.dimensions.find(({ key }) => key === reading.key);
        if (dimension === undefined) return null;
        const read = (text: string): TypedReading<Reading> => {
          const entry = { text, method: reading.method, plusMinus: null };
          const outcome = readEntry(dimension, entry, lengthUnit);
          if (outcome.kind === 'reading') return { kind: 'value', value: outcome.reading, note: null };
          return outcome;
        };
        return (
          <div key={reading.key} className={styles.stateReading}>
            <ReadField
              label={`${dimension.letter}, ${dimension.label}`}
              shown={reading.typed}
              read={read}
              step={null}
              format={(kept) => kept.typed}
              unitText=""
              onCommit={(kept) => (kept === null ? undefined : put(kept))}
              isReadOnly={isReadOnly}
            />
            {isReadOnly ? null : (
              <Button
                look="quiet"
                aria-label={`${dimension.letter} as measured`}
                onPress={() => set({ replaced: replaced.filter(({ key }) => key !== reading.key) })}
              >
                As measured
              </Button>
            )}
          </div>
        );
      })}
      {isReadOnly ? null : (
        <Select
          label="A letter that reads otherwise"
          hint="It starts as measured; type over it"
          options={form.dimensions
            .filter(({ key }) => !taken.has(key) && readings.some((reading) => reading.key === key))
            .map(({ key, letter, label }) => ({ id: key, label: `${letter}, ${label}` }))}
          value={null}
          onChange={(chosen) => {
            const measured = readings.find(({ key }) => key === chosen);
            if (measured === undefined) return;
            const { key, value, typed, plusMinus, method } = measured;
            put({ key, value, typed, plusMinus, method });
          }}
        />
      )}
      {parts.map(({ id, name }) => (
        <Checkbox
          key={id}
          isSelected={absent.includes(id)}
          onChange={(isGone) =>
            set({ absent: isGone ? [...absent, id] : absent.filter((each) => each !== id) })
          }
          isDisabled={isReadOnly}
        >
          {name} is gone then
        </Checkbox>
      ))}
    </>
  );
}
