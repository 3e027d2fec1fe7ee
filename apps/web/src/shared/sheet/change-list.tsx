import type { SheetChange } from '@gusset/contracts/sheet';
import styles from './change-list.module.css';

/** What changed upstream, with the old and the new value of each. */
export function ChangeList({ changes }: { readonly changes: readonly SheetChange[] }) {
  return (
    <ul className={styles.changes}>
      {changes.map((change) => (
        <li key={`${change.source} ${change.label}`}>
          <span className="caption">{change.source}</span>
          <span className={styles.what}>{change.label}</span>
          <span className="figures">
            <del className={styles.before}>
              <span className="unseen">was </span>
              {change.before}
            </del>
            <span aria-hidden="true"> → </span>
            <ins className={styles.after}>
              <span className="unseen">is now </span>
              {change.after}
            </ins>
          </span>
        </li>
      ))}
    </ul>
  );
}
