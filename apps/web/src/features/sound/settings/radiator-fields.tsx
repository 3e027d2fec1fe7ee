'use client';

import { radiatorForTuning } from '@gusset/acoustics';
import type { SoundRadiator } from '@gusset/contracts/sound';
import { soundSystem } from '@gusset/sheets';
import { type FigureUnit, isRefusal } from '@gusset/units';
import { useMemo, useState } from 'react';
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

/** The mass that tunes the radiators as wanted, set on them; typed here, it is the mass that is kept. */
function TuningByMass({ sheet }: SettingPageProps) {
  const { input, data, result, mayEdit } = sheet;
  const [refused, setRefused] = useState<string | null>(null);
  const enclosure = useMemo(() => soundSystem(input, data.facts)?.enclosure ?? null, [input, data.facts]);
  if (enclosure?.kind !== 'passive-radiator') return null;
  const tune = (tuningHz: number) => {
    const { chamber, radiator } = enclosure;
    const found = radiatorForTuning({ chamber, radiator, tuningHz });
    setRefused(isRefusal(found) ? `${found.refusal.why}. Accepted: ${found.refusal.allowed}.` : null);
    if (isRefusal(found)) return;
    const grams = Number(found.addedMassGrams.toFixed(0));
    changeIn(sheet, 'radiator', { addedMassGrams: { value: grams, typed: String(grams) } });
  };
  return (
    <NumberField
      label="Tuned to"
      unit="hertz"
      hint="Sets the mass"
      value={result?.radiator?.tuningHz ?? null}
      min={5}
      max={500}
      step={0.5}
      digits={1}
      onCommit={(figure) => {
        if (figure !== null) tune(figure.value);
      }}
      isDisabled={!mayEdit}
      error={refused}
    />
  );
}

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
        <TuningByMass sheet={sheet} />
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
