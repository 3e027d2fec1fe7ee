'use client';

import type { PlannedTask } from '@gusset/contracts/planning';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import Link from 'next/link';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { Dialog } from '../../shared/overlays/dialog.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { paths } from '../../shared/paths.ts';
import { boundWords, type PlanFrame, whenWords } from '../../shared/plan/plan-words.ts';
import { type CurrentPlan, isHeld, myDay, progressWords } from './bay-lanes.ts';
import styles from './bays-screen.module.css';

export type MyDayProps = {
  readonly view: CurrentPlan;
  readonly day: string;
  readonly frame: PlanFrame & { readonly now: string };
  readonly isToday: boolean;
};

/** One's own tasks in order, each with one large button: start, or done. */
export function MyDay({ view, day, frame, isToday }: MyDayProps) {
  const acts = useTaskActs();
  const tasks = myDay(view, view.myPersonId, day, frame.zone);
  if (view.myPersonId === null) return null;
  const next = tasks.find(({ state }) => state === 'planned');
  const isFree = !tasks.some(({ state }) => state === 'running');
  return (
    <section className={styles.mine} aria-label="My day">
      <h2 className="caption">My day</h2>
      {acts.problem === null ? null : <Verdict tone="fail" words={acts.problem} />}
      {acts.isHeld ? (
        <Verdict tone="check" words="Not reported yet: no connection">
          It is sent when the connection is back. Leave this page open.
        </Verdict>
      ) : null}
      {tasks.length === 0 ? <p className={styles.quiet}>Nothing is planned for you on this day.</p> : null}
      <ol className={styles.tasks}>
        {tasks.map((task) => (
          <li key={task.taskId} className={styles.task} data-state={task.state}>
            <TaskWords task={task} view={view} frame={frame} />
            {isToday ? (
              <TaskButtons task={task} view={view} acts={acts} isNext={isFree && task === next} />
            ) : null}
          </li>
        ))}
      </ol>
      <EvenThoughDialog key={acts.asked?.task.taskId ?? ''} acts={acts} />
    </section>
  );
}

function TaskWords({
  task,
  view,
  frame,
}: Omit<MyDayProps, 'day' | 'isToday'> & { readonly task: PlannedTask }) {
  const job = view.jobs.find(({ id }) => id === task.jobId);
  const bay = view.bays.find(({ id }) => id === task.bayId);
  const from = task.startsAt === null ? '' : `${whenWords(task.startsAt, frame)} to `;
  return (
    <div className={styles.what}>
      <strong>{task.title}</strong>
      <span>
        <span className="figures">
          {from}
          {whenWords(task.endsAt, frame)}
        </span>
        {bay === undefined ? '' : ` · ${bay.name}`}
        {task.state === 'planned' ? '' : ` · ${progressWords(task, view)}`}
      </span>
      {job === undefined ? null : (
        <Link prefetch={false} href={paths.job(job.number, 'plan')}>
          {job.number} {job.vehicle || job.title}
        </Link>
      )}
      {isHeld(task) && task.boundBy !== null ? (
        <span className={styles.held}>{boundWords(task.boundBy, frame, null)}</span>
      ) : null}
    </div>
  );
}

type TaskButtonsProps = {
  readonly task: PlannedTask;
  readonly view: CurrentPlan;
  readonly acts: TaskActs;
  readonly isNext: boolean;
};

