'use client';

import { designOf, FILL_WORDS, FILLS, LEAK_Q, LEAK_WORDS, LEAKS } from '@gusset/contracts/sound';
import { enclosureSection } from '@gusset/drawings';
import { soundSection } from '@gusset/sheets';
import { useMemo } from 'react';
import { FieldGrid } from '../../../shared/controls/field-frame.tsx';
import { NumberField } from '../../../shared/controls/number-field.tsx';
import { Select } from '../../../shared/controls/select.tsx';
import { SceneDrawing } from '../../../shared/sheet/scene-drawing.tsx';
import { FIELD_WORDS } from '../sound-field-words.ts';
import { DragSlider } from './drag-slider.tsx';
import { EnclosurePicker } from './enclosure-picker.tsx';
import { LitresSlider } from './litres-slider.tsx';
import { changeIn, errorAt, keptFigure, type SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';
import { Suggestions } from './suggestions.tsx';

const SECTION = { widthPt: 320, heightPt: 190, textPt: 12 };
const LEAST_HZ = 15;
const MOST_HZ = 120;
const RESTING_HZ = 35;

/** The kind of box, its air and its tuning: the figures that are dragged while the curves follow. */
export function BoxPage({ sheet }: SettingPageProps) {
  const { input, change, mayEdit, result } = sheet;
  const isDisabled = !mayEdit;
  const { enclosure } = input;
  const section = useMemo(
    () => enclosureSection(soundSection(designOf(input), result), SECTION),
    [input, result],
  );
  const isBandpass = enclosure === 'single-tuned-bandpass' || enclosure === 'dual-tuned-bandpass';
  const fillOptions = FILLS.map((fill) => ({ id: fill, label: FILL_WORDS[fill] }));
  return (
    <div className={styles.page}>
      <EnclosurePicker
        label={FIELD_WORDS.enclosure}
        value={enclosure}
        onChange={(kind) => change({ enclosure: kind })}
        isDisabled={isDisabled}
      />
      <div className={styles.beside}>
        <SceneDrawing scene={section} minWidthPx={0} />
        <div className={styles.page}>
          {enclosure === 'infinite-baffle' ? (
            <p className={styles.hint}>
              The trunk is the box: seal the wall between trunk and cabin, or front and back cancel each
              other.
            </p>
          ) : (
            <LitresSlider
              label={isBandpass ? 'Net volume behind' : FIELD_WORDS.targetNet}
              litres={input.targetNet?.litres ?? null}
              onChange={(targetNet) => change({ targetNet })}
              isDisabled={isDisabled}
              error={errorAt(sheet, 'targetNet')}
            />
          )}
          {isBandpass ? (
            <LitresSlider
              label="Net volume in front"
              litres={input.front.net?.litres ?? null}
              onChange={(net) => changeIn(sheet, 'front', { net })}
              isDisabled={isDisabled}
              error={errorAt(sheet, 'front.net')}
            />
          ) : null}
          {enclosure === 'dual-tuned-bandpass' ? <TuningSlider sheet={sheet} port="rearPort" /> : null}
          {isBandpass || enclosure === 'vented' ? <TuningSlider sheet={sheet} port="port" /> : null}
          {enclosure === 'infinite-baffle' ? null : (
            <FieldGrid cellMinPx={150}>
              <Select
                label={isBandpass ? 'Lining behind' : FIELD_WORDS.fill}
                options={fillOptions}
                value={input.fill}
                onChange={(fill) => change({ fill })}
                isDisabled={isDisabled}
              />
              {isBandpass ? (
                <Select
                  label="Lining in front"
                  options={fillOptions}
                  value={input.front.fill}
                  onChange={(fill) => changeIn(sheet, 'front', { fill })}
                  isDisabled={isDisabled}
                />
              ) : null}
              <Select
                label={FIELD_WORDS.leak}
                options={LEAKS.map((leak) => ({
                  id: leak,
                  label: LEAK_WORDS[leak],
                  detail: `leak Q ${LEAK_Q[leak]}`,
                }))}
                value={input.leak}
                onChange={(leak) => change({ leak })}
                isDisabled={isDisabled}
              />
            </FieldGrid>
          )}
        </div>
      </div>
      <Suggestions sheet={sheet} />
    </div>
  );
}

const TUNING_WORDS = { port: 'Tuning', rearPort: 'Tuning behind' } as const;

/** Dragging a tuning asks for it; a length that was typed then follows. */
function TuningSlider({ sheet, port }: SettingPageProps & { readonly port: 'port' | 'rearPort' }) {
  const { input, mayEdit, result } = sheet;
  const given = input[port];
  const followed = port === 'port' ? (result?.tuningHz ?? null) : (result?.rearTuningHz ?? null);
  const shown = given.by === 'tuning' ? (given.tuning?.value ?? null) : followed;
  const label = input.enclosure === 'vented' || port === 'rearPort' ? TUNING_WORDS[port] : 'Tuning in front';
  const set = (tuning: { value: number; typed: string } | null) =>
    changeIn(sheet, port, { by: 'tuning', tuning });
  return (
    <DragSlider
      label={label}
      value={shown}
      resting={RESTING_HZ}
      least={LEAST_HZ}
      most={MOST_HZ}
      words={(value) => `${value.toFixed(value < MOST_HZ ? 1 : 0)} Hz`}
      onDrag={(value) => set({ value, typed: value.toFixed(1) })}
      isDisabled={!mayEdit}
    >
      <NumberField
        label={label}
        unit="hertz"
        hint={given.by === 'length' ? 'Follows from the length' : undefined}
        value={shown}
        min={5}
        max={500}
        step={0.5}
        digits={1}
        onCommit={(figure) => set(keptFigure(figure))}
        isDisabled={!mayEdit}
        error={errorAt(sheet, `${port}.tuning`)}
      />
    </DragSlider>
  );
}
