'use client';

import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ComboBox } from '../../../shared/controls/combo-box.tsx';
import { FieldGrid } from '../../../shared/controls/field-frame.tsx';
import { NumberField } from '../../../shared/controls/number-field.tsx';
import { Select } from '../../../shared/controls/select.tsx';
import { Switch } from '../../../shared/controls/switch.tsx';
import { VolumeField } from '../../../shared/controls/volume-field.tsx';
import { useTRPC } from '../../../shared/data/api-client.ts';
import { CatalogueSearch } from '../search/catalogue-search.tsx';
import { FIELD_WORDS } from '../sound-field-words.ts';
import { errorAt, type SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';

const COILS = { single: 'One coil', parallel: 'Coils in parallel', series: 'Coils in series' } as const;

/** Which drivers, how many, and how they are wired. */
export function DriverPage({ sheet }: SettingPageProps) {
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

  return (
    <div className={styles.page}>
      <FieldGrid cellMinPx={190}>
        <ComboBox
          label={FIELD_WORDS.driverId}
          options={known}
          value={input.driverId}
          onChange={(driverId) => changeNow({ driverId })}
          onSearch={setSearch}
          isSearching={drivers.isFetching}
          noMatch="No driver by that name; add it in Parts"
          isDisabled={isDisabled}
          error={errorAt(sheet, 'driverId')}
        />
        <NumberField
          label={FIELD_WORDS.count}
          value={input.count}
          min={1}
          max={8}
          digits={0}
          onCommit={(figure) => change({ count: Math.round(figure?.value ?? 1), seriesPerString: 1 })}
          isDisabled={isDisabled}
          error={errorAt(sheet, 'count')}
        />
        {input.count > 1 ? (
          <Select
            label={FIELD_WORDS.seriesPerString}
            options={divisorsOf(input.count).map((n) => ({
              id: String(n),
              label: n === 1 ? 'All in parallel' : `Strings of ${n} in series`,
            }))}
            value={String(input.seriesPerString)}
            onChange={(n) => change({ seriesPerString: Number(n) })}
            isDisabled={isDisabled}
            error={errorAt(sheet, 'seriesPerString')}
          />
        ) : null}
        {chosen !== null && (chosen.figures.dataSheet.coils === 2 || input.coilWiring !== 'single') ? (
          <Select
            label={FIELD_WORDS.coilWiring}
            options={(['parallel', 'series', 'single'] as const).map((id) => ({ id, label: COILS[id] }))}
            value={input.coilWiring}
            onChange={(coilWiring) => change({ coilWiring })}
            isDisabled={isDisabled}
            error={errorAt(sheet, 'coilWiring')}
          />
        ) : null}
        {input.isobaric === null ? null : (
          <VolumeField
            label="Air between the two"
            hint="As little as the magnets allow"
            litres={input.isobaric.coupling?.litres ?? null}
            minLitres={0.5}
            maxLitres={200}
            onCommit={(volume) =>
              change({
                isobaric: {
                  coupling: volume === null ? null : { litres: volume.litres, typed: volume.typed },
                },
              })
            }
            isDisabled={isDisabled}
            error={errorAt(sheet, 'isobaric.coupling')}
          />
        )}
      </FieldGrid>
      {input.count === 2 || input.isobaric !== null ? (
        <Switch
          isSelected={input.isobaric !== null}
          onChange={(isPair) => change({ isobaric: isPair ? { coupling: null } : null })}
          isDisabled={isDisabled}
          detail="Half the box for the same sound, at half the efficiency"
        >
          {FIELD_WORDS.isobaric}
        </Switch>
      ) : null}
      <div>
        <CatalogueSearch sheet={sheet} />
      </div>
    </div>
  );
}

function divisorsOf(count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => i + 1).filter((n) => count % n === 0);
}
