'use client';

import { Button } from '../../shared/controls/button.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import styles from './brief-screen.module.css';

const MOST = 20;

export type KeepFreeListProps = {
  readonly value: readonly string[];
  readonly onChange: (value: string[]) => void;
  readonly isReadOnly: boolean;
};

/** What must stay usable: spare wheel, tether, half the boot for a pram. */
export function KeepFreeList({ value, onChange, isReadOnly }: KeepFreeListProps) {
  const set = (at: number, text: string) => onChange(value.map((line, i) => (i === at ? text : line)));
  return (
    <section className={styles.list} aria-label="What must stay free">
      <h2 className="caption">What must stay free</h2>
      {value.map((line, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines are plain texts and have nothing but their place.
        <div key={i} className={styles.line}>
          <TextField
            label={`Keep free, ${i + 1}`}
            value={line}
            onChange={(text) => set(i, text)}
            isReadOnly={isReadOnly}
            autoFocus={line === '' && i === value.length - 1}
          />
          {isReadOnly ? null : (
            <Button
              look="quiet"
              aria-label={`Remove ${line === '' ? `line ${i + 1}` : line}`}
              onPress={() => onChange(value.filter((_, at) => at !== i))}
            >
              Remove
            </Button>
          )}
        </div>
      ))}
      {isReadOnly || value.length >= MOST ? null : (
        <div className={styles.add}>
          <Button onPress={() => onChange([...value, ''])}>Add something to keep free</Button>
        </div>
      )}
    </section>
  );
}
