'use client';

import { isRefusal } from '@gusset/units';
import { Controller, useFieldArray, useFormContext } from 'react-hook-form';
import { Button } from '../../shared/controls/button.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { ReadField } from '../../shared/controls/read-field.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { formatClock, openMinutes, parseClock } from './clock-time.ts';
import styles from './hour-settings.module.css';
import type { ShopFormValues } from './shop-form.ts';
import { WeekDrawing } from './week-drawing.tsx';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
const MOST_PARTS = 4;
const MOST_CLOSED = 400;
const NOON = 720;

/** When the bays are open; the plan counts on nothing outside these hours. */
export function HourSettings({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { watch } = useFormContext<ShopFormValues>();
  const week = watch('settings.weeklyHours');
  return (
    <>
      <WeekDrawing days={DAYS} week={week} />
      <FieldSet title="Hours">
        {DAYS.map((day, index) => (
          <DayHours key={day} day={day} index={index} isReadOnly={isReadOnly} />
        ))}
      </FieldSet>
      <ClosedDays isReadOnly={isReadOnly} />
    </>
  );
}

type DayHoursProps = { readonly day: string; readonly index: number; readonly isReadOnly: boolean };

function DayHours({ day, index, isReadOnly }: DayHoursProps) {
  const { watch, setValue, formState } = useFormContext<ShopFormValues>();
  const parts = watch('settings.weeklyHours')[index] ?? [];
  const error = formState.errors.settings?.weeklyHours?.[index];
  const set = (next: { fromMinute: number; toMinute: number }[]) =>
    setValue(`settings.weeklyHours.${index}`, next, { shouldDirty: true, shouldValidate: true });
  const change = (at: number, bound: 'fromMinute' | 'toMinute', minute: number) =>
    set(parts.map((part, i) => (i === at ? { ...part, [bound]: minute } : part)));
  const hours = openMinutes(parts) / 60;
  return (
    <fieldset className={styles.day}>
      <legend>
        {day}{' '}
        <span className="figures">{parts.length === 0 ? 'closed' : `${Number(hours.toFixed(2))} h`}</span>
      </legend>
      <div className={styles.parts}>
        {parts.map((part, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a day have no other name than their place.
          <div key={at} className={styles.part}>
            <TimeField
              label={`${day}, from`}
              value={part.fromMinute}
              onChange={(minute) => change(at, 'fromMinute', minute)}
              isReadOnly={isReadOnly}
            />
            <TimeField
              label={`${day}, to`}
              value={part.toMinute}
              onChange={(minute) => change(at, 'toMinute', minute)}
              isReadOnly={isReadOnly}
            />
            {isReadOnly ? null : (
              <Button
                look="quiet"
                aria-label={`Remove ${day} ${formatClock(part.fromMinute)} to ${formatClock(part.toMinute)}`}
                onPress={() => set(parts.filter((_, i) => i !== at))}
              >
                Remove
              </Button>
            )}
          </div>
        ))}
        {isReadOnly || parts.length >= MOST_PARTS ? null : (
          <Button
            look="quiet"
            aria-label={`Add hours on ${day}`}
            onPress={() => {
              const from = Math.min(parts.at(-1)?.toMinute ?? 480, 1_380);
              set([...parts, { fromMinute: from, toMinute: Math.min(from + NOON / 3, 1_440) }]);
            }}
          >
            Add hours
          </Button>
        )}
      </div>
      {error?.message || error?.root?.message ? (
        <p role="alert" className={styles.error}>
          {error.message ?? error.root?.message}
        </p>
      ) : null}
    </fieldset>
  );
}

type TimeFieldProps = {
  readonly label: string;
  readonly value: number;
  readonly onChange: (minute: number) => void;
  readonly isReadOnly: boolean;
};

function TimeField({ label, value, onChange, isReadOnly }: TimeFieldProps) {
  return (
    <ReadField<number>
      label={label}
      shown={formatClock(value)}
      read={(text) => {
        const minute = parseClock(text);
        return isRefusal(minute)
          ? { kind: 'refused', why: minute.refusal.why }
          : { kind: 'value', value: minute, note: null };
      }}
      step={null}
      format={formatClock}
      onCommit={(minute) => {
        if (minute !== null) onChange(minute);
      }}
      inputMode="text"
      isReadOnly={isReadOnly}
    />
  );
}

function ClosedDays({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control } = useFormContext<ShopFormValues>();
  const days = useFieldArray({ control, name: 'settings.closedDays' });
  return (
    <FieldSet title="Closed days">
      {days.fields.length === 0 ? <p>None yet: holidays, stocktaking, the fair.</p> : null}
      {days.fields.map((closed, index) => (
        <div key={closed.id} className={styles.closed}>
          <Controller
            control={control}
            name={`settings.closedDays.${index}.on`}
            render={({ field, fieldState }) => (
              <DateField
                label="Day"
                value={field.value || null}
                onChange={(day) => field.onChange(day ?? '')}
                isDisabled={isReadOnly}
                error={fieldState.error?.message ?? null}
              />
            )}
          />
          <FormText
            control={control}
            name={`settings.closedDays.${index}.note`}
            label="Why"
            isOptional
            isReadOnly={isReadOnly}
          />
          {isReadOnly ? null : (
            <Button look="quiet" onPress={() => days.remove(index)}>
              Remove
            </Button>
          )}
        </div>
      ))}
      {isReadOnly || days.fields.length >= MOST_CLOSED ? null : (
        <div>
          <Button onPress={() => days.append({ on: '', note: '' })}>Add a closed day</Button>
        </div>
      )}
    </FieldSet>
  );
}
