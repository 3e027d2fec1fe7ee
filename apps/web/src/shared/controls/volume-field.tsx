'use client';

import { isRefusal, parseVolume, type TypedVolume } from '@gusset/units';
import { useDisplay } from '../shell/display-provider.tsx';
import type { FieldText } from './field-frame.tsx';
import { usesDecimalComma } from './locale-signs.ts';
import { ReadField } from './read-field.tsx';
import type { TypedReading } from './typed-reading.ts';

export type VolumeFieldProps = FieldText & {
  readonly litres: number | null;
  readonly onCommit: (volume: TypedVolume | null) => void;
  readonly minLitres?: number;
  readonly maxLitres?: number;
  /** What one press of an arrow adds. */
  readonly stepLitres?: number;
  readonly isDisabled?: boolean;
  readonly isRequired?: boolean;
};

const DIGITS = 1;

/** A volume in litres; `1.5 ft3` and `900 in3` are read too. */
export function VolumeField({ litres, minLitres, maxLitres, stepLitres = 0.5, ...rest }: VolumeFieldProps) {
  const { shop } = useDisplay();
  const decimalComma = usesDecimalComma(shop.locale);
  const format = (value: number) => {
    const text = value.toFixed(DIGITS);
    return decimalComma ? text.replace('.', ',') : text;
  };
  const read = (text: string): TypedReading<TypedVolume> => {
    if (text.trim() === '') return { kind: 'empty' };
    const volume = parseVolume(text, { unit: 'L', minLitres, maxLitres, decimalComma });
    return isRefusal(volume)
      ? { kind: 'refused', why: volume.refusal.why }
      : { kind: 'value', value: volume, note: volume.note };
  };
  const stepFrom = (text: string, steps: number): TypedVolume | null => {
    const reading = read(text);
    if (reading.kind !== 'value') return null;
    const moved = reading.value.litres + steps * stepLitres;
    const kept = Math.min(maxLitres ?? moved, Math.max(minLitres ?? 0, moved));
    return { litres: kept, typed: format(kept), unit: 'L', note: null };
  };
  return (
    <ReadField<TypedVolume>
      {...rest}
      unitText="L"
      shown={litres === null ? '' : format(litres)}
      read={read}
      step={stepFrom}
      format={(volume) => format(volume.litres)}
    />
  );
}
