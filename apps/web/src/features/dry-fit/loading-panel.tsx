'use client';

import type { BoxFacts, BoxInput, BoxSheetResult } from '@gusset/contracts/box';
import type { CavityResult } from '@gusset/contracts/cargo';
import type { BoxUpstream } from '@gusset/sheets';
import { type ReactNode, useMemo, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { Switch } from '../../shared/controls/switch.tsx';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import type { JobSheet } from '../../shared/job/use-job-sheet.ts';
import { Caution } from '../../shared/marks/caution.tsx';
import { Progress } from '../../shared/marks/progress.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import styles from './loading-panel.module.css';
import type { LoadingAsked } from './loading-protocol.ts';
import { assumptionWords, loadingHeadline, NOT_CONSIDERED } from './loading-words.ts';
import { RemedyList } from './remedy-list.tsx';
import { type Loading, useLoading } from './use-loading.ts';
import { WayPlayer } from './way-player.tsx';

export type LoadingPanelProps = {
  readonly sheet: JobSheet<BoxInput, BoxFacts, BoxUpstream, BoxSheetResult>;
  readonly rule: LengthRule;
  readonly jobId: string;
};

/** Sheet 04, in and out: does the box go in and come out again, where is it tight, and what would help. */
export function LoadingPanel({ sheet, rule, jobId }: LoadingPanelProps) {
  const [mayTurnOver, setMayTurnOver] = useState(false);
  const { input, outcome, isStale } = sheet;
  const { facts, upstream } = sheet.data;
  const cavity = upstream.survey?.cavity ?? null;
  const result = outcome.state === 'ready' ? outcome.result : null;
  const isReady = result !== null && !isStale && cavity !== null && result.place !== null;
  const asked = useMemo<LoadingAsked | null>(
    () => (isReady ? { input, facts, upstream, result, choices: { mayTurnOver } } : null),
    [isReady, input, facts, upstream, result, mayTurnOver],
  );
  const loading = useLoading(asked);
  const missing = missingWords(cavity, result);
  return (
    <section className={styles.panel} aria-labelledby="in-and-out">
      <h2 id="in-and-out">In and out</h2>
      {missing !== null || cavity === null || result === null ? (
        <p className={styles.empty}>{missing}</p>
      ) : (
        <>
          <Outcome loading={loading} isOld={loading.isStale || isStale} cavity={cavity} rule={rule}>
            {loading.answer === null ? null : (
              <WayPlayer result={result} cavity={cavity} answer={loading.answer} rule={rule} />
            )}
            {loading.remedies.length === 0 ? null : (
              <RemedyList
                remedies={loading.remedies}
                rule={rule}
                mayEdit={sheet.mayEdit}
                isStale={loading.isStale || isStale}
                onTake={(changed) => sheet.changeNow(changed)}
                onTurnOver={() => setMayTurnOver(true)}
              />
            )}
          </Outcome>
          <div data-screen-only="">
            <Switch
              isSelected={mayTurnOver}
              onChange={setMayTurnOver}
              detail="Off: it is tipped by a quarter turn at most, forward or back."
            >
              It may be turned right over on the way
            </Switch>
          </div>
          <div className={styles.controls} data-screen-only="">
            <LinkButton href={paths.mockUpPaper(jobId)} isDownload>
              Mock-up at full size, PDF
            </LinkButton>
            <LinkButton href={paths.mockUpDxf(jobId)} isDownload>
              DXF
            </LinkButton>
            <span className={styles.cost}>
              Side profile and opening, in tiles for cardboard. Sheet 05 asks whether it went in and came out.
            </span>
          </div>
          {loading.answer === null ? null : <Assumed loading={loading} />}
        </>
      )}
    </section>
  );
}

function missingWords(cavity: CavityResult | null, result: BoxSheetResult | null): string | null {
  if (cavity === null)
    return 'Nobody has measured the car yet. With a section on sheet 02 the way in is worked out here.';
  if (result === null) return 'As soon as the box can be built, the way in is worked out here.';
  if (result.place === null)
    return 'The box has no place in the section yet, so there is no way to look for.';
  return null;
}

type OutcomeProps = {
  readonly loading: Loading;
  readonly isOld: boolean;
  readonly cavity: CavityResult;
  readonly rule: LengthRule;
  readonly children: ReactNode;
};

function Outcome({ loading, isOld, cavity, rule, children }: OutcomeProps) {
  const { answer, refused, running, fault, isStopped } = loading;
  const headline = answer === null ? null : loadingHeadline(answer, cavity, rule.words);
  return (
    <div className={styles.outcome} aria-busy={isOld} data-stale={isOld}>
      <div role="status" className={styles.said}>
        {headline === null ? (
          refused === null && !fault && !isStopped ? (
            <p className={styles.quiet}>Looking for a way through the opening.</p>
          ) : null
        ) : (
          <Verdict tone={headline.tone} words={headline.words}>
            {headline.lines.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </Verdict>
        )}
        {refused === null ? null : (
          <Verdict tone="fail" words="The way in cannot be looked for">
            <p>
              {refused.why}. Accepted: {refused.allowed}.
            </p>
          </Verdict>
        )}
      </div>
      {fault || isStopped ? (
        <div className={styles.controls} data-screen-only="">
          <span>
            {fault
              ? 'The search ended on a fault; nothing on the sheet was changed.'
              : 'Stopped: what was found by then stays.'}
          </span>
          <Button onPress={loading.again}>Look again</Button>
        </div>
      ) : null}
      {running === null ? null : (
        <div data-screen-only="">
          <Progress {...running} onCancel={loading.stop} />
        </div>
      )}
      {children}
    </div>
  );
}

function Assumed({ loading: { answer } }: { readonly loading: Loading }) {
  if (answer === null) return null;
  return (
    <div className={styles.assumed} data-screen-only="">
      <details>
        <summary>What this takes for granted</summary>
        <ul>
          {answer.assumptions.map((assumption) => (
            <li key={assumption}>{assumptionWords(assumption)}</li>
          ))}
          <li>{NOT_CONSIDERED}</li>
          <li>Movements finer than {answer.provedToMm} mm were not told apart.</li>
        </ul>
      </details>
      <Caution>
        Two people lift a loaded box, and try it with a cardboard or scrap profile before anything is cut.
      </Caution>
    </div>
  );
}
