'use client';

import type { PartsLine } from '@gusset/contracts/parts';
import { quantityWords } from '@gusset/sheets';
import { formatNumber } from '@gusset/units';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { DeliveryFields } from './delivery-fields.tsx';
import { changeLine, isByHand, removeLine, restoreLine } from './edit-parts.ts';
import type { PartsSheet } from './parts-lines.tsx';
import styles from './parts-screen.module.css';

const SOURCES: readonly { readonly id: PartsLine['source']; readonly label: string }[] = [
  { id: 'stock', label: 'From the shelf' },
  { id: 'buy', label: 'To buy' },
  { id: 'customer', label: 'Customer brings it' },
  { id: 'sponsor', label: 'Sponsor lends or gives it' },
];
const UNIT_SIGNS: Readonly<Record<Exclude<PartsLine['unit'], 'each'>, string>> = {
  sheet: 'sheets',
  m: 'm',
  m2: 'm²',
  litre: 'L',
  kg: 'kg',
  pack: 'packs',
};

export type LineRowProps = {
  readonly line: PartsLine;
  readonly sheet: PartsSheet;
  readonly jobId: string;
  readonly delivery: ApiOutputs['delivery']['ofJob'][number] | null;
  /** On the shelf now; null where the catalogue does not know the part. */
  readonly inStock: number | null;
};

/** One line: what, how many and why, where from, when. */
export function LineRow({ line, sheet, jobId, delivery, inStock }: LineRowProps) {
  const [isOpen, setIsOpen] = useState(false);
  const { input, change, changeNow, mayEdit } = sheet;
  const isShort = line.source === 'stock' && inStock !== null && inStock < line.quantity;
  const worked =
    line.workedOutQuantity === null ? '' : ` · worked out: ${formatNumber(line.workedOutQuantity, 'none')}`;
  return (
    <li className={styles.line}>
      <div className={styles.what}>
        <strong>{line.description}</strong>
        <span className={styles.because}>
          {line.because}
          {worked}
          {line.note === '' ? '' : ` · ${line.note}`}
        </span>
      </div>
      <span className="figures">{quantityWords(line)}</span>
      <span className={isShort ? styles.short : undefined}>
        {SOURCES.find(({ id }) => id === line.source)?.label}
        {inStock === null || line.source === 'customer' || line.source === 'sponsor' ? null : (
          <span className={isShort ? undefined : styles.because}>
            {' '}
            · {formatNumber(inStock, 'none')} there{isShort ? ', too few' : ''}
          </span>
        )}
      </span>
      <DeliveryFields delivery={delivery} jobId={jobId} />
      {mayEdit ? (
        <Button
          look="quiet"
          aria-expanded={isOpen}
          aria-label={`Change ${line.description}`}
          onPress={() => setIsOpen(!isOpen)}
        >
          {isOpen ? 'Done' : 'Change'}
        </Button>
      ) : null}
      {isOpen ? (
        <div className={styles.edit}>
          <NumberField
            label={line.unit === 'each' ? 'How many' : `How many, ${UNIT_SIGNS[line.unit]}`}
            value={line.quantity}
            min={0}
            max={100_000}
            onCommit={(figure) => {
              if (figure !== null) change(changeLine(input, line.key, { quantity: figure.value }));
            }}
          />
          <TextField
            label="Why it differs, or a note"
            value={
              isByHand(input, line.key)
                ? line.note
                : (input.overrides.find(({ key }) => key === line.key)?.reason ?? '')
            }
            onChange={(reason) => change(changeLine(input, line.key, { reason }))}
          />
          <Select
            label="Where from"
            options={SOURCES}
            value={line.source}
            onChange={(source) => changeNow(changeLine(input, line.key, { source }))}
          />
          {line.source === 'sponsor' ? (
            <DateField
              label="Goes back on"
              isOptional
              value={line.returnDueOn}
              onChange={(returnDueOn) => change(changeLine(input, line.key, { returnDueOn }))}
            />
          ) : null}
          <div className={styles.editActs}>
            {input.overrides.some(({ key }) => key === line.key) ? (
              <Button onPress={() => changeNow(restoreLine(input, line.key))}>As the design says</Button>
            ) : null}
            <Button look="danger" onPress={() => changeNow(removeLine(input, line.key))}>
              Take off this job
            </Button>
          </div>
        </div>
      ) : null}
    </li>
  );
}
