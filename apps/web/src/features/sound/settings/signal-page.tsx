'use client';

import { BAND_LIMIT, type SoundAmplifier, type SoundBand } from '@gusset/contracts/sound';
import type { FigureUnit } from '@gusset/units';
import { Button } from '../../../shared/controls/button.tsx';
import { FieldGrid } from '../../../shared/controls/field-frame.tsx';
import { NumberField } from '../../../shared/controls/number-field.tsx';
import { FIELD_WORDS } from '../sound-field-words.ts';
import { PassFields } from './pass-fields.tsx';
import { changeIn, errorAt, keptFigure, type SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';
import { SubsonicHelp } from './subsonic-help.tsx';

const AMPLIFIER: readonly {
  readonly part: keyof SoundAmplifier;
  readonly label: string;
  readonly unit: FigureUnit;
  readonly hint: string;
  readonly min: number;
  readonly max: number;
}[] = [
  {
    part: 'maxVolts',
    label: 'Most volts',
    unit: 'volt',
    hint: 'Before it clips, rms; empty = any',
    min: 0.1,
    max: 1_000,
  },
  { part: 'maxAmps', label: 'Most current', unit: 'amp', hint: 'Rms; empty = any', min: 0.1, max: 1_000 },
  { part: 'outputOhm', label: 'Output resistance', unit: 'ohm', hint: 'Empty = none', min: 0, max: 100 },
  { part: 'cableOhm', label: 'Cable, both ways', unit: 'ohm', hint: 'Empty = none', min: 0, max: 100 },
];

const EMPTY_BAND: SoundBand = { centre: null, gainDb: null, q: null };

/** The amplifier with its limits, and what the processor does before it. */
export function SignalPage({ sheet }: SettingPageProps) {
  const { input, change, mayEdit } = sheet;
  const isDisabled = !mayEdit;
  return (
    <div className={styles.page}>
      <FieldGrid cellMinPx={170}>
        <NumberField
          label={FIELD_WORDS.drive}
          unit="watt"
          hint="What the amplifier gives into this load"
          value={input.drive?.watts ?? null}
          min={0.1}
          max={20_000}
          step={50}
          onCommit={(figure) =>
            change({ drive: figure === null ? null : { watts: figure.value, typed: figure.typed } })
          }
          isDisabled={isDisabled}
          error={errorAt(sheet, 'drive')}
        />
        {AMPLIFIER.map(({ part, ...field }) => (
          <NumberField
            key={part}
            {...field}
            value={input.amplifier[part]?.value ?? null}
            onCommit={(figure) => changeIn(sheet, 'amplifier', { [part]: keptFigure(figure) })}
            isDisabled={isDisabled}
            error={errorAt(sheet, `amplifier.${part}`)}
          />
        ))}
      </FieldGrid>
      <div className={styles.pair}>
        <PassFields sheet={sheet} field="highPass" detail="Keeps what only moves the cone away from it" />
        <PassFields sheet={sheet} field="lowPass" detail="Leaves what stands above to other drivers" />
      </div>
      <SubsonicHelp sheet={sheet} />
      <Equaliser sheet={sheet} />
    </div>
  );
}

function Equaliser({ sheet }: SettingPageProps) {
  const { input, change, mayEdit } = sheet;
  const { equaliser } = input;
  const set = (index: number, changes: Partial<SoundBand>) =>
    change({ equaliser: equaliser.map((band, i) => (i === index ? { ...band, ...changes } : band)) });
  return (
    <fieldset className={styles.group}>
      <legend className="caption">{FIELD_WORDS.equaliser}</legend>
      {equaliser.map((band, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: bands have no name but their place.
        <div key={i} className={styles.band}>
          <NumberField
            label={`Band ${i + 1}`}
            unit="hertz"
            value={band.centre?.value ?? null}
            min={1}
            max={20_000}
            digits={1}
            onCommit={(figure) => set(i, { centre: keptFigure(figure) })}
            isDisabled={!mayEdit}
            error={errorAt(sheet, `equaliser.${i}.centre`)}
          />
          <NumberField
            label="Gain"
            unit="decibel"
            value={band.gainDb?.value ?? null}
            min={-40}
            max={40}
            step={0.5}
            digits={1}
            onCommit={(figure) => set(i, { gainDb: keptFigure(figure) })}
            isDisabled={!mayEdit}
            error={errorAt(sheet, `equaliser.${i}.gainDb`)}
          />
          <NumberField
            label="Q"
            value={band.q?.value ?? null}
            min={0.05}
            max={50}
            step={0.1}
            digits={2}
            onCommit={(figure) => set(i, { q: keptFigure(figure) })}
            isDisabled={!mayEdit}
            error={errorAt(sheet, `equaliser.${i}.q`)}
          />
          {mayEdit ? (
            <Button
              look="quiet"
              aria-label={`Take band ${i + 1} out`}
              onPress={() => change({ equaliser: equaliser.filter((_, at) => at !== i) })}
            >
              Take out
            </Button>
          ) : null}
        </div>
      ))}
      {mayEdit && equaliser.length < BAND_LIMIT ? (
        <Button onPress={() => change({ equaliser: [...equaliser, EMPTY_BAND] })}>Add a band</Button>
      ) : null}
    </fieldset>
  );
}
