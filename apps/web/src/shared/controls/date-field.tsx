'use client';

import { type CalendarDate, parseDate } from '@internationalized/date';
import { Button } from 'react-aria-components/Button';
import {
  Calendar,
  CalendarCell,
  CalendarGrid,
  CalendarGridBody,
  CalendarGridHeader,
  CalendarHeaderCell,
} from 'react-aria-components/Calendar';
import { DateInput, DateSegment } from 'react-aria-components/DateField';
import { DatePicker } from 'react-aria-components/DatePicker';
import { Dialog } from 'react-aria-components/Dialog';
import { Heading } from 'react-aria-components/Heading';
import { Popover } from 'react-aria-components/Popover';
import { classNames } from './class-names.ts';
import styles from './date-field.module.css';
import field from './field.module.css';
import { FieldLabel, FieldNotes, type FieldText } from './field-frame.tsx';

export type DateFieldProps = FieldText & {
  /** A shop day, `2026-03-14`: a date on the wall calendar, not an instant. */
  readonly value: string | null;
  readonly onChange: (day: string | null) => void;
  readonly minDay?: string;
  readonly maxDay?: string;
  readonly isDisabled?: boolean;
  readonly isRequired?: boolean;
  readonly name?: string;
};

const asDate = (day: string | null | undefined): CalendarDate | null => (day ? parseDate(day) : null);

/** A day, typed part by part in the reader's own order or picked from the calendar. */
export function DateField({
  label,
  hint,
  error = null,
  isOptional,
  value,
  onChange,
  minDay,
  maxDay,
  ...rest
}: DateFieldProps) {
  return (
    <DatePicker
      {...rest}
      className={field.field}
      isInvalid={error !== null}
      validationBehavior="aria"
      value={asDate(value)}
      minValue={asDate(minDay)}
      maxValue={asDate(maxDay)}
      onChange={(date) => onChange(date?.toString() ?? null)}
      shouldForceLeadingZeros
    >
      <div className={field.cell}>
        <FieldLabel label={label} isOptional={isOptional} />
        <DateInput className={classNames(field.input, field.figures, styles.input)}>
          {(segment) => <DateSegment segment={segment} className={styles.segment} />}
        </DateInput>
        <Button className={field.side}>
          <span className={styles.mark} aria-hidden="true" />
        </Button>
      </div>
      <FieldNotes hint={hint} error={error} />
      <Popover className={styles.popover} offset={2}>
        <Dialog className={styles.dialog}>
          <Calendar>
            <header className={styles.header}>
              <Button slot="previous" className={styles.step}>
                ‹
              </Button>
              <Heading className={styles.month} />
              <Button slot="next" className={styles.step}>
                ›
              </Button>
            </header>
            <CalendarGrid className={styles.grid}>
              <CalendarGridHeader>
                {(day) => <CalendarHeaderCell className="caption">{day}</CalendarHeaderCell>}
              </CalendarGridHeader>
              <CalendarGridBody>
                {(date) => <CalendarCell date={date} className={styles.day} />}
              </CalendarGridBody>
            </CalendarGrid>
          </Calendar>
        </Dialog>
      </Popover>
    </DatePicker>
  );
}