function TaskButtons({ task, view, acts, isNext }: TaskButtonsProps) {
  const version = view.tasks.find(({ id }) => id === task.taskId)?.version ?? 0;
  const at = { taskId: task.taskId, version };
  const state = {
    isPending: acts.busyWith === task.taskId,
    isDisabled: acts.busyWith !== null && acts.busyWith !== task.taskId,
  };
  return (
    <div className={styles.buttons}>
      {task.state === 'planned' ? (
        <Button
          look={isNext ? 'primary' : 'plain'}
          {...state}
          aria-label={isNext ? `Start my next task: ${task.title}` : `Start ${task.title}`}
          onPress={() => acts.start(task, at)}
        >
          {isNext ? 'Start my next task' : 'Start'}
        </Button>
      ) : null}
      {task.state === 'running' ? (
        <>
          <Button look="quiet" {...state} onPress={() => acts.reopen(task, at)}>
            Not started after all
          </Button>
          <Button
            look="primary"
            {...state}
            aria-label={`${task.title} is done`}
            onPress={() => acts.finish(task, at)}
          >
            Done
          </Button>
        </>
      ) : null}
      {task.state === 'done' ? (
        <Button look="quiet" {...state} onPress={() => acts.reopen(task, at)}>
          Not done yet
        </Button>
      ) : null}
    </div>
  );
}

type At = { readonly taskId: string; readonly version: number };
type Asked = { readonly task: PlannedTask; readonly at: At; readonly waits: string };
type TaskActs = ReturnType<typeof useTaskActs>;

/** Reports to the shop; a task that still waits asks for a reason before it is begun all the same. */
function useTaskActs() {
  const trpc = useTRPC();
  const queries = useQueryClient();
  const say = useMessages();
  const [problem, setProblem] = useState<string | null>(null);
  const [asked, setAsked] = useState<Asked | null>(null);
  const again = { onSettled: () => queries.invalidateQueries({ queryKey: trpc.plan.current.queryKey() }) };
  const starting = useMutation(trpc.task.start.mutationOptions(again));
  const finishing = useMutation(trpc.task.finish.mutationOptions(again));
  const reopening = useMutation(trpc.task.reopen.mutationOptions(again));
  const all = [starting, finishing, reopening];
  const report = async (work: () => Promise<unknown>, words: string) => {
    setProblem(null);
    try {
      await work();
      say(words);
    } catch (error) {
      setProblem(shownError(error).message);
    }
  };
  const start = async (task: PlannedTask, at: At, evenThough: string | null = null) => {
    setProblem(null);
    setAsked(null);
    try {
      await starting.mutateAsync({ ...at, evenThough });
      say(`${task.title}: started.`);
    } catch (error) {
      const shown = shownError(error);
      if (shown.code === 'TASK_NOT_READY' && evenThough === null)
        setAsked({ task, at, waits: shown.message });
      else setProblem(shown.message);
    }
  };
  return {
    problem,
    asked,
    /** The task that is being reported on; one at a time. */
    busyWith: all.find(({ isPending }) => isPending)?.variables?.taskId ?? null,
    /** A report waits on this device for the connection. */
    isHeld: all.some(({ isPaused }) => isPaused),
    start: (task: PlannedTask, at: At) => void start(task, at),
    startEvenThough: (reason: string) => {
      if (asked !== null) void start(asked.task, asked.at, reason);
    },
    leave: () => setAsked(null),
    finish: (task: PlannedTask, at: At) =>
      void report(() => finishing.mutateAsync({ ...at, workedMinutes: null }), `${task.title}: done.`),
    reopen: (task: PlannedTask, at: At) =>
      void report(() => reopening.mutateAsync(at), `${task.title}: taken back.`),
  };
}

function EvenThoughDialog({ acts }: { readonly acts: TaskActs }) {
  const [reason, setReason] = useState('');
  return (
    <Dialog
      title={acts.asked === null ? 'Start' : `Start ${acts.asked.task.title} all the same?`}
      isOpen={acts.asked !== null}
      onClose={acts.leave}
      acts={
        <>
          <Button onPress={acts.leave}>Leave it</Button>
          <Button
            look="primary"
            isDisabled={reason.trim() === ''}
            onPress={() => acts.startEvenThough(reason.trim())}
          >
            Start all the same
          </Button>
        </>
      }
    >
      <p>{acts.asked?.waits}</p>
      <p>Glue and coats keep to the data sheet of the tin in use. The reason stands in the record.</p>
      <TextField label="Why it can start" value={reason} onChange={setReason} />
    </Dialog>
  );
}
