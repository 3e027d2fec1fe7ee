import type { SheetOutcome } from '@gusset/sheets';
import { Verdict } from '../marks/verdict.tsx';
import styles from './unready-verdict.module.css';

export type UnreadyVerdictProps = {
  readonly outcome: SheetOutcome<unknown>;
  /** What a refusal means for this sheet: "Such a box cannot be". */
  readonly refused: string;
};

/** What keeps a sheet from saying anything: each refusal with what would be accepted, or what is still missing. */
export function UnreadyVerdict({ outcome, refused }: UnreadyVerdictProps) {
  if (outcome.state === 'refused') {
    return (
      <Verdict tone="fail" words={refused}>
        {outcome.refusals.map(({ field, why, allowed }) => (
          <p key={`${field} ${why}`}>
            {why}. Accepted: {allowed}.
          </p>
        ))}
      </Verdict>
    );
  }
  if (outcome.state === 'incomplete') {
    return (
      <Verdict tone="check" words="Still missing">
        <ul className={styles.missing}>
          {outcome.missing.map(({ field, what }) => (
            <li key={`${field} ${what}`}>{what}</li>
          ))}
        </ul>
      </Verdict>
    );
  }
  return null;
}
