'use client';

import type { SoundResult } from '@gusset/contracts/sound';
import type { SheetOutcome } from '@gusset/sheets';
import { formatVolume } from '@gusset/units';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import styles from './sound-screen.module.css';
import { exposureWords, findingWords, soundHeadline } from './sound-words.ts';

export type SoundNotesProps = {
  readonly outcome: SheetOutcome<SoundResult>;
  readonly result: SoundResult | null;
};

/** Verdict first, then the figures, then what to mind. */
export function SoundNotes({ outcome, result }: SoundNotesProps) {
  return (
    <div className={styles.notes}>
      <OutcomeVerdict outcome={outcome} />
      {result === null ? null : <Figures result={result} />}
    </div>
  );
}

function OutcomeVerdict({ outcome }: { readonly outcome: SheetOutcome<SoundResult> }) {
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

function Figures({ result }: { readonly result: SoundResult }) {
  const lines = result.findings.map(findingWords).filter((line) => line !== null);
  return (
    <>
      <Rows title="System">
        <Row label="Net volume">{formatVolume(result.netLitres, 'metric', { both: true })}</Row>
        <Row label="System Q">{result.qtc.toFixed(2)}</Row>
        <Row label="Resonance in the box">{result.fcHz.toFixed(1)} Hz</Row>
        <Row label="Corner, −3 dB outdoors">{result.f3Hz.toFixed(1)} Hz</Row>
        <Row label="Load at the amplifier">{result.rdcOhm.toFixed(2)} Ω DC</Row>
        <Row label="Driver takes from the box">
          {formatVolume(result.displacementLitres, 'metric', { both: false })}
        </Row>
      </Rows>
      <ul className={styles.findings}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {result.contradictions.length > 0 ? (
        <Verdict tone="check" words="The data sheet contradicts itself">
          {result.contradictions.map(({ field, given, implied, percent }) => (
            <p key={field}>
              {field}: given {given.toPrecision(4)}, the other figures say {implied.toPrecision(4)} (
              {percent > 0 ? '+' : ''}
              {percent.toFixed(0)} %)
            </p>
          ))}
        </Verdict>
      ) : null}
      <Caution>
        Mind your hearing. About {Math.round(result.loudestDb)} dB in the low band at this power. Taken as dBA
        that is safe for {exposureWords(result.loudestDb)}. An estimate, no promise of level; wear protection
        when tuning, and local law on loudness applies.
      </Caution>
    </>
  );
}
