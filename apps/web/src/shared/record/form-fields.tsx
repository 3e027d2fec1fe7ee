'use client';

import type { FigureUnit, Refusal } from '@gusset/units';
import { formatPercent, isRefusal, parsePercent } from '@gusset/units';
import { type Control, type FieldPath, type FieldValues, useController } from 'react-hook-form';
import { Checkbox } from '../controls/checkbox.tsx';
import { ComboBox } from '../controls/combo-box.tsx';
import { DateField } from '../controls/date-field.tsx';
import type { FieldText } from '../controls/field-frame.tsx';
import { LengthField } from '../controls/length-field.tsx';
import { usesDecimalComma } from '../controls/locale-signs.ts';
import { MoneyField } from '../controls/money-field.tsx';
import { NumberField } from '../controls/number-field.tsx';
import type { Option } from '../controls/option.ts';
import { ReadField } from '../controls/read-field.tsx';
import { Select } from '../controls/select.tsx';
import { TextArea } from '../controls/text-area.tsx';
import type { TypedReading } from '../controls/typed-reading.ts';
import { useDisplay } from '../shell/display-provider.tsx';

/** A shared field bound to a react-hook-form: its error comes from the form's schema or from the server. */
export type BoundField<Values extends FieldValues> = Omit<FieldText, 'error'> & {
  readonly control: Control<Values>;
  readonly name: FieldPath<Values>;
  readonly isReadOnly?: boolean;
};

function useBound<Values extends FieldValues>({ control, name }: BoundField<Values>) {
  const { field, fieldState } = useController({ control, name });
  const value: unknown = field.value;
  const set = (next: unknown) => {
    field.onChange(next);
    field.onBlur();
  };
  return { value, set, error: fieldState.error?.message ?? null, ref: field.ref, onBlur: field.onBlur };
}

const textOf = ({ label, hint, isOptional }: Omit<FieldText, 'error'>) => ({ label, hint, isOptional });
const numberOf = (value: unknown): number | null => (typeof value === 'number' ? value : null);
const stringOf = (value: unknown): string => (typeof value === 'string' ? value : '');

type Bounds = { readonly min?: number; readonly max?: number };

/** Millimetres in the form, the tape's own words in the field. */
export function FormLength<Values extends FieldValues>(
  props: BoundField<Values> & { readonly minMm?: number; readonly maxMm?: number; readonly scale?: number },
) {
  const { value, set, error } = useBound(props);
  const { minMm, maxMm, scale = 1, isReadOnly } = props;
  const stored = numberOf(value);
  return (
    <LengthField
      {...textOf(props)}
      minMm={minMm}
      maxMm={maxMm}
      isReadOnly={isReadOnly}
      value={stored === null ? null : { mm: stored * scale, typed: null, unit: null }}
      onCommit={(length) => set(length === null ? null : length.mm / scale)}
      error={error}
    />
  );
}

export function FormNumber<Values extends FieldValues>(
  props: BoundField<Values> &
    Bounds & { readonly unit?: FigureUnit; readonly digits?: number; readonly step?: number },
) {
  const { value, set, error } = useBound(props);
  const { min, max, unit, digits, step, isReadOnly } = props;
  return (
    <NumberField
      {...textOf(props)}
      min={min}
      max={max}
      unit={unit}
      digits={digits}
      step={step}
      isReadOnly={isReadOnly}
      value={numberOf(value)}
      onCommit={(figure) => set(figure?.value ?? null)}
      error={error}
    />
  );
}

/** Any other quantity that @gusset/units reads: litres, kilograms, degrees. */
export function FormQuantity<Values extends FieldValues>(
  props: BoundField<Values> & {
    readonly unitText: string;
    readonly parse: (text: string) => number | Refusal;
    readonly digits?: number;
  },
) {
  const { value, set, error } = useBound(props);
  const { shop } = useDisplay();
  const { parse, unitText, digits = 3, isReadOnly } = props;
  const format = (amount: number) => {
    const text = String(Number(amount.toFixed(digits)));
    return usesDecimalComma(shop.locale) ? text.replace('.', ',') : text;
  };
  const read = (text: string): TypedReading<number> => {
    if (text.trim() === '') return { kind: 'empty' };
    const amount = parse(text);
    return isRefusal(amount)
      ? { kind: 'refused', why: amount.refusal.why }
      : { kind: 'value', value: amount, note: null };
  };
  const stored = numberOf(value);
  return (
    <ReadField<number>
      {...textOf(props)}
      unitText={unitText}
      isReadOnly={isReadOnly}
      shown={stored === null ? '' : format(stored)}
      read={read}
      step={null}
      format={format}
      onCommit={set}
      error={error}
    />
  );
}

