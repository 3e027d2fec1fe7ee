import styles from './sheet-mark.module.css';
import { SHEET_STATE_WORDS, type SheetState } from './sheet-state.ts';

/** A small sheet; its title-block corner is empty, hatched or solid. */
export function SheetMark({ state }: { readonly state: SheetState }) {
  return (
    <svg className={styles.mark} viewBox="0 0 16 20" role="img" aria-label={SHEET_STATE_WORDS[state]}>
      <rect x="1" y="1" width="14" height="18" className={styles.edge} />
      {state === 'empty' ? <path d="M7.5 18.5v-5.5h7" className={styles.faint} /> : null}
      {state === 'draft' ? <path d="M7 19v-6h8M7.5 18.5l5.5-5.5M11 19l4-4" className={styles.hatch} /> : null}
      {state === 'issued' ? <rect x="7" y="12.5" width="8" height="6.5" className={styles.solid} /> : null}
    </svg>
  );
}

/** The drafting revision triangle: something upstream changed since issue. */
export function DeltaMark() {
  return (
    <svg className={styles.delta} viewBox="0 0 18 16" aria-hidden="true">
      <path d="M9 1.5L17 15H1z" />
    </svg>
  );
}
