'use client';

import { closedBoxVolumeForQ, deriveDriver } from '@gusset/acoustics';
import {
  FILL_WORDS,
  FILLS,
  type SoundFacts,
  type SoundInput,
  type SoundResult,
} from '@gusset/contracts/sound';
import type { SoundUpstream } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { ComboBox } from '../../shared/controls/combo-box.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { JobSheet } from '../../shared/job/use-job-sheet.ts';
import styles from './sound-screen.module.css';
import { VolumeSlider } from './volume-slider.tsx';

/** Named by what they do; the textbook's Q stands small beside them. */
const AIMS = [
  { q: 0.577, label: 'Shortest ringing', detail: 'Q 0.58' },
  { q: Math.SQRT1_2, label: 'Flattest', detail: 'Q 0.71' },
  { q: 0.85, label: 'Fuller', detail: 'Q 0.85' },
] as const;

/** Outside of this nobody builds a closed box for a car. */
const LEAST_OFFERED_LITRES = 1;
const MOST_OFFERED_LITRES = 500;

const COILS = { single: 'One coil', parallel: 'Coils in parallel', series: 'Coils in series' } as const;

export type SoundSettingsProps = {
  readonly sheet: JobSheet<SoundInput, SoundFacts, SoundUpstream, SoundResult>;
  readonly words: Readonly<Record<keyof SoundInput, string>>;
};

export function SoundSettings({ sheet, words }: SoundSettingsProps) {
  const trpc = useTRPC();
  const [search, setSearch] = useState('');
  const drivers = useQuery(trpc.part.driver.list.queryOptions({ search, limit: 20 }));
  const { input, change, changeNow, mayEdit, data } = sheet;
  const isDisabled = !mayEdit;
  const chosen = data.facts.driver;
  const options = (drivers.data?.rows ?? []).map((row) => ({
    id: row.id,
    label: `${row.maker} ${row.name}`.trim(),
    detail: [
      row.figures.nominalInches === null ? '' : `${row.figures.nominalInches}″`,
      row.stockQuantity > 0 ? `${row.stockQuantity} in stock` : 'to be bought',
    ]
      .filter((word) => word !== '')
      .join(' · '),
  }));
  const known =
    chosen === null || options.some(({ id }) => id === chosen.id)
      ? options
      : [{ id: chosen.id, label: chosen.name, detail: 'chosen' }, ...options];
  const refusal = (field: string) =>
    sheet.outcome.state === 'refused'
      ? (sheet.outcome.refusals.find((one) => one.field === field)?.why ?? null)
      : null;

  return (
    <div className={styles.settings} data-screen-only="">
      <FieldGrid cellMinPx={190}>
        <ComboBox
          label={words.driverId}
          options={known}
          value={input.driverId}
          onChange={(driverId) => changeNow({ driverId })}
          onSearch={setSearch}
          isSearching={drivers.isFetching}
          noMatch="No driver by that name; add it in Parts"
          isDisabled={isDisabled}
          error={refusal('driverId')}
        />
        <NumberField
          label={words.count}
          value={input.count}
          min={1}
          max={8}
          digits={0}
          onCommit={(figure) => change({ count: Math.round(figure?.value ?? 1), seriesPerString: 1 })}
          isDisabled={isDisabled}
        />
        {input.count > 1 ? (
          <Select
            label={words.seriesPerString}
            options={divisorsOf(input.count).map((n) => ({
              id: String(n),
              label: n === 1 ? 'All in parallel' : `Strings of ${n} in series`,
            }))}
            value={String(input.seriesPerString)}
            onChange={(n) => change({ seriesPerString: Number(n) })}
            isDisabled={isDisabled}
            error={refusal('seriesPerString')}
          />
        ) : null}
        {chosen !== null && chosen.figures.dataSheet.coils === 2 ? (
          <Select
            label={words.coilWiring}
            options={(['parallel', 'series', 'single'] as const).map((id) => ({ id, label: COILS[id] }))}
            value={input.coilWiring}
            onChange={(coilWiring) => change({ coilWiring })}
            isDisabled={isDisabled}
            error={refusal('coilWiring')}
          />
        ) : null}
        <NumberField
          label={words.drive}
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
        />
        <Select
          label={words.fill}
          options={FILLS.map((fill) => ({ id: fill, label: FILL_WORDS[fill] }))}
          value={input.fill}
          onChange={(fill) => change({ fill })}
          isDisabled={isDisabled}
        />
        <Select
          label={words.cabin}
          hint={
            data.facts.longestCabinM === null
              ? 'The model’s inside length is not known'
              : `${data.facts.longestCabinM} m inside, an estimate`
          }
          options={[
            { id: 'estimate', label: 'In this car, estimated' },
            { id: 'none', label: 'Outdoors' },
          ]}
          value={input.cabin}
          onChange={(cabin) => change({ cabin })}
          isDisabled={isDisabled}
        />
      </FieldGrid>
      <VolumeSlider
        litres={input.targetNet?.litres ?? null}
        onChange={(targetNet) => change({ targetNet })}
        isDisabled={isDisabled}
        error={refusal('targetNet')}
      />
      {chosen === null || isDisabled ? null : (
        <QButtons
          input={input}
          facts={data.facts}
          onChoose={(litres) => change({ targetNet: { litres, typed: litres.toFixed(1) } })}
        />
      )}
    </div>
  );
}

type QButtonsProps = {
  readonly input: SoundInput;
  readonly facts: SoundFacts;
  readonly onChoose: (litres: number) => void;
};

/** The box for an aim; one that this driver cannot reach in a closed box is not offered. */
function QButtons({ input, facts, onChoose }: QButtonsProps) {
  if (facts.driver === null) return null;
  const sheet = deriveDriver(facts.driver.figures.dataSheet);
  if (isRefusal(sheet) || input.count % input.seriesPerString !== 0) return null;
  const array = {
    count: input.count,
    seriesPerString: input.seriesPerString,
    parallelStrings: input.count / input.seriesPerString,
    coilWiring: input.coilWiring,
    isobaric: null,
  };
  const offered = AIMS.flatMap(({ q, label, detail }) => {
    const box = closedBoxVolumeForQ(sheet.driver, q, { array });
    return isRefusal(box) || box.netLitres < LEAST_OFFERED_LITRES || box.netLitres > MOST_OFFERED_LITRES
      ? []
      : [{ label, detail, litres: box.netLitres }];
  });
  if (offered.length === 0) return null;
  return (
    <fieldset className={styles.aims} aria-label="Volume by aim">
      {offered.map(({ label, detail, litres }) => (
        <Button key={label} onPress={() => onChoose(Number(litres.toFixed(1)))}>
          {label} · {litres.toFixed(1)} L <small>{detail}</small>
        </Button>
      ))}
    </fieldset>
  );
}

function divisorsOf(count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => i + 1).filter((n) => count % n === 0);
}
