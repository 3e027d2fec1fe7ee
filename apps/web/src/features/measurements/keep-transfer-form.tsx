'use client';

import {
  FIRING_DIRECTIONS,
  FIRING_WORDS,
  type FiringDirection,
  type SweepView,
  type TransferSetting,
} from '@gusset/contracts/measurement';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextArea } from '../../shared/controls/text-area.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import { fieldError, type ShownError, shownError } from '../../shared/data/shop-error.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import styles from './measurements.module.css';

export type KeepTransferFormProps = {
  readonly model: string;
  /** The ones it is made from. */
  readonly sweeps: readonly SweepView[];
  readonly setting: TransferSetting;
  readonly onKept: () => Promise<void>;
};

/** The choice of place and direction, with its reason, for every later job in such a car. */
export function KeepTransferForm({ model, sweeps, setting, onKept }: KeepTransferFormProps) {
  const client = useTRPCClient();
  const say = useMessages();
  const [key, setKey] = useState(() => crypto.randomUUID());
  const [typed, setTyped] = useState<{ place?: string; direction?: FiringDirection; reason: string }>({
    reason: '',
  });
  const [problem, setProblem] = useState<ShownError | null>(null);
  const [isKeeping, setIsKeeping] = useState(false);
  const place = typed.place ?? commonOf(sweeps.map((sweep) => sweep.place)) ?? '';
  const direction = typed.direction ?? commonOf(sweeps.map((sweep) => sweep.direction)) ?? null;
  const change = (changes: Partial<typeof typed>) => {
    setTyped({ ...typed, ...changes });
    setProblem(null);
    setKey(crypto.randomUUID());
  };
  const keep = async () => {
    if (direction === null) return;
    setIsKeeping(true);
    try {
      const sweepIds = sweeps.map(({ id }) => id);
      const { revision } = await client.measurement.vehicleModel.keep.mutate({
        key,
        transfer: { modelId: model, sweepIds, setting, place, direction, reason: typed.reason },
      });
      say(`Kept as measurement ${revision}: sheet 03 of every job in such a car can use it.`);
      setTyped({ reason: '' });
      setKey(crypto.randomUUID());
      await onKept();
    } catch (failure) {
      setProblem(shownError(failure));
    } finally {
      setIsKeeping(false);
    }
  };
  return (
    <section className={styles.form} aria-label="Keep as this car’s own" data-screen-only="">
      <h2 className="caption">Keep as this car’s own</h2>
      <TextField
        label="Chosen place"
        maxLength={200}
        value={place}
        error={fieldError(problem, 'transfer.place')}
        onChange={(next) => change({ place: next })}
      />
      <Select
        label="Chosen direction"
        options={FIRING_DIRECTIONS.map((id) => ({ id, label: FIRING_WORDS[id] }))}
        value={direction}
        onChange={(next) => change({ direction: next })}
      />
      <TextArea
        label="Why this one"
        rows={2}
        maxLength={200}
        value={typed.reason}
        error={fieldError(problem, 'transfer.reason')}
        onChange={(reason) => change({ reason })}
      />
      <div role="status">
        {problem !== null && problem.fields.length === 0 ? (
          <Verdict tone="fail" words={problem.message} />
        ) : null}
        {fieldError(problem, 'sweepIds') === null ? null : (
          <Verdict tone="fail" words={fieldError(problem, 'sweepIds') ?? ''} />
        )}
      </div>
      <Button
        look="primary"
        isPending={isKeeping}
        isDisabled={direction === null}
        onPress={() => void keep()}
      >
        Keep for later jobs
      </Button>
    </section>
  );
}

/** What all say; null where they differ or there are none. */
function commonOf<T>(values: readonly T[]): T | null {
  const [first] = values;
  return first !== undefined && values.every((value) => value === first) ? first : null;
}
