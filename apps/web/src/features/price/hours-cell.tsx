'use client';

import { formatMinutes, isRefusal, parseMinutes, type TypedMinutes } from '@gusset/units';
import { Input } from 'react-aria-components/Input';
import { Text } from 'react-aria-components/Text';
import { TextField } from 'react-aria-components/TextField';
import { usesDecimalComma } from '../../shared/controls/locale-signs.ts';
import type { TypedReading } from '../../shared/controls/typed-reading.ts';
import { useTypedEntry } from '../../shared/controls/use-typed-entry.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import styles from './price-screen.module.css';

export type HoursCellProps = {
  /** The task, for those who cannot see the row. */
  readonly label: string;
  readonly minutes: number;
  readonly onCommit: (minutes: number) => void;
  readonly isDisabled: boolean;
};

const MOST_MINUTES = 60_000;
const STEP_MINUTES = 15;

/** Working time in a row of the list: `1.5`, `1 h 30` and `90 min` are the same; a bare number is hours. */
export function HoursCell({ label, minutes, onCommit, isDisabled }: HoursCellProps) {
  const decimalComma = usesDecimalComma(useDisplay().shop.locale);
  const read = (text: string): TypedReading<TypedMinutes> => {
    const trimmed = text.trim();
    if (trimmed === '') return { kind: 'empty' };
    const spelled = /^[\d.,]+$/.test(trimmed) ? `${trimmed} h` : trimmed;
    const time = parseMinutes(spelled, { maxMinutes: MOST_MINUTES, decimalComma });
    return isRefusal(time)
      ? { kind: 'refused', why: time.refusal.why }
      : { kind: 'value', value: time, note: null };
  };
  const entry = useTypedEntry<TypedMinutes>({
    shown: formatMinutes(minutes),
    read,
    step: (text, steps) => {
      const reading = read(text);
      if (reading.kind !== 'value') return null;
      const moved = Math.min(MOST_MINUTES, Math.max(0, reading.value.minutes + steps * STEP_MINUTES));
      return { minutes: moved, typed: formatMinutes(moved) };
    },
    format: (time) => formatMinutes(time.minutes),
    onCommit: (time) => onCommit(time?.minutes ?? 0),
  });
  return (
    <TextField
      aria-label={`Hours: ${label}`}
      className={styles.hours}
      value={entry.text}
      onChange={entry.type}
      isInvalid={entry.refusal !== null}
      validationBehavior="aria"
      isDisabled={isDisabled}
    >
      <Input {...entry.inputHandlers} className="figures" autoComplete="off" inputMode="text" />
      {entry.refusal === null ? null : (
        <Text slot="description" className={styles.refusal}>
          {entry.refusal}
        </Text>
      )}
    </TextField>
  );
}
