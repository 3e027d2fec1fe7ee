import type { DriverDataSheet } from '@gusset/contracts/acoustics';
import type { DriverFromSweeps } from '@gusset/contracts/measurement';
import { figureRows } from './driver-figures.ts';
import styles from './measurements.module.css';

export type DriverFiguresTableProps = {
  readonly stated: DriverDataSheet;
  readonly answer: DriverFromSweeps;
};

/** What the sheet says, what was measured, and how far apart they lie. */
export function DriverFiguresTable({ stated, answer }: DriverFiguresTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key.
    <section className={styles.scroll} aria-label="Stated and measured figures" tabIndex={0}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Figure, of one coil</th>
            <th scope="col" className="figures">
              Typed
            </th>
            <th scope="col" className="figures">
              Measured
            </th>
            <th scope="col" className="figures">
              Apart
            </th>
          </tr>
        </thead>
        <tbody>
          {figureRows(stated, answer).map(({ key, label, stated: typed, measured, percent, isFar }) => (
            <tr key={key} data-beyond={isFar ? '' : undefined}>
              <th scope="row">{label}</th>
              <td className="figures">{typed || 'not typed'}</td>
              <td className="figures">{measured || 'not measured'}</td>
              <td className="figures">{percent}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
