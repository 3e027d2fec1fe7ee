'use client';

import { formatShopDate } from '@gusset/units';
import Link from 'next/link';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { paths } from '../../shared/paths.ts';
import {
  heldJobOf,
  lapsedPinWords,
  lateWords,
  moveWords,
  type PlanFrame,
  reasonWords,
} from '../../shared/plan/plan-words.ts';
import { type CurrentPlan, weekOf } from './bay-lanes.ts';
import styles from './bays-screen.module.css';

export type BayNotesProps = { readonly view: CurrentPlan; readonly frame: PlanFrame };

/** Under the lanes: promises of this week, parts that hold work, loans, and what the last change moved. */
export function BayNotes({ view, frame }: BayNotesProps) {
  return (
    <div className={styles.notes}>
      <PromisedThisWeek view={view} frame={frame} />
      <HoldingParts view={view} frame={frame} />
      {view.loans.length > 0 ? (
        <Rows title="Lent by sponsors, due back">
          {view.loans.map((loan) => (
            <Row
              key={`${loan.jobId} ${loan.description}`}
              label={loan.description}
              tone={loan.returnDueOn < frame.today ? 'pencil' : 'plain'}
            >
              {formatShopDate(loan.returnDueOn, frame.locale, 'day')}
            </Row>
          ))}
        </Rows>
      ) : null}
      {view.lapsedPins.length > 0 ? (
        <section>
          <h2 className="caption">Pins left aside</h2>
          <ul className={styles.moved}>
            {view.lapsedPins.map((pin) => (
              <li key={pin.taskId}>
                <JobLink view={view} jobId={pin.jobId} /> {lapsedPinWords(pin)}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {view.moved.length > 0 ? (
        <section>
          <h2 className="caption">What the last change moved</h2>
          <p className={styles.quiet}>{view.because}</p>
          <ul className={styles.moved}>
            {view.moved.map((change) => (
              <li key={change.jobId}>
                <Link prefetch={false} href={paths.job(change.number, 'plan')}>
                  {change.number}
                </Link>{' '}
                <span className="figures">{moveWords(change, frame)}</span>
                <br />
                {reasonWords(change.because, frame, heldJobOf(change, view))}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </div>
  );
}

function JobLink({ view, jobId }: Pick<BayNotesProps, 'view'> & { readonly jobId: string }) {
  const job = view.jobs.find(({ id }) => id === jobId);
  if (job === undefined) return null;
  return (
    <Link prefetch={false} href={paths.job(job.number, 'plan')}>
      {job.number}
    </Link>
  );
}

function PromisedThisWeek({ view, frame }: BayNotesProps) {
  const { to } = weekOf(frame.today);
  const handedOver = new Set(view.jobs.filter(({ isHandedOver }) => isHandedOver).map(({ id }) => id));
  const promised = view.plan.jobs
    .filter(({ jobId }) => !handedOver.has(jobId))
    .filter((job) => job.promisedOn !== null && (job.promisedOn <= to || (job.lateDays ?? 0) > 0))
    .sort((a, b) => (a.promisedOn ?? '').localeCompare(b.promisedOn ?? '') || a.number - b.number);
  return (
    <Rows title="Promised this week, or late">
      {promised.length === 0 ? (
        <Row label="Nothing is promised this week" isWords>
          {' '}
        </Row>
      ) : null}
      {promised.map((job) => {
        const late = lateWords(job.lateDays);
        const { vehicle, title } = view.jobs.find(({ id }) => id === job.jobId) ?? { vehicle: '', title: '' };
        return (
          <Row
            key={job.jobId}
            tone={late === null ? 'plain' : 'pencil'}
            label={
              <Link prefetch={false} href={paths.job(job.number, 'plan')}>
                {job.number} {vehicle || title}
                {late === null ? '' : ` · ${late}`}
              </Link>
            }
          >
            {job.promisedOn === null ? '' : formatShopDate(job.promisedOn, frame.locale, 'day')}
          </Row>
        );
      })}
    </Rows>
  );
}

function HoldingParts({ view, frame }: BayNotesProps) {
  const holding = new Set(
    view.plan.tasks.flatMap(({ jobId, boundBy }) =>
      boundBy?.kind === 'part' ? [`${jobId} ${boundBy.id}`] : [],
    ),
  );
  const parts = view.parts.filter(({ jobId, lineKey }) => holding.has(`${jobId} ${lineKey}`));
  return (
    <Rows title="Parts that hold a task">
      {parts.length === 0 ? (
        <Row label="No part holds a task" isWords>
          {' '}
        </Row>
      ) : null}
      {parts.map((part) => (
        <Row
          key={`${part.jobId} ${part.lineKey}`}
          label={`${part.description} · ${view.jobs.find(({ id }) => id === part.jobId)?.number ?? ''}`}
          tone={part.expectedOn === null || part.expectedOn < frame.today ? 'pencil' : 'plain'}
        >
          {part.expectedOn === null ? 'no date' : formatShopDate(part.expectedOn, frame.locale, 'day')}
        </Row>
      ))}
    </Rows>
  );
}
