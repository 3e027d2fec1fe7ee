import type { DesignLetter } from '@gusset/contracts/sound';
import { CURVE_DASHES } from '@gusset/drawings';
import { designDash } from '@gusset/sheets';

/** The line that a design has on the charts, as a key. */
export function DesignLine({
  letter,
  isChosen,
}: {
  readonly letter: DesignLetter;
  readonly isChosen: boolean;
}) {
  return (
    <svg width="44" height="10" viewBox="0 0 44 10" aria-hidden="true">
      <path
        d="M0 5H44"
        fill="none"
        stroke={isChosen ? 'var(--mark)' : 'var(--ink)'}
        strokeWidth="2"
        strokeDasharray={CURVE_DASHES[designDash(letter)].join(' ')}
      />
    </svg>
  );
}
