'use client';

import type { SoundPort } from '@gusset/contracts/sound';
import type { TypedLength } from '@gusset/units';
import { FieldGrid } from '../../../shared/controls/field-frame.tsx';
import { LengthField } from '../../../shared/controls/length-field.tsx';
import { NumberField } from '../../../shared/controls/number-field.tsx';
import { RadioGroup } from '../../../shared/controls/radio-group.tsx';
import { Select } from '../../../shared/controls/select.tsx';
import { PortChoice } from './port-choice.tsx';
import { changeIn, errorAt, keptFigure, type SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';

const WALLS = [
  { id: '0', label: 'Free in the chamber' },
  { id: '1', label: 'Along one wall', detail: 'counts a little longer' },
  { id: '2', label: 'In a corner', detail: 'counts longer still' },
] as const;

/** Ranges of a port that can be built: the circuit takes no other. */
const MOUTH_MM = { minMm: 5, maxMm: 1_000 };
const SLOT_MM = { minMm: 5, maxMm: 3_000 };
const FLARE_MM = { minMm: 0, maxMm: 500 };
const LENGTH_MM = { minMm: 1, maxMm: 5_000 };

export type PortFieldsProps = SettingPageProps & {
  readonly field: 'port' | 'rearPort';
  readonly title: string;
};

/** One port, or several alike: its opening, its ends, and either the tuning or the length. */
export function PortFields({ sheet, field, title }: PortFieldsProps) {
  const port = sheet.input[field];
  const isDisabled = !sheet.mayEdit;
  const set = (changes: Partial<SoundPort>) => changeIn(sheet, field, changes);
  const length = (part: 'diameter' | 'width' | 'height' | 'outerFlare' | 'innerFlare' | 'length') => ({
    value: port[part],
    onCommit: (given: TypedLength | null) =>
      set({ [part]: given === null ? null : { mm: given.mm, typed: given.typed, unit: given.unit } }),
    isDisabled,
    error: errorAt(sheet, `${field}.${part}`),
  });
  return (
    <fieldset className={styles.group}>
      <legend className="caption">{title}</legend>
      <FieldGrid cellMinPx={170}>
        <Select
          label="Shape"
          options={[
            { id: 'round', label: 'Round' },
            { id: 'slot', label: 'Slot' },
          ]}
          value={port.shape}
          onChange={(shape) => set({ shape })}
          isDisabled={isDisabled}
          error={errorAt(sheet, `${field}.shape`)}
        />
        <NumberField
          label="How many alike"
          value={port.count}
          min={1}
          max={12}
          digits={0}
          onCommit={(figure) => set({ count: Math.round(figure?.value ?? 1) })}
          isDisabled={isDisabled}
        />
        {port.shape === 'round' ? (
          <>
            <LengthField label="Inside diameter" {...length('diameter')} {...MOUTH_MM} />
            <LengthField
              label="Flare outside"
              hint="Radius; empty = sharp"
              {...length('outerFlare')}
              {...FLARE_MM}
            />
            <LengthField
              label="Flare inside"
              hint="Radius; empty = sharp"
              {...length('innerFlare')}
              {...FLARE_MM}
            />
          </>
        ) : (
          <>
            <LengthField label="Clear width" {...length('width')} {...SLOT_MM} />
            <LengthField label="Clear height" {...length('height')} {...SLOT_MM} />
          </>
        )}
        <Select
          label="Inner end"
          options={WALLS}
          value={WALLS[port.walls].id}
          onChange={(walls) => set({ walls: walls === '0' ? 0 : walls === '1' ? 1 : 2 })}
          isDisabled={isDisabled}
        />
      </FieldGrid>
      <div className={styles.byRow}>
        <RadioGroup
          label="What is wanted"
          options={[
            { id: 'tuning', label: 'A tuning; the length follows' },
            { id: 'length', label: 'A length; the tuning follows' },
          ]}
          value={port.by}
          onChange={(by) => set({ by })}
          isDisabled={isDisabled}
        />
        {port.by === 'tuning' ? (
          <NumberField
            label="Tuning"
            unit="hertz"
            value={port.tuning?.value ?? null}
            min={5}
            max={500}
            step={0.5}
            digits={1}
            onCommit={(figure) => set({ tuning: keptFigure(figure) })}
            isDisabled={isDisabled}
            error={errorAt(sheet, `${field}.tuning`)}
          />
        ) : (
          <LengthField label="Length, flares included" {...length('length')} {...LENGTH_MM} />
        )}
      </div>
      <PortChoice sheet={sheet} field={field} />
    </fieldset>
  );
}
