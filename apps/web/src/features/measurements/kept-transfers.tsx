'use client';

import { type CarTransferView, FIRING_WORDS } from '@gusset/contracts/measurement';
import { formatInstant } from '@gusset/units';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import styles from './measurements.module.css';

/** The revisions that were kept, newest first: where the box stood, why, by whom. */
export function KeptTransfers({ transfers }: { readonly transfers: readonly CarTransferView[] }) {
  const { shop } = useDisplay();
  if (transfers.length === 0) return null;
  return (
    <section aria-label="Kept measurements">
      <h2 className="caption">Kept measurements</h2>
      <ol className={styles.kept}>
        {transfers.map(({ id, revision, place, direction, reason, keptBy, keptAt, curve }, i) => (
          <li key={id}>
            <strong>
              {revision}. {place}, {FIRING_WORDS[direction]}
            </strong>
            <span>{reason}</span>
            <span>
              {curve.validLowHz} to {curve.validHighHz} Hz, 1/{curve.smoothing} octave
              {i === 0 ? '; counts for jobs' : ''}
            </span>
            <span>
              {keptBy}, {formatInstant(keptAt, { zone: shop.timeZone, locale: shop.locale })}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
