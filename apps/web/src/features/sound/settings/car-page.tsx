'use client';

import type { SoundTarget } from '@gusset/contracts/sound';
import { FieldGrid } from '../../../shared/controls/field-frame.tsx';
import { NumberField } from '../../../shared/controls/number-field.tsx';
import { RadioGroup } from '../../../shared/controls/radio-group.tsx';
import { Switch } from '../../../shared/controls/switch.tsx';
import { FIELD_WORDS } from '../sound-field-words.ts';
import { errorAt, keptFigure, type SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';

const typed = (value: number) => ({ value, typed: String(value) });
/** What most shops mean by it; every figure is then changed in its field. */
const NEW_TARGET: SoundTarget = {
  lowHz: typed(30),
  highHz: typed(80),
  plusMinusDb: typed(3),
  levelDb: null,
};

/** What the car adds, and where the level is meant to stay in it. */
export function CarPage({ sheet }: SettingPageProps) {
  const { input, change, mayEdit, data } = sheet;
  const { longestCabinM, cabinCurve = null } = data.facts;
  const isDisabled = !mayEdit;
  return (
    <div className={styles.page}>
      <RadioGroup
        label={FIELD_WORDS.cabin}
        isRow
        options={[
          {
            id: 'estimate',
            label: 'In this car, estimated',
            detail:
              longestCabinM === null
                ? 'The model’s inside length is not known'
                : `From ${longestCabinM} m inside; real cars differ by 5 to 10 dB`,
          },
          {
            id: 'measured',
            label: 'In this car, measured',
            detail: cabinCurve === null ? 'Nobody has measured it yet' : cabinCurve.label,
            isDisabled: cabinCurve === null && input.cabin !== 'measured',
          },
          { id: 'none', label: 'Outdoors' },
        ]}
        value={input.cabin}
        onChange={(cabin) => change({ cabin })}
        isDisabled={isDisabled}
        error={errorAt(sheet, 'cabin')}
      />
      <Target sheet={sheet} />
    </div>
  );
}

function Target({ sheet }: SettingPageProps) {
  const { input, change, mayEdit } = sheet;
  const { target } = input;
  const set = (changes: Partial<SoundTarget>) =>
    change({ target: { ...(target ?? NEW_TARGET), ...changes } });
  const field = (part: keyof SoundTarget) => ({
    value: target?.[part]?.value ?? null,
    onCommit: (figure: { value: number; typed: string } | null) => set({ [part]: keptFigure(figure) }),
    isDisabled: !mayEdit,
    error: errorAt(sheet, `target.${part}`),
    digits: 1,
  });
  return (
    <fieldset className={styles.group}>
      <legend className="caption">{FIELD_WORDS.target}</legend>
      <Switch
        isSelected={target !== null}
        onChange={(isOn) => change({ target: isOn ? NEW_TARGET : null })}
        isDisabled={!mayEdit}
        detail="A band on the level chart that the curve is meant to keep"
      >
        Set a target
      </Switch>
      {target === null ? null : (
        <FieldGrid cellMinPx={150}>
          <NumberField label="From" unit="hertz" min={5} max={1_000} {...field('lowHz')} />
          <NumberField label="To" unit="hertz" min={5} max={1_000} {...field('highHz')} />
          <NumberField label="Within ±" unit="decibel" min={0.5} max={20} {...field('plusMinusDb')} />
          <NumberField
            label="Around"
            unit="decibel"
            hint="Empty = the middle of the curve"
            min={20}
            max={180}
            {...field('levelDb')}
          />
        </FieldGrid>
      )}
    </fieldset>
  );
}
