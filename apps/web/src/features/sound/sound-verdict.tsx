import type { SoundResult } from '@gusset/contracts/sound';
import { type SheetOutcome, soundHeadline } from '@gusset/sheets';
import { Verdict } from '../../shared/marks/verdict.tsx';
import styles from './sound-screen.module.css';

/** The sheet in words, first thing on it: what it does, what it still needs, or what cannot be. */
export function SoundVerdict({ outcome }: { readonly outcome: SheetOutcome<SoundResult> }) {
  if (outcome.state === 'refused') {
    return (
      <Verdict tone="fail" words="That cannot be">
        {outcome.refusals.map(({ field, why, allowed }) => (
          <p key={field}>
            {why}. Accepted: {allowed}.
          </p>
        ))}
      </Verdict>
    );
  }
  if (outcome.state === 'incomplete') {
    return (
      <Verdict tone="check" words="Still missing">
        <ul className={styles.findings}>
          {outcome.missing.map(({ field, what }) => (
            <li key={field}>{what}</li>
          ))}
        </ul>
      </Verdict>
    );
  }
  const { tone, words, detail } = soundHeadline(outcome.result);
  return (
    <Verdict tone={tone} words={words}>
      {detail}
    </Verdict>
  );
}
