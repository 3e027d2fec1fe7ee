'use client';

import type { PricedQuote } from '@gusset/contracts/estimating';
import { formatPercent } from '@gusset/units';
import { Row, Rows } from '../../shared/marks/row.tsx';
import styles from './price-screen.module.css';
import { useMoney } from './use-money.ts';

export type MarginStripProps = {
  readonly quote: PricedQuote;
  readonly floorBasisPoints: number;
  readonly hoursWords: string;
};

const FULL = 10_000;

/** What of the price before tax is spent and what is kept, with the shop's floor as a line across it. */
export function MarginStrip({ quote, floorBasisPoints, hoursWords }: MarginStripProps) {
  const money = useMoney(quote.currency);
  const { costMinor, marginMinor, marginBasisPoints, purchasesMinor } = quote.totals;
  const kept = Math.min(FULL, Math.max(0, marginBasisPoints ?? 0));
  const isLow = marginBasisPoints !== null && marginBasisPoints < floorBasisPoints;
  const spent = `${(FULL - kept) / 100}%`;
  const floorAt = `${(FULL - floorBasisPoints) / 100}%`;
  return (
    <div>
      <div className={styles.strip} data-low={isLow} aria-hidden="true">
        <span className={styles.spent} style={{ inlineSize: spent }} />
        <span className={styles.floor} style={{ insetInlineStart: floorAt }} />
      </div>
      <Rows title="What it earns">
        <Row label="Costs the shop">{money(costMinor)}</Row>
        <Row label="of it to be bought">{money(purchasesMinor)}</Row>
        <Row label="Margin" tone={isLow ? 'brass' : 'plain'} isTotal>
          {money(marginMinor)}
        </Row>
        <Row label="Share of the price" tone={isLow ? 'brass' : 'plain'}>
          {marginBasisPoints === null ? '–' : formatPercent(marginBasisPoints, { digits: 1 })}
        </Row>
        <Row label="The shop’s floor">{formatPercent(floorBasisPoints, { digits: 1 })}</Row>
        <Row label="Hours">{hoursWords}</Row>
      </Rows>
    </div>
  );
}
