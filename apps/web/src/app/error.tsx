'use client';

import button from '../shared/controls/button.module.css';
import { Verdict } from '../shared/marks/verdict.tsx';
import styles from './plain-page.module.css';

export type ErrorPageProps = {
  readonly error: Error & { readonly digest?: string };
  readonly reset: () => void;
};

/** A page that could not be drawn. What was typed is kept by autosave; drawing it again is safe. */
export default function ErrorPage({ error, reset }: ErrorPageProps) {
  return (
    <main id="main" className={styles.page}>
      <h1>This sheet could not be drawn</h1>
      <Verdict tone="fail" words="Something went wrong on our side">
        <p>Nothing you typed is lost. Try again; if it stays, tell whoever looks after Gusset here.</p>
        {/* A bare button: this page is loaded with every other, the customer's on a phone among them. */}
        <button type="button" className={button.button} onClick={reset}>
          Draw it again
        </button>
        {error.digest ? <p className="figures">Reference {error.digest}</p> : null}
      </Verdict>
    </main>
  );
}
