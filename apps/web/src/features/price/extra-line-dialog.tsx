'use client';

import type { ExtraLine } from '@gusset/contracts/price';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { MoneyField } from '../../shared/controls/money-field.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { Dialog } from '../../shared/overlays/dialog.tsx';
import styles from './price-screen.module.css';
import type { PriceJobSheet } from './price-sheet-types.ts';

export type ExtraLineDialogProps = {
  readonly sheet: PriceJobSheet;
  /** Null = a new one. */
  readonly line: ExtraLine | null;
  readonly onClose: () => void;
};

const MOST = 1_000_000_000;

/** A line that no sheet above knows: work by others, a fee, delivery. */
export function ExtraLineDialog({ sheet, line, onClose }: ExtraLineDialogProps) {
  const { currency } = sheet.data.facts;
  const [draft, setDraft] = useState<ExtraLine>(
    line ?? {
      key: crypto.randomUUID(),
      kind: 'subcontract',
      description: '',
      quantity: 1,
      unitCostMinor: 0,
      unitPriceMinor: 0,
    },
  );
  const [isTried, setIsTried] = useState(false);
  const others = sheet.input.extraLines.filter(({ key }) => key !== draft.key);
  const description = draft.description.trim();
  const keep = () => {
    setIsTried(true);
    if (description === '') return;
    const at = sheet.input.extraLines.findIndex(({ key }) => key === draft.key);
    const kept = { ...draft, description };
    sheet.changeNow({ extraLines: at === -1 ? [...others, kept] : sheet.input.extraLines.with(at, kept) });
    onClose();
  };
  return (
    <Dialog
      title={line === null ? 'Add a line' : 'Change the line'}
      isOpen
      onClose={onClose}
      acts={
        <>
          {line === null ? null : (
            <Button
              look="danger"
              onPress={() => {
                sheet.changeNow({ extraLines: others });
                onClose();
              }}
            >
              Take it off
            </Button>
          )}
          <Button look="primary" onPress={keep}>
            {line === null ? 'Add this line' : 'Keep the change'}
          </Button>
        </>
      }
    >
      <div className={styles.form}>
        <Select
          label="Kind"
          options={[
            { id: 'subcontract', label: 'Work by others' },
            { id: 'other', label: 'Other: a fee, delivery' },
          ]}
          value={draft.kind}
          onChange={(kind) => setDraft({ ...draft, kind })}
        />
        <TextField
          label="What it is"
          hint="The customer reads this"
          value={draft.description}
          maxLength={120}
          onChange={(text) => setDraft({ ...draft, description: text })}
          error={isTried && description === '' ? 'Say what the customer pays for.' : null}
        />
        <FieldGrid cellMinPx={140}>
          <NumberField
            label="How many"
            value={draft.quantity}
            min={0}
            max={100_000}
            onCommit={(figure) => setDraft({ ...draft, quantity: figure?.value ?? 1 })}
          />
          <MoneyField
            label="Costs the shop, each"
            currency={currency}
            value={{ minor: draft.unitCostMinor, currency }}
            minMinor={0}
            maxMinor={MOST}
            onCommit={(amount) => setDraft({ ...draft, unitCostMinor: amount?.minor ?? 0 })}
          />
          <MoneyField
            label="Price, each"
            currency={currency}
            value={{ minor: draft.unitPriceMinor, currency }}
            minMinor={0}
            maxMinor={MOST}
            onCommit={(amount) => setDraft({ ...draft, unitPriceMinor: amount?.minor ?? 0 })}
          />
        </FieldGrid>
      </div>
    </Dialog>
  );
}
