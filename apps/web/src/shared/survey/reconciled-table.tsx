'use client';

import type { AdjustedReading, SectionForm } from '@gusset/contracts/cargo';
import { useDisplay } from '../shell/display-provider.tsx';
import { plusMinusWords, valueWords } from './reading-words.ts';
import styles from './reconciled-table.module.css';

/** Below this share of its own ± a reading is as good as left alone. */
const MOVED_FROM = 0.01;

export type ReconciledTableProps = {
  readonly form: SectionForm;
  readonly adjusted: readonly AdjustedReading[];
};

/** What each letter reads, what all of them together make of it, and by how much it was off. */
export function ReconciledTable({ form, adjusted }: ReconciledTableProps) {
  const { lengthUnit, shop } = useDisplay();
  const manner = { unit: lengthUnit, denominator: shop.inchDenominator };
  const moved = adjusted.filter((row) => row.isCheck || row.timesPlusMinus >= MOVED_FROM);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key.
    <section className={styles.room} aria-label="Readings weighed against each other" tabIndex={0}>
      <table className={styles.table}>
        <caption className="caption">Readings weighed against each other</caption>
        <thead>
          <tr>
            <th scope="col">Letter</th>
            <th scope="col">Reads</th>
            <th scope="col">Weighed</th>
            <th scope="col">Off by</th>
            <th scope="col">Of its ±</th>
          </tr>
        </thead>
        <tbody>
          {moved.map((row) => (
            <tr key={row.key} data-suspect={row.timesPlusMinus > 1}>
              <th scope="row">
                {form.dimensions.find(({ key }) => key === row.key)?.letter ?? row.key}{' '}
                {row.isCheck ? <small>check</small> : null}
              </th>
              <td className="figures">
                {valueWords(row, row.measured, manner)} {plusMinusWords(row, row.plusMinus, manner)}
              </td>
              <td className="figures">
                {valueWords(row, row.adjusted, manner)} {plusMinusWords(row, row.adjustedPlusMinus, manner)}
              </td>
              <td className="figures">{valueWords(row, row.residual, manner)}</td>
              <td className="figures">{Math.round(row.timesPlusMinus * 100)} %</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
