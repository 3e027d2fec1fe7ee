'use client';

import { type FigureUnit, formatNumber, isRefusal, parseNumber, type TypedFigure } from '@gusset/units';
import { useDisplay } from '../shell/display-provider.tsx';
import type { FieldText } from './field-frame.tsx';
import { usesDecimalComma } from './locale-signs.ts';
import { ReadField } from './read-field.tsx';
import type { TypedReading } from './typed-reading.ts';

export type NumberFieldProps = FieldText & {
  /** In the field's unit. */
  readonly value: number | null;
  readonly onCommit: (figure: TypedFigure | null) => void;
  readonly unit?: FigureUnit;
  readonly min?: number;
  readonly max?: number;
  /** What one press of an arrow adds. */
  readonly step?: number;
  readonly digits?: number;
  readonly isDisabled?: boolean;
  readonly isReadOnly?: boolean;
  readonly isRequired?: boolean;
  readonly name?: string;
};

const DIGITS = 3;

/** A figure off a data sheet, a count, a time: one number in the unit that is printed in the field. */
export function NumberField({
  value,
  unit = 'none',
  min,
  max,
  step = 1,
  digits = DIGITS,
  ...rest
}: NumberFieldProps) {
  const { shop } = useDisplay();
  const decimalComma = usesDecimalComma(shop.locale);
  const format = (figure: number) => formatNumber(figure, 'none', { digits, decimalComma });

  const read = (text: string): TypedReading<TypedFigure> => {
    if (text.trim() === '') return { kind: 'empty' };
    const figure = parseNumber(text, { unit, min, max, decimalComma });
    return isRefusal(figure)
      ? { kind: 'refused', why: figure.refusal.why }
      : { kind: 'value', value: figure, note: figure.note };
  };
  const stepFrom = (text: string, steps: number): TypedFigure | null => {
    const reading = read(text);
    if (reading.kind !== 'value') return null;
    const moved = reading.value.value + steps * step;
    const next = Math.min(max ?? moved, Math.max(min ?? moved, moved));
    const kept = Number(next.toFixed(digits));
    return { value: kept, typed: format(kept), note: null };
  };

  return (
    <ReadField<TypedFigure>
      {...rest}
      unitText={formatNumber(0, unit).replace(/^0\s*/u, '')}
      shown={value === null ? '' : format(value)}
      read={read}
      step={stepFrom}
      format={(figure) => format(figure.value)}
    />
  );
}