/** Basis points in the form, percent in the field. */
export function FormPercent<Values extends FieldValues>(
  props: BoundField<Values> & { readonly maxPercent?: number },
) {
  const { value, set, error } = useBound(props);
  const { shop } = useDisplay();
  const decimalComma = usesDecimalComma(shop.locale);
  const format = (basisPoints: number) => formatPercent(basisPoints, { decimalComma }).replace(/\s*%$/u, '');
  const stored = numberOf(value);
  return (
    <ReadField<number>
      {...textOf(props)}
      unitText="%"
      isReadOnly={props.isReadOnly}
      shown={stored === null ? '' : format(stored)}
      read={(text) => {
        if (text.trim() === '') return { kind: 'empty' };
        const read = parsePercent(text, {
          maxBasisPoints: (props.maxPercent ?? 1_000) * 100,
          decimalComma,
        });
        return isRefusal(read)
          ? { kind: 'refused', why: read.refusal.why }
          : { kind: 'value', value: read.basisPoints, note: read.note };
      }}
      step={null}
      format={format}
      onCommit={set}
      error={error}
    />
  );
}

export function FormMoney<Values extends FieldValues>(props: BoundField<Values>) {
  const { value, set, error } = useBound(props);
  const { shop } = useDisplay();
  const minor = numberOf(value);
  return (
    <MoneyField
      {...textOf(props)}
      isReadOnly={props.isReadOnly}
      value={minor === null ? null : { minor, currency: shop.currency }}
      onCommit={(amount) => set(amount?.minor ?? 0)}
      error={error}
    />
  );
}

export function FormSelect<Values extends FieldValues, Id extends string>(
  props: BoundField<Values> & { readonly options: readonly Option<Id>[] },
) {
  const { value, set, error } = useBound(props);
  const chosen = props.options.find(({ id }) => id === value)?.id ?? null;
  return (
    <Select
      {...textOf(props)}
      options={props.options}
      value={chosen}
      onChange={set}
      isDisabled={props.isReadOnly ?? false}
      error={error}
    />
  );
}

export type FormComboProps<Values extends FieldValues> = BoundField<Values> & {
  readonly options: readonly Option[];
  readonly onSearch?: (text: string) => void;
  readonly isSearching?: boolean;
  readonly noMatch?: string;
};

export function FormCombo<Values extends FieldValues>(props: FormComboProps<Values>) {
  const { value, set, error } = useBound(props);
  return (
    <ComboBox
      {...textOf(props)}
      options={props.options}
      value={stringOf(value) || null}
      onChange={set}
      onSearch={props.onSearch}
      isSearching={props.isSearching}
      noMatch={props.noMatch}
      isDisabled={props.isReadOnly ?? false}
      error={error}
    />
  );
}

export function FormDay<Values extends FieldValues>(props: BoundField<Values>) {
  const { value, set, error } = useBound(props);
  return <DateField {...textOf(props)} value={stringOf(value) || null} onChange={set} error={error} />;
}

export function FormArea<Values extends FieldValues>(props: BoundField<Values> & { readonly rows?: number }) {
  const { value, set, error, ref, onBlur } = useBound(props);
  return (
    <TextArea
      {...textOf(props)}
      rows={props.rows}
      isReadOnly={props.isReadOnly}
      value={stringOf(value)}
      onChange={set}
      onBlur={onBlur}
      inputRef={ref}
      error={error}
    />
  );
}

export function FormCheckbox<Values extends FieldValues>(
  props: Pick<BoundField<Values>, 'control' | 'name' | 'label' | 'isReadOnly'> & { readonly detail?: string },
) {
  const { value, set } = useBound(props);
  return (
    <Checkbox
      isSelected={value === true}
      onChange={set}
      detail={props.detail}
      isDisabled={props.isReadOnly ?? false}
    >
      {props.label}
    </Checkbox>
  );
}
