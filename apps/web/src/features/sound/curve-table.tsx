import type { SoundResult } from '@gusset/contracts/sound';
import { nearestPoint, readingAt } from './cursor-reading.ts';
import styles from './sound-curves.module.css';

const TABLE_HZ = [12.5, 16, 20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 315, 500] as const;

/** The same facts for those who cannot see the curves, and for a pencil. */
export function CurveTable({ result }: { readonly result: SoundResult }) {
  const { frequenciesHz } = result.curves;
  const rows = TABLE_HZ.map((hz) => nearestPoint(frequenciesHz, hz));
  const columns = readingAt(result, rows[0] ?? 0).map(({ label }) => withoutCause(label));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key.
    <section className={styles.scroll} aria-label="The curves as a table" tabIndex={0}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Frequency</th>
            {columns.map((label) => (
              <th key={label} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody className="figures">
          {rows.map((at) => (
            <tr key={at}>
              <th scope="row">{(frequenciesHz[at] ?? 0).toFixed(1)} Hz</th>
              {readingAt(result, at).map(({ label, value }) => (
                <td key={withoutCause(label)}>{value}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** `Loudest, coil heat stops it` heads one column whatever stops it. */
const withoutCause = (label: string): string => label.split(',')[0] ?? label;
