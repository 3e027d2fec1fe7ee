'use client';

import type { PricedLine } from '@gusset/contracts/estimating';
import type { ExtraLine, PriceResult } from '@gusset/contracts/price';
import { CUSTOMER_PARTS_KEY, quantityWords } from '@gusset/sheets';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { ExtraLineDialog } from './extra-line-dialog.tsx';
import { PriceButton } from './price-button.tsx';
import { PriceDialog } from './price-dialog.tsx';
import styles from './price-screen.module.css';
import type { PriceJobSheet } from './price-sheet-types.ts';
import { PRICE_GROUPS, SOURCE_WORDS } from './price-words.ts';
import { useMoney } from './use-money.ts';

const GROUP = { goods: PRICE_GROUPS[0], also: PRICE_GROUPS[2] } as const;

export type PriceListProps = {
  readonly sheet: PriceJobSheet;
  readonly result: PriceResult;
  readonly group: keyof typeof GROUP;
};

/** The lines of one group with quantity, price for each and what they come to. */
export function PriceList({ sheet, result, group }: PriceListProps) {
  const { title, kinds } = GROUP[group];
  const money = useMoney(result.quote.currency);
  const [priced, setPriced] = useState<PricedLine | null>(null);
  const [extra, setExtra] = useState<ExtraLine | 'new' | null>(null);
  const known: readonly string[] = kinds;
  const lines = result.quote.lines.filter((line) => known.includes(line.kind));
  const sum = lines.reduce((total, line) => total + line.listMinor, 0);
  const extras = new Map(sheet.input.extraLines.map((line) => [line.key, line]));
  const press = (line: PricedLine) => {
    const own = extras.get(line.key);
    if (own === undefined) setPriced(line);
    else setExtra(own);
  };
  return (
    <section className={styles.group} aria-labelledby={`price-${group}`}>
      <header className={styles.groupHead}>
        <h2 id={`price-${group}`}>{title}</h2>
        <span className="figures">{money(sum)}</span>
      </header>
      {lines.length === 0 ? (
        <p className={styles.none}>
          {group === 'goods'
            ? 'Sheet 07 lists no parts yet; they are priced here as soon as it does.'
            : 'Nothing else so far.'}
        </p>
      ) : (
        <table className={styles.lines}>
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col">Quantity</th>
              <th scope="col" className={styles.wide}>
                Each
              </th>
              <th scope="col">Price</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr key={line.key}>
                <th scope="row">
                  {line.description}
                  <small>{detailOf(line, sheet)}</small>
                </th>
                <td className="figures">{quantityWords(line)}</td>
                <td className={`figures ${styles.wide}`}>
                  {line.unitPriceMinor === null || line.unit === 'lot' ? '' : money(line.unitPriceMinor)}
                </td>
                <td className="figures">
                  <PriceButton
                    act={`Change the price of ${line.description}`}
                    amount={money(line.listMinor)}
                    onPress={sheet.mayEdit && isPriceable(line) ? () => press(line) : null}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {group === 'also' && sheet.mayEdit ? (
        <div className={styles.buttons} data-screen-only="">
          <Button onPress={() => setExtra('new')}>Add a line</Button>
        </div>
      ) : null}
      {priced === null ? null : <PriceDialog sheet={sheet} line={priced} onClose={() => setPriced(null)} />}
      {extra === null ? null : (
        <ExtraLineDialog sheet={sheet} line={extra === 'new' ? null : extra} onClose={() => setExtra(null)} />
      )}
    </section>
  );
}

/** What is brought has no price; supplies follow from the work. */
function isPriceable({ source, kind, key }: PricedLine): boolean {
  if (source === 'customer' || source === 'sponsor') return false;
  return kind !== 'supplies' || key === CUSTOMER_PARTS_KEY;
}

function detailOf(line: PricedLine, { input }: PriceJobSheet): string {
  const typed = input.priceOverrides.find(({ lineKey }) => lineKey === line.key);
  const words = [
    line.source === null ? '' : SOURCE_WORDS[line.source],
    typed === undefined ? '' : `price of this job${typed.reason === '' ? '' : `: ${typed.reason}`}`,
    line.kind === 'supplies' ? 'a share of the work' : '',
  ];
  return words.filter((word) => word !== '').join(' · ');
}
