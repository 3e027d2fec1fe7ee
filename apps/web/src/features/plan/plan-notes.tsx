'use client';

import { formatMinutes, formatShopDate } from '@gusset/units';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { UnreadyVerdict } from '../../shared/job/unready-verdict.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { heldJobOf, lapsedPinWords, lateWords, reasonWords } from '../../shared/plan/plan-words.ts';
import { usePlanFrame } from '../../shared/plan/use-plan-frame.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { MovedList } from './moved-list.tsx';
import styles from './plan-screen.module.css';
import type { JobPlan, PlanSheet } from './plan-screen.tsx';

export type PlanNotesProps = {
  readonly sheet: PlanSheet;
  readonly view: JobPlan | null;
  readonly jobId: string;
  readonly onPromised: () => void;
};

/** The first honest date and its reason, the promise, the queue, and whom the draft would move. */
export function PlanNotes({ sheet, view, jobId, onPromised }: PlanNotesProps) {
  const { outcome, input } = sheet;
  const lapsed = (view?.lapsedPins ?? []).filter((pin) => pin.jobId === jobId);
  return (
    <div className={styles.notes}>
      <UnreadyVerdict outcome={outcome} refused="The tasks do not fit together" />
      {view === null ? null : <PromiseNotes view={view} jobId={jobId} onPromised={onPromised} />}
      {lapsed.length === 0 ? null : (
        <Verdict tone="check" words="A pin could not be kept">
          {lapsed.map((pin) => (
            <p key={pin.taskId}>{lapsedPinWords(pin)}</p>
          ))}
        </Verdict>
      )}
      {view !== null && view.wouldMove.length > 0 ? (
        <Verdict tone="check" words="Issuing this moves other promises">
          <MovedList moved={view.wouldMove} view={view} />
        </Verdict>
      ) : null}
      <Rows title="Work">
        <Row label="Labour">
          {sheet.result === null ? 'not known yet' : formatMinutes(sheet.result.minutes)}
        </Row>
        <Row label="Tasks">{sheet.result?.tasks.length ?? 0}</Row>
      </Rows>
      {sheet.mayEdit ? (
        <NumberField
          label="Place in the queue"
          hint="Smaller goes before others; 0 is the usual place."
          value={input.rank}
          min={-1_000}
          max={1_000}
          digits={0}
          onCommit={(figure) => sheet.changeNow({ rank: Math.round(figure?.value ?? 0) })}
        />
      ) : null}
      <Caution>
        Glue, coats and adhesives set as the data sheet of the tin in use says; makers’ instructions and local
        rules go before these times.
      </Caution>
    </div>
  );
}

function PromiseNotes({ view, jobId, onPromised }: { view: JobPlan; jobId: string; onPromised: () => void }) {
  const trpc = useTRPC();
  const { shop } = useDisplay();
  const frame = usePlanFrame(view.plan.plannedAt);
  const mayPromise = useMay('plan.edit');
  const [other, setOther] = useState<string | null>(null);
  const promise = useMutation(trpc.plan.promise.mutationOptions({ onSettled: onPromised }));
  const planned = view.plan.jobs.find((job) => job.jobId === jobId);
  const job = view.jobs.find(({ id }) => id === jobId);
  if (planned === undefined || job === undefined || planned.promiseOn === null) return null;
  const { promiseOn, promisedOn } = planned;
  const day = (date: string) => formatShopDate(date, shop.locale, 'day');
  const late = lateWords(planned.lateDays);
  const send = (on: string | null) => promise.mutate({ jobId, version: job.version, promisedOn: on });
  return (
    <>
      <Verdict
        tone={late === null ? (promisedOn === null ? 'note' : 'pass') : 'fail'}
        words={
          late !== null
            ? `Promised ${day(promisedOn ?? '')}, ${late}`
            : `Can be promised for ${day(promiseOn)}`
        }
      >
        {reasonWords(planned.because, frame, heldJobOf(planned, view))}
      </Verdict>
      <Rows title="Dates">
        <Row label="First honest date">{day(promiseOn)}</Row>
        <Row label="Promised" tone={late === null ? 'plain' : 'pencil'}>
          {promisedOn === null ? 'nothing yet' : day(promisedOn)}
        </Row>
        {job.wishedOn === null ? null : (
          <Row label="Customer wishes" tone={job.wishedOn < promiseOn ? 'brass' : 'plain'}>
            {day(job.wishedOn)}
          </Row>
        )}
      </Rows>
      {mayPromise ? (
        <div className={styles.promise} data-screen-only="">
          {promisedOn === promiseOn ? null : (
            <Button isWide isPending={promise.isPending} onPress={() => send(promiseOn)}>
              Promise {day(promiseOn)}
            </Button>
          )}
          <DateField
            label="Or another date"
            isOptional
            value={other}
            onChange={setOther}
            minDay={frame.today}
          />
          {other === null || other === promisedOn ? null : (
            <>
              {other < promiseOn ? (
                <p className={styles.held}>
                  That is before the first honest date. The plan will show it as late unless something else
                  gives way.
                </p>
              ) : null}
              <Button isWide isPending={promise.isPending} onPress={() => send(other)}>
                Promise {day(other)}
              </Button>
            </>
          )}
          {promisedOn === null ? null : (
            <Button look="quiet" isPending={promise.isPending} onPress={() => send(null)}>
              Take the promise back
            </Button>
          )}
          {promise.error === null ? null : (
            <p role="alert" className={styles.held}>
              {shownError(promise.error).message}
            </p>
          )}
        </div>
      ) : null}
    </>
  );
}
