import type { Metadata } from 'next';
import button from '../shared/controls/button.module.css';
import { EmptyState } from '../shared/marks/empty-state.tsx';
import { paths } from '../shared/paths.ts';
import styles from './plain-page.module.css';

export const metadata: Metadata = { title: 'No such sheet' };

export default function NotFound() {
  return (
    <main id="main" className={styles.page}>
      <h1>No such sheet</h1>
      <EmptyState
        title="Nothing is drawn here"
        // A bare link: this page is loaded with every other, the customer's on a phone among them.
        act={
          <a href={paths.today()} className={button.button}>
            To the bays
          </a>
        }
      >
        The address may be mistyped, your role may not open it, or the record belongs to another shop or has
        been removed.
      </EmptyState>
    </main>
  );
}
