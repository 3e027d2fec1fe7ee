import type { BuiltDifference } from '@gusset/contracts/measurement';
import {
  DIFFERENCE_NAMES,
  differenceAdvice,
  differenceWords,
  doubtWords,
  type ShowLength,
  valueWords,
} from './measure-words.ts';
import styles from './measurements.module.css';

export type BuiltDifferencesTableProps = {
  readonly differences: readonly BuiltDifference[];
  readonly show: ShowLength;
};

/** Each figure as drawn and as built, and what to look at where they part. */
export function BuiltDifferencesTable({ differences, show }: BuiltDifferencesTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key.
    <section className={styles.scroll} aria-label="Drawn and built" tabIndex={0}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Figure</th>
            <th scope="col" className="figures">
              Drawn
            </th>
            <th scope="col" className="figures">
              Built
            </th>
            <th scope="col" className="figures">
              Give or take
            </th>
          </tr>
        </thead>
        <tbody>
          {differences.map((difference) => {
            const { code, unit, drawn, built, beyond } = difference;
            const advice = beyond ? differenceAdvice(difference) : null;
            return (
              <tr key={code} data-beyond={beyond ? '' : undefined}>
                <th scope="row">
                  {DIFFERENCE_NAMES[code]}
                  {beyond ? (
                    <small>
                      {differenceWords(difference, show)}. {advice}
                    </small>
                  ) : null}
                </th>
                <td className="figures">{drawn === null ? 'not stated' : valueWords(unit, drawn, show)}</td>
                <td className="figures">{valueWords(unit, built.value, show)}</td>
                <td className="figures">{doubtWords(unit, 2 * built.plusMinus, show)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
