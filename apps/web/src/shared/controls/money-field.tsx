'use client';

import { decimalOf, formatMoney, isRefusal, type Money, parseMoney } from '@gusset/units';
import { useDisplay } from '../shell/display-provider.tsx';
import type { FieldText } from './field-frame.tsx';
import { usesDecimalComma } from './locale-signs.ts';
import { ReadField } from './read-field.tsx';
import type { TypedReading } from './typed-reading.ts';

export type MoneyFieldProps = FieldText & {
  readonly value: Money | null;
  readonly onCommit: (amount: Money | null) => void;
  /** The document's currency; the shop's where nothing is said. */
  readonly currency?: string;
  readonly minMinor?: number;
  readonly maxMinor?: number;
  readonly isDisabled?: boolean;
  readonly isReadOnly?: boolean;
  readonly isRequired?: boolean;
  readonly name?: string;
};

/** An amount, read exactly to minor units; the currency stands in the field. */
export function MoneyField({ value, currency, minMinor, maxMinor, ...rest }: MoneyFieldProps) {
  const { shop } = useDisplay();
  const inCurrency = currency ?? value?.currency ?? shop.currency;
  // The bare digits of the amount, in the locale's own signs: what a person would type.
  const format = (amount: Money) =>
    usesDecimalComma(shop.locale) ? decimalOf(amount).replace('.', ',') : decimalOf(amount);

  const read = (text: string): TypedReading<Money> => {
    if (text.trim() === '') return { kind: 'empty' };
    const amount = parseMoney(text, { currency: inCurrency, locale: shop.locale, minMinor, maxMinor });
    return isRefusal(amount)
      ? { kind: 'refused', why: amount.refusal.why }
      : { kind: 'value', value: amount, note: null };
  };

  return (
    <ReadField<Money>
      {...rest}
      unitText={inCurrency}
      shown={value === null ? '' : format(value)}
      read={read}
      step={null}
      format={format}
      hint={rest.hint ?? (value === null ? undefined : formatMoney(value, shop.locale))}
    />
  );
}
