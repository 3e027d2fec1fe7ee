'use client';

import styles from '../../../features/customer-quote/customer-quote.module.css';

/** The customer cannot do anything about the shop's server but wait. */
export default function QuoteError({ reset }: { readonly reset: () => void }) {
  return (
    <main id="main" className={styles.page}>
      <article className={styles.sheet}>
        <header className={styles.head}>
          <h1>The shop’s server did not answer</h1>
        </header>
        <p>Your quote is safe, and nothing was changed. Try again in a moment.</p>
        <button type="button" className={styles.plain} onClick={reset}>
          Try again
        </button>
      </article>
    </main>
  );
}
