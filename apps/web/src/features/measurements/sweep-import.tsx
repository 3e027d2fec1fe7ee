'use client';

import type { FiringDirection, SweepConditions, SweepUse } from '@gusset/contracts/measurement';
import { FIRING_DIRECTIONS, FIRING_WORDS, SWEEP_USES } from '@gusset/contracts/measurement';
import { type ReactNode, useRef, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextArea } from '../../shared/controls/text-area.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { VolumeField } from '../../shared/controls/volume-field.tsx';
import { type ShownError, shownError } from '../../shared/data/shop-error.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { readingWords } from './measure-words.ts';
import styles from './measurements.module.css';
import { type ImportedReading, type SweepDraft, startDraft } from './sweep-draft.ts';

export type SweepImportProps<Use extends SweepUse> = {
  readonly title: string;
  /** What this page can take, the usual first. */
  readonly uses: readonly [Use, ...Use[]];
  /** How the sweep is taken, by use: shown under the choice. */
  readonly howTo: Readonly<Record<Use, ReactNode>>;
  /** Sends it; the key makes a second press of the same form take effect once. */
  readonly send: (key: string, draft: SweepDraft<Use>) => Promise<ImportedReading>;
  /** What has to be known of the box that played; fields of its own above the file. */
  readonly trial?: { readonly fields: ReactNode; readonly value: SweepConditions['trial'] };
  readonly caution?: ReactNode;
};

const MAGNITUDES = [
  { id: 'auto', label: 'As the file says' },
  { id: 'ohm', label: 'Ohm' },
  { id: 'dB', label: 'dB' },
] as const;
const PHASES = [
  { id: 'auto', label: 'As the file says' },
  { id: 'degrees', label: 'Degrees' },
  { id: 'radians', label: 'Radians' },
] as const;

