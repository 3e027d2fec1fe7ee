'use client';

import { formatPercent, isRefusal, parsePercent } from '@gusset/units';
import type { FieldText } from '../../shared/controls/field-frame.tsx';
import { usesDecimalComma } from '../../shared/controls/locale-signs.ts';
import { ReadField } from '../../shared/controls/read-field.tsx';
import type { TypedReading } from '../../shared/controls/typed-reading.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';

export type PercentFieldProps = FieldText & {
  readonly basisPoints: number | null;
  readonly maxBasisPoints: number;
  readonly onCommit: (basisPoints: number | null) => void;
  readonly isReadOnly?: boolean;
};

/** A share, typed in percent, kept in basis points. */
export function PercentField({ basisPoints, maxBasisPoints, onCommit, ...rest }: PercentFieldProps) {
  const decimalComma = usesDecimalComma(useDisplay().shop.locale);
  const format = (value: number) => formatPercent(value, { decimalComma }).replace(/\s*%$/, '');
  const read = (text: string): TypedReading<number> => {
    if (text.trim() === '') return { kind: 'empty' };
    const share = parsePercent(text, { maxBasisPoints, decimalComma });
    return isRefusal(share)
      ? { kind: 'refused', why: share.refusal.why }
      : { kind: 'value', value: share.basisPoints, note: share.note };
  };
  return (
    <ReadField<number>
      {...rest}
      unitText="%"
      shown={basisPoints === null ? '' : format(basisPoints)}
      read={read}
      step={null}
      format={format}
      onCommit={onCommit}
    />
  );
}
