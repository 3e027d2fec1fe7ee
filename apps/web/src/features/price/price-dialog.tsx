'use client';

import type { PricedLine } from '@gusset/contracts/estimating';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { MoneyField } from '../../shared/controls/money-field.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Dialog } from '../../shared/overlays/dialog.tsx';
import styles from './price-screen.module.css';
import type { PriceJobSheet } from './price-sheet-types.ts';
import { useMoney } from './use-money.ts';

export type PriceDialogProps = {
  readonly sheet: PriceJobSheet;
  readonly line: PricedLine;
  readonly onClose: () => void;
};

/** A price for this job alone, with the reason; the catalogue stays as it is. */
export function PriceDialog({ sheet, line, onClose }: PriceDialogProps) {
  const { currency } = sheet.data.facts;
  const money = useMoney(currency);
  const { priceOverrides } = sheet.input;
  const typed = priceOverrides.find(({ lineKey }) => lineKey === line.key);
  const [minor, setMinor] = useState<number | null>(typed?.unitPriceMinor ?? line.unitPriceMinor);
  const [reason, setReason] = useState(typed?.reason ?? '');
  const others = priceOverrides.filter(({ lineKey }) => lineKey !== line.key);
  const isHourly = line.kind === 'labour';
  const keep = () => {
    if (minor === null) return;
    sheet.changeNow({ priceOverrides: [...others, { lineKey: line.key, unitPriceMinor: minor, reason }] });
    onClose();
  };
  return (
    <Dialog
      title={`Price of ${line.description}`}
      isOpen
      onClose={onClose}
      acts={
        <>
          {typed === undefined ? null : (
            <Button
              onPress={() => {
                sheet.changeNow({ priceOverrides: others });
                onClose();
              }}
            >
              Back to the usual price
            </Button>
          )}
          <Button look="primary" onPress={keep} isDisabled={minor === null}>
            Use this price
          </Button>
        </>
      }
    >
      <div className={styles.form}>
        <Rows>
          <Row label={isHourly ? 'Costs the shop for this task' : 'Costs the shop'}>
            {money(line.costMinor)}
          </Row>
          <Row label="Margin now">{money(line.marginMinor)}</Row>
        </Rows>
        <MoneyField
          label={isHourly ? 'An hour of this task' : 'Price for each'}
          currency={currency}
          value={minor === null ? null : { minor, currency }}
          minMinor={0}
          maxMinor={1_000_000_000}
          onCommit={(amount) => setMinor(amount?.minor ?? null)}
        />
        <TextField label="Why it differs" isOptional value={reason} onChange={setReason} maxLength={200} />
      </div>
    </Dialog>
  );
}