/** A sweep out of a file or pasted: what it is of, the columns, and what must be known beside them. */
export function SweepImport<Use extends SweepUse>(props: SweepImportProps<Use>) {
  const { title, uses, howTo, send, trial, caution } = props;
  const chooser = useRef<HTMLInputElement>(null);
  const [key, setKey] = useState(() => crypto.randomUUID());
  const [draft, setDraft] = useState<SweepDraft<Use>>(() => startDraft(uses[0]));
  const [problem, setProblem] = useState<ShownError | null>(null);
  const [read, setRead] = useState<string | null>(null);
  const [isSending, setIsSending] = useState(false);
  const { use } = draft;
  const change = (changes: Partial<SweepDraft<Use>>) => {
    setDraft({ ...draft, ...changes });
    setProblem(null);
    setRead(null);
    setKey(crypto.randomUUID());
  };
  const errorAt = (path: string) =>
    problem?.fields.find((each) => each.path === path || each.path === `sweep.${path}`)?.message ?? null;
  const trialValue = trial !== undefined && needsTrial(use) ? trial.value : null;
  const submit = async () => {
    setIsSending(true);
    try {
      const answer = await send(key, { ...draft, conditions: { ...draft.conditions, trial: trialValue } });
      setRead(readingWords(answer));
      setDraft({
        ...startDraft(use),
        takenOn: draft.takenOn,
        units: draft.units,
        direction: draft.direction,
      });
      setProblem(null);
      setKey(crypto.randomUUID());
    } catch (failure) {
      setProblem(shownError(failure));
    } finally {
      setIsSending(false);
    }
  };
  const isPlaced = use === 'in-car';
  return (
    <section className={styles.panel} aria-label={title} data-screen-only="">
      <h2>{title}</h2>
      {caution}
      <FieldGrid cellMinPx={200}>
        <Select
          label="What was swept"
          options={uses.map((id) => ({ id, label: SWEEP_USES[id].words }))}
          value={use}
          onChange={(next) => change({ use: next })}
        />
        {use === 'added-mass' ? (
          <NumberField
            label="Mass on the cone"
            unit="gram"
            min={0.1}
            max={5_000}
            value={draft.conditions.addedMass?.grams ?? null}
            error={errorAt('conditions.addedMass')}
            onCommit={(figure) =>
              change({
                conditions: {
                  ...draft.conditions,
                  addedMass: figure === null ? null : { grams: figure.value, typed: figure.typed },
                },
              })
            }
          />
        ) : null}
        {use === 'known-box' ? (
          <VolumeField
            label="Air in the box"
            hint="Net, unlined, every seam tight"
            minLitres={0.05}
            maxLitres={20_000}
            litres={draft.conditions.knownBox?.litres ?? null}
            error={errorAt('conditions.knownBox')}
            onCommit={(volume) =>
              change({
                conditions: {
                  ...draft.conditions,
                  knownBox: volume === null ? null : { litres: volume.litres, typed: volume.typed },
                },
              })
            }
          />
        ) : null}
        {isPlaced ? (
          <TextField
            label="Where the box stood"
            hint="Such as: boot, left corner"
            maxLength={200}
            value={draft.place}
            error={errorAt('place')}
            onChange={(place) => change({ place })}
          />
        ) : null}
        {isPlaced ? (
          <Select<FiringDirection>
            label="Cone looks"
            options={FIRING_DIRECTIONS.map((id) => ({ id, label: FIRING_WORDS[id] }))}
            value={draft.direction}
            error={errorAt('direction')}
            onChange={(direction) => change({ direction })}
          />
        ) : null}
        <DateField
          label="Taken on"
          isOptional
          value={draft.takenOn}
          error={errorAt('takenOn')}
          onChange={(takenOn) => change({ takenOn })}
        />
        <TextField
          label="Notes"
          isOptional
          maxLength={200}
          value={draft.notes}
          error={errorAt('notes')}
          onChange={(notes) => change({ notes })}
        />
      </FieldGrid>
      <p className={styles.how}>{howTo[use]}</p>
      {trial !== undefined && needsTrial(use) ? (
        <>
          {trial.fields}
          {errorAt('conditions.trial') === null ? null : (
            <Verdict tone="fail" words={errorAt('conditions.trial') ?? ''} />
          )}
        </>
      ) : null}
      <input
        ref={chooser}
        type="file"
        accept=".txt,.csv,.frd,.zma,.cal,.dat,text/plain,text/csv"
        className="unseen"
        aria-label="File with the sweep"
        tabIndex={-1}
        onChange={(event) => {
          const [chosen] = event.currentTarget.files ?? [];
          if (chosen) void chosen.text().then((text) => change({ text, fileName: chosen.name }));
          event.currentTarget.value = '';
        }}
      />
      <div className={styles.choose}>
        <Button onPress={() => chooser.current?.click()}>Choose a file</Button>
        <span>{draft.fileName === '' ? 'or paste the columns below' : draft.fileName}</span>
      </div>
      <TextArea
        label="Columns: frequency, magnitude, phase"
        hint="Plain text, one row a frequency, rising. Tabs, commas, semicolons or spaces; header and comment lines are passed over."
        rows={6}
        value={draft.text}
        error={errorAt('text')}
        onChange={(text) => change({ text })}
      />
      {SWEEP_USES[use].kind === 'impedance' ? (
        <details>
          <summary>How the columns are to be read</summary>
          <FieldGrid cellMinPx={200}>
            <Select
              label="Magnitude in"
              options={MAGNITUDES}
              value={draft.units.magnitude}
              onChange={(magnitude) => change({ units: { ...draft.units, magnitude } })}
            />
            <Select
              label="Phase in"
              options={PHASES}
              value={draft.units.phase}
              onChange={(phase) => change({ units: { ...draft.units, phase } })}
            />
          </FieldGrid>
        </details>
      ) : null}
      <div role="status">
        {read === null ? null : <Verdict tone="pass" words={`Taken in. ${read}`} />}
        {problem !== null && problem.fields.length === 0 ? (
          <Verdict tone="fail" words={problem.message} />
        ) : null}
      </div>
      <div className={styles.acts}>
        <Button
          look="primary"
          isPending={isSending}
          isDisabled={draft.text.trim() === ''}
          onPress={() => void submit()}
        >
          Take the sweep in
        </Button>
      </div>
    </section>
  );
}

const needsTrial = (use: SweepUse): boolean => use === 'in-car' || use === 'near-cone';
