'use client';

import { laneChart } from '@gusset/drawings';
import { addDays, formatShopDate, toShopTime } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { usePlanFrame } from '../../shared/plan/use-plan-frame.ts';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { type CurrentPlan, dayLanes, dayWindow, minuteOn } from './bay-lanes.ts';
import { BayNotes } from './bay-notes.tsx';
import styles from './bays-screen.module.css';
import { MyDay } from './my-day.tsx';

const MINUTE_MS = 60_000;

/** Who does what in which bay today; what is late, held or lent; one's own day with large buttons. */
export function BaysScreen({ start }: { readonly start: CurrentPlan }) {
  const trpc = useTRPC();
  const router = useRouter();
  const { data: view, error } = useQuery(
    trpc.plan.current.queryOptions(undefined, { initialData: start, refetchInterval: MINUTE_MS }),
  );
  const frame = usePlanFrame(view.plan.plannedAt);
  const [shift, setShift] = useState(0);
  const day = addDays(frame.today, shift);
  const mayOpen = useMay('job.edit');
  const lanes = dayLanes(view, day, frame);
  const bars = lanes.flatMap((lane) => lane.tasks);
  const chart = laneChart({
    title: `Bays on ${formatShopDate(day, frame.locale, 'full')}`,
    description: lanes
      .map(
        ({ name, tasks }) =>
          `${name}: ${tasks.map((task) => `${task.name}, ${task.note}`).join('; ') || 'free'}`,
      )
      .join('. '),
    ...dayWindow(view, day),
    nowMinute: shift === 0 ? minuteOn(frame.now, day, frame.zone) : null,
    clock: usesTwelve(frame.locale) ? '12' : '24',
    lanes,
  });
  const open = (key: string) => {
    const task = view.plan.tasks.find(({ taskId }) => taskId === key.split('>')[0]);
    const job = view.jobs.find(({ id }) => id === task?.jobId);
    if (job !== undefined) router.push(paths.job(job.number, 'plan'));
  };
  return (
    <Page>
      <PageHeader
        kicker={formatShopDate(day, frame.locale, 'full')}
        title={shift === 0 ? 'Today in the bays' : 'In the bays'}
        acts={
          <>
            <Button aria-label="The day before" onPress={() => setShift(shift - 1)}>
              ‹ Before
            </Button>
            {shift === 0 ? null : <Button onPress={() => setShift(0)}>Today</Button>}
            <Button aria-label="The day after" onPress={() => setShift(shift + 1)}>
              After ›
            </Button>
          </>
        }
      />
      {error === null ? null : (
        <Verdict tone="check" words="The plan could not be read anew">
          {shownError(error).message} What you see is as of {toShopTime(view.plan.plannedAt, frame.zone).time}
          .
        </Verdict>
      )}
      <div className={styles.screen}>
        {view.bays.length === 0 ? (
          <EmptyState
            title="No bays yet"
            act={mayOpen ? <LinkButton href={paths.shop('bays')}>Set up the bays</LinkButton> : null}
          >
            A bay is a bench, a place for a vehicle or a finishing room. Each gets a lane here, with what is
            worked in it hour by hour.
          </EmptyState>
        ) : (
          <div className={styles.lanes}>
            <SceneDrawing scene={chart} minWidthPx={860} onPressKey={open} legend={<LaneKey />} />
          </div>
        )}
        {view.bays.length > 0 && bars.length === 0 ? (
          <p className={styles.quiet}>
            {view.jobs.length === 0
              ? 'No job has tasks yet. Price a job, issue its sheet 09 Plan, and its work appears in these lanes.'
              : 'Nothing is planned in the bays on this day.'}{' '}
            {mayOpen ? <LinkButton href={paths.jobs()}>To the jobs</LinkButton> : null}
          </p>
        ) : null}
        <MyDay view={view} day={day} frame={frame} isToday={shift === 0} />
        <BayNotes view={view} frame={frame} />
      </div>
    </Page>
  );
}

function usesTwelve(locale: string): boolean {
  return new Intl.DateTimeFormat(locale, { hour: 'numeric' }).resolvedOptions().hour12 ?? false;
}

function LaneKey() {
  return (
    <span className={styles.key}>
      <span>Solid: running</span>
      <span>Outline: planned · thin grey: done</span>
      <span>Dashed, hatched: it sets, nobody needed</span>
      <span>Red: held by a part or by leave</span>
      <span>Blue line: now</span>
    </span>
  );
}
