'use client';

import { FILTER_ALIGNMENT_WORDS, FILTER_ALIGNMENTS, type SoundPass } from '@gusset/contracts/sound';
import { FieldGrid } from '../../../shared/controls/field-frame.tsx';
import { NumberField } from '../../../shared/controls/number-field.tsx';
import { Select } from '../../../shared/controls/select.tsx';
import { Switch } from '../../../shared/controls/switch.tsx';
import { FIELD_WORDS } from '../sound-field-words.ts';
import { errorAt, keptFigure, type SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';

const DB_PER_ORDER = 6;
const ORDERS = [1, 2, 3, 4, 5, 6, 7, 8] as const;
const NEW_PASS: SoundPass = { alignment: 'butterworth', order: 4, corner: null };

export type PassFieldsProps = SettingPageProps & {
  readonly field: 'highPass' | 'lowPass';
  readonly detail: string;
};

/** A high-pass or low-pass before the amplifier: on or off, slope and corner. */
export function PassFields({ sheet, field, detail }: PassFieldsProps) {
  const { input, change, mayEdit } = sheet;
  const pass = input[field];
  const set = (changes: Partial<SoundPass>) => change({ [field]: { ...(pass ?? NEW_PASS), ...changes } });
  return (
    <fieldset className={styles.group}>
      <legend className="caption">{FIELD_WORDS[field]}</legend>
      <Switch
        isSelected={pass !== null}
        onChange={(isOn) => change({ [field]: isOn ? NEW_PASS : null })}
        isDisabled={!mayEdit}
        detail={detail}
      >
        {FIELD_WORDS[field]} on
      </Switch>
      {pass === null ? null : (
        <FieldGrid cellMinPx={130}>
          <NumberField
            label="Corner"
            unit="hertz"
            value={pass.corner?.value ?? null}
            min={1}
            max={20_000}
            digits={1}
            onCommit={(figure) => set({ corner: keptFigure(figure) })}
            isDisabled={!mayEdit}
            error={errorAt(sheet, `${field}.corner`)}
          />
          <Select
            label="Slope"
            options={ORDERS.map((order) => ({
              id: String(order),
              label: `${order * DB_PER_ORDER} dB an octave`,
            }))}
            value={String(pass.order)}
            onChange={(order) => set({ order: Number(order) })}
            isDisabled={!mayEdit}
            error={errorAt(sheet, `${field}.order`)}
          />
          <Select
            label="Kind"
            options={FILTER_ALIGNMENTS.map((id) => ({ id, label: FILTER_ALIGNMENT_WORDS[id] }))}
            value={pass.alignment}
            onChange={(alignment) => set({ alignment })}
            isDisabled={!mayEdit}
          />
        </FieldGrid>
      )}
    </fieldset>
  );
}
