'use client';

import { type BriefInput, PART_BRINGERS } from '@gusset/contracts/brief';
import { Button } from '../../shared/controls/button.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import styles from './brief-screen.module.css';

const MOST = 40;
const BRINGER_WORDS: Readonly<Record<(typeof PART_BRINGERS)[number], string>> = {
  shop: 'The shop gets it',
  customer: 'The customer brings it',
  sponsor: 'A sponsor lends or gives it',
};

type BroughtPart = BriefInput['broughtParts'][number];

export type BroughtPartsProps = {
  readonly value: readonly BroughtPart[];
  readonly onChange: (value: BroughtPart[]) => void;
  readonly isReadOnly: boolean;
};

/** Parts already spoken of: the parts sheet takes them up from here. */
export function BroughtParts({ value, onChange, isReadOnly }: BroughtPartsProps) {
  const set = (key: string, changes: Partial<BroughtPart>) =>
    onChange(value.map((part) => (part.key === key ? { ...part, ...changes } : part)));
  return (
    <section className={styles.list} aria-label="Who brings what">
      <h2 className="caption">Who brings what</h2>
      {value.map((part, i) => (
        <div key={part.key} className={styles.part}>
          <TextField
            label={`Part ${i + 1}`}
            value={part.description}
            onChange={(description) => set(part.key, { description })}
            isReadOnly={isReadOnly}
          />
          <Select
            label="Brought by"
            options={PART_BRINGERS.map((bringer) => ({ id: bringer, label: BRINGER_WORDS[bringer] }))}
            value={part.bringer}
            onChange={(bringer) => set(part.key, { bringer })}
            isDisabled={isReadOnly}
          />
          <TextField
            label="Note"
            isOptional
            value={part.note}
            onChange={(note) => set(part.key, { note })}
            isReadOnly={isReadOnly}
          />
          {isReadOnly ? null : (
            <Button
              look="quiet"
              aria-label={`Remove ${part.description === '' ? `part ${i + 1}` : part.description}`}
              onPress={() => onChange(value.filter(({ key }) => key !== part.key))}
            >
              Remove
            </Button>
          )}
        </div>
      ))}
      {isReadOnly || value.length >= MOST ? null : (
        <div className={styles.add}>
          <Button
            onPress={() =>
              onChange([
                ...value,
                { key: crypto.randomUUID(), description: '', bringer: 'customer', note: '' },
              ])
            }
          >
            Add a part
          </Button>
        </div>
      )}
    </section>
  );
}
