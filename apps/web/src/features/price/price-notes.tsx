'use client';

import type { PriceResult } from '@gusset/contracts/price';
import { compareQuotes } from '@gusset/estimating';
import { formatMinutes, formatPercent, isRefusal } from '@gusset/units';
import { comparisonChanges } from '../../shared/job/quote-changes.ts';
import { UnreadyVerdict } from '../../shared/job/unready-verdict.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { ChangeList } from '../../shared/sheet/change-list.tsx';
import { MarginStrip } from './margin-strip.tsx';
import styles from './price-screen.module.css';
import type { PriceJobSheet } from './price-sheet-types.ts';
import { KIND_WORDS, noteWords, priceHeadline, warningWords } from './price-words.ts';
import { useMoney } from './use-money.ts';

const NO_PARTS = 'Labour only: sheet 07 names no part for this job.';

/** Verdict first, then totals, what it earns, what changed. */
export function PriceNotes({ sheet }: { readonly sheet: PriceJobSheet }) {
  const { outcome, result, data } = sheet;
  const compared = sheet.isDraft && data.issue !== null ? data.issue.result : null;
  return (
    <div className={styles.notes}>
      <UnreadyVerdict outcome={outcome} refused="That cannot be" />
      {result === null ? null : <Figures result={result} sheet={sheet} />}
      {result === null || compared === null ? null : <Changes before={compared} after={result} />}
      <Caution>
        Tax and deposit follow the shop’s settings; whether they are right here is for its accountant.
      </Caution>
    </div>
  );
}

function Figures({ result, sheet }: { readonly result: PriceResult; readonly sheet: PriceJobSheet }) {
  const { quote, notes } = result;
  const { totals } = quote;
  const money = useMoney(quote.currency);
  const names = new Map([
    ...result.tasks.map(({ key, title }) => [key, title] as const),
    ...quote.lines.map(({ key, description }) => [key, description] as const),
  ]);
  const nameOf = (key: string) => names.get(key) ?? 'A line';
  const headline = priceHeadline(result, money);
  const said = [
    ...(sheet.data.upstream.parts?.lines.length === 0 ? [NO_PARTS] : []),
    ...quote.warnings.map((warning) => warningWords(warning, nameOf, money)),
    ...notes.map((note) => noteWords(note, nameOf)),
  ];
  return (
    <>
      <Verdict tone={headline.tone} words={headline.words}>
        {headline.detail === '' ? null : <p>{headline.detail}</p>}
      </Verdict>
      {said.length === 0 ? null : (
        <ul className={styles.list}>
          {said.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
      <Rows title="Totals">
        {quote.byKind.map(({ kind, listMinor }) => (
          <Row key={kind} label={KIND_WORDS[kind]}>
            {money(listMinor)}
          </Row>
        ))}
        {totals.discountMinor === 0 ? null : <Row label="Discount">−{money(totals.discountMinor)}</Row>}
        {quote.pricesIncludeTax ? null : <Row label="Before tax">{money(totals.netMinor)}</Row>}
        {quote.taxes
          .filter(({ taxableMinor }) => taxableMinor > 0)
          .map(({ code, name, rateBasisPoints, taxMinor }) => (
            <Row
              key={code}
              label={`${quote.pricesIncludeTax ? 'Holds ' : ''}${name} ${formatPercent(rateBasisPoints)}`}
            >
              {money(taxMinor)}
            </Row>
          ))}
        <Row label="Total" isTotal>
          {money(totals.grandMinor)}
        </Row>
        <Row label="Deposit">{money(totals.depositMinor)}</Row>
        <Row label="At hand-over">{money(totals.balanceMinor)}</Row>
      </Rows>
      <MarginStrip
        quote={quote}
        floorBasisPoints={sheet.data.facts.rates.marginFloorBasisPoints}
        hoursWords={formatMinutes(totals.labourMinutes)}
      />
    </>
  );
}

function Changes({ before, after }: { readonly before: PriceResult; readonly after: PriceResult }) {
  const money = useMoney(after.quote.currency);
  const comparison = compareQuotes(before.quote, after.quote);
  if (isRefusal(comparison)) return null;
  const changes = comparisonChanges(comparison, money);
  if (changes.length === 0) return null;
  return (
    <section className={styles.changes} aria-label="Changed since it was issued">
      <h2 className="caption">Changed since it was issued</h2>
      <ChangeList changes={changes} />
    </section>
  );
}
