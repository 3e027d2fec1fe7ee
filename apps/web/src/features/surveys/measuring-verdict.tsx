'use client';

import { buildCavity, reconcileSurvey } from '@gusset/cargo';
import type { CavitySketch, SectionForm } from '@gusset/contracts/cargo';
import { asMeasurement, worthTaking } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useMemo } from 'react';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { type SpokenFinding, spokenFindings, spokenRejections } from '../../shared/survey/finding-words.ts';
import { plusMinusWords, valueWords } from '../../shared/survey/reading-words.ts';
import { ReconciledTable } from '../../shared/survey/reconciled-table.tsx';
import styles from './measuring-screen.module.css';
import type { SurveyAnswer } from './photo-upload.ts';
import type { KeptReading } from './survey-acts.ts';

export type MeasuringVerdictProps = {
  readonly survey: SurveyAnswer;
  readonly form: SectionForm;
  readonly sketch: CavitySketch;
  readonly readings: readonly KeptReading[];
  readonly onSelect: (key: string) => void;
};

/** What is still to take, what contradicts what, and how sure the way in is. */
export function MeasuringVerdict({ form, sketch, readings, onSelect }: MeasuringVerdictProps) {
  const { lengthUnit, shop } = useDisplay();
  const manner = { unit: lengthUnit, denominator: shop.inchDenominator };
  const findings = [...spokenRejections(sketch.rejected), ...spokenFindings(sketch.findings, form, manner)];
  const faults = findings.filter(({ tone }) => tone === 'fail');
  const open = worthTaking(form, readings);
  const cavity = useMemo(() => {
    if (!sketch.complete) return null;
    const built = buildCavity(
      form,
      readings.map((reading) => asMeasurement(form, reading)),
    );
    return isRefusal(built) ? null : built;
  }, [sketch.complete, form, readings]);
  const adjusted = useMemo(() => {
    if (!sketch.complete) return null;
    const weighed = reconcileSurvey(
      form,
      readings.map((reading) => asMeasurement(form, reading)),
    );
    return weighed === null || isRefusal(weighed) ? null : weighed;
  }, [sketch.complete, form, readings]);
  return (
    <div className={styles.verdicts}>
      {faults.length > 0 ? (
        <Verdict tone="fail" words="These readings contradict each other">
          <FindingList findings={faults} onSelect={onSelect} />
        </Verdict>
      ) : null}
      {sketch.missing.length > 0 ? (
        <Verdict
          tone="check"
          words={sketch.missing.length === 1 ? 'One letter to go' : `${sketch.missing.length} letters to go`}
        >
          <LetterList letters={sketch.missing} onSelect={onSelect} />
        </Verdict>
      ) : null}
      {cavity === null ? null : (
        <Verdict tone={faults.length > 0 || open.length > 0 ? 'check' : 'pass'} words="The section closes">
          <p>
            Way in {valueWords({ unit: 'length' }, cavity.opening.heightMm, manner)}{' '}
            {plusMinusWords({ unit: 'length' }, cavity.opening.heightPlusMinusMm, manner)} high,{' '}
            {valueWords({ unit: 'length' }, cavity.opening.widthMm, manner)}{' '}
            {plusMinusWords({ unit: 'length' }, cavity.opening.widthPlusMinusMm, manner)} wide. Its plane is
            sure to{' '}
            {plusMinusWords(
              { unit: 'length' },
              cavity.walls[cavity.opening.wallIndex]?.plusMinusMm ?? 0,
              manner,
            )}{' '}
            at worst.
          </p>
          {open.length === 0 ? null : (
            <>
              <p>Taking these makes the walls surer:</p>
              <LetterList letters={open} onSelect={onSelect} />
            </>
          )}
        </Verdict>
      )}
      {adjusted === null ? null : (
        <details className={styles.notes}>
          <summary>What the checks make of the readings</summary>
          <ReconciledTable form={form} adjusted={adjusted} />
          <p className={styles.hint}>Sheet 02 says whether a job’s walls stand on the weighed readings.</p>
        </details>
      )}
      {sketch.complete && findings.length > faults.length ? (
        <details className={styles.notes}>
          <summary>What is assumed</summary>
          <FindingList findings={findings.filter(({ tone }) => tone !== 'fail')} onSelect={onSelect} />
        </details>
      ) : null}
    </div>
  );
}

type Letter = { readonly key: string; readonly letter: string; readonly label: string };

function LetterList({
  letters,
  onSelect,
}: {
  readonly letters: readonly Letter[];
  readonly onSelect: (key: string) => void;
}) {
  return (
    <div className={styles.letterButtons}>
      {letters.map(({ key, letter, label }) => (
        <button
          key={key}
          type="button"
          className={styles.letterButton}
          aria-label={`${letter}, ${label}`}
          onClick={() => onSelect(key)}
        >
          {letter}
        </button>
      ))}
    </div>
  );
}

function FindingList({
  findings,
  onSelect,
}: {
  readonly findings: readonly SpokenFinding[];
  readonly onSelect: (key: string) => void;
}) {
  return (
    <ul className={styles.findings}>
      {findings.map(({ id, key, words }) => (
        <li key={id}>
          <button type="button" onClick={() => onSelect(key)}>
            {words}
          </button>
        </li>
      ))}
    </ul>
  );
}
