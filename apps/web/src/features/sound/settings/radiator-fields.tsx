'use client';

import type { SoundRadiator } from '@gusset/contracts/sound';
import type { FigureUnit } from '@gusset/units';
import { FieldGrid } from '../../../shared/controls/field-frame.tsx';
import { NumberField } from '../../../shared/controls/number-field.tsx';
import { changeIn, errorAt, keptFigure, type SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';

type Part = Exclude<keyof SoundRadiator, 'count'>;

const PARTS: readonly {
  readonly part: Part;
  readonly label: string;
  readonly unit: FigureUnit;
  readonly hint?: string;
  readonly min: number;
  readonly max: number;
}[] = [
  { part: 'fsHz', label: 'Its own resonance', unit: 'hertz', min: 1, max: 500 },
  { part: 'qms', label: 'Mechanical Q', unit: 'none', min: 0.1, max: 200 },
  { part: 'vasLitres', label: 'Vas, litres', unit: 'none', min: 0.01, max: 5_000 },
  { part: 'sdCm2', label: 'Cone area, cm²', unit: 'none', min: 1, max: 20_000 },
  {
    part: 'addedMassGrams',
    label: 'Mass added',
    unit: 'gram',
    hint: 'To each; empty = none',
    min: 0,
    max: 20_000,
  },
  {
    part: 'xmaxMm',
    label: 'Travel one way, mm',
    unit: 'none',
    hint: 'Empty = not stated',
    min: 0.05,
    max: 300,
  },
];

/** The figures of one passive radiator, off its maker's sheet, and how many there are. */
export function RadiatorFields({ sheet }: SettingPageProps) {
  const { radiator } = sheet.input;
  const isDisabled = !sheet.mayEdit;
  return (
    <fieldset className={styles.group}>
      <legend className="caption">Passive radiators</legend>
      <FieldGrid cellMinPx={170}>
        <NumberField
          label="How many alike"
          value={radiator.count}
          min={1}
          max={8}
          digits={0}
          onCommit={(figure) => changeIn(sheet, 'radiator', { count: Math.round(figure?.value ?? 1) })}
          isDisabled={isDisabled}
        />
        {PARTS.map(({ part, ...field }) => (
          <NumberField
            key={part}
            {...field}
            value={radiator[part]?.value ?? null}
            onCommit={(figure) => changeIn(sheet, 'radiator', { [part]: keptFigure(figure) })}
            isDisabled={isDisabled}
            error={errorAt(sheet, `radiator.${part}`)}
          />
        ))}
      </FieldGrid>
    </fieldset>
  );
}
