'use client';

import { SEARCH_AIMS, type SearchKind } from '@gusset/contracts/acoustics';
import { Checkbox } from '../../../shared/controls/checkbox.tsx';
import { FieldGrid } from '../../../shared/controls/field-frame.tsx';
import { LengthField } from '../../../shared/controls/length-field.tsx';
import { MoneyField } from '../../../shared/controls/money-field.tsx';
import { NumberField } from '../../../shared/controls/number-field.tsx';
import { RadioGroup } from '../../../shared/controls/radio-group.tsx';
import { Select } from '../../../shared/controls/select.tsx';
import { VolumeField } from '../../../shared/controls/volume-field.tsx';
import { useMay } from '../../../shared/shell/person.tsx';
import { type EntryProblems, LOADS, type SearchDefaults, type SearchEntry } from './search-entry.ts';
import styles from './search-form.module.css';
import { AIM_WORDS, KIND_WORDS } from './search-words.ts';

export type SearchFormProps = {
  readonly entry: SearchEntry;
  readonly defaults: SearchDefaults;
  readonly problems: EntryProblems;
  readonly onChange: (change: Partial<SearchEntry>) => void;
};

const AIMS = SEARCH_AIMS.map((id) => ({ id, ...AIM_WORDS[id] }));
const KINDS: readonly SearchKind[] = [
  'closed',
  'vented',
  'single-tuned-bandpass',
  'infinite-baffle',
  'passive-radiator',
];
const COUNTS = ['1', '2', '3', '4', '6', '8'].map((id) => ({
  id,
  label: id === '1' ? 'One driver' : `Up to ${id} of the same`,
}));

/** What is asked: the aim, the boxes, the room, the amplifier, the purse. */
export function SearchForm({ entry, defaults, problems, onChange }: SearchFormProps) {
  const seesCosts = useMay('money.read');
  const { kinds } = entry;
  return (
    <div className={styles.form}>
      <RadioGroup
        label="What counts most"
        options={AIMS}
        value={entry.aim}
        onChange={(aim) => onChange({ aim })}
        isRow
      />
      <fieldset
        className={styles.kinds}
        aria-describedby={problems.kinds ? 'search-kinds-problem' : undefined}
      >
        <legend className="caption">Boxes to try</legend>
        <div className={styles.choices}>
          {KINDS.map((kind) => (
            <Checkbox
              key={kind}
              isSelected={kinds.includes(kind)}
              isDisabled={kind === 'passive-radiator' && defaults.radiators.length === 0}
              detail={
                kind === 'passive-radiator' && defaults.radiators.length === 0
                  ? 'enter a radiator on the sheet first'
                  : undefined
              }
              onChange={(isOn) =>
                onChange({ kinds: isOn ? [...kinds, kind] : kinds.filter((one) => one !== kind) })
              }
            >
              {KIND_WORDS[kind]}
            </Checkbox>
          ))}
        </div>
        {problems.kinds ? (
          <p id="search-kinds-problem" className={styles.problem}>
            {problems.kinds}
          </p>
        ) : null}
      </fieldset>
      <FieldGrid cellMinPx={170}>
        <VolumeField
          label="Net volume from"
          litres={entry.leastNet?.litres ?? null}
          minLitres={0.5}
          maxLitres={2_000}
          stepLitres={1}
          onCommit={(leastNet) => onChange({ leastNet })}
          error={problems.leastNet ?? null}
        />
        <VolumeField
          label="Net volume to"
          litres={entry.mostNet?.litres ?? null}
          minLitres={0.5}
          maxLitres={2_000}
          stepLitres={1}
          onCommit={(mostNet) => onChange({ mostNet })}
          error={problems.mostNet ?? null}
        />
        <Select
          label="Drivers"
          options={COUNTS}
          value={String(entry.mostDrivers)}
          onChange={(count) => onChange({ mostDrivers: Number(count) })}
        />
        <LengthField
          label="Driver’s depth"
          value={entry.depth}
          minMm={10}
          maxMm={1_000}
          onCommit={(depth) => onChange({ depth })}
          hint="Room behind the panel at most"
          error={problems.depth ?? null}
          isOptional
        />
        {LOADS.map((load) => (
          <NumberField
            key={load}
            label={`Amplifier into ${load} Ω`}
            unit="watt"
            min={1}
            max={20_000}
            step={10}
            value={entry.watts[load]?.value ?? null}
            onCommit={(watts) => onChange({ watts: { ...entry.watts, [load]: watts } })}
            hint={load === LOADS[0] ? 'Leave empty what it must not see' : undefined}
            error={load === LOADS[0] ? (problems.watts ?? null) : null}
            isOptional
          />
        ))}
        <NumberField
          label="Plays at least"
          unit="decibel"
          min={60}
          max={160}
          value={entry.leastOutput?.value ?? null}
          onCommit={(leastOutput) => onChange({ leastOutput })}
          hint="Mean from 30 to 80 Hz, in this car"
          error={problems.leastOutput ?? null}
          isOptional
        />
        {seesCosts ? (
          <MoneyField
            label="Budget"
            value={entry.budget}
            minMinor={0}
            onCommit={(budget) => onChange({ budget })}
            hint={entry.budget === null ? 'All drivers, at buying price' : undefined}
            error={problems.budget ?? null}
            isOptional
          />
        ) : null}
        <Checkbox
          isSelected={entry.inStockOnly}
          onChange={(inStockOnly) => onChange({ inStockOnly })}
          detail="No more of a driver than lie on the shelf"
        >
          Only what is in stock
        </Checkbox>
      </FieldGrid>
    </div>
  );
}
