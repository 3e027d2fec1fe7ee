'use client';

import type { PlannedTask } from '@gusset/contracts/planning';
import { formatMinutes } from '@gusset/units';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { boundWords, whenWords } from '../../shared/plan/plan-words.ts';
import { usePlanFrame } from '../../shared/plan/use-plan-frame.ts';
import { changePin, pinOf } from './edit-pins.ts';
import styles from './plan-screen.module.css';
import type { JobPlan, PlanSheet } from './plan-screen.tsx';

export type PlanTasksProps = {
  readonly sheet: PlanSheet;
  readonly view: JobPlan;
  readonly jobId: string;
};

/** In the order of their work: when, who, where, and what holds each. The critical chain has a bar at its side. */
export function PlanTasks({ sheet, view, jobId }: PlanTasksProps) {
  const tasks = view.plan.tasks.filter((task) => task.jobId === jobId);
  const chain = view.plan.jobs.find((job) => job.jobId === jobId)?.criticalChain ?? [];
  const critical = new Set(chain.map(({ taskId }) => taskId));
  if (tasks.length === 0) {
    return (
      <p className={styles.empty}>
        No tasks yet. Take the task template on sheet 08 Price; each task then gets its place between all the
        other work of the shop, with the reason why it begins no earlier.
      </p>
    );
  }
  return (
    <ol className={styles.tasks} aria-label="Tasks">
      {tasks.map((task) => (
        <TaskLine
          key={task.taskId}
          task={task}
          sheet={sheet}
          view={view}
          isCritical={critical.has(task.taskId)}
        />
      ))}
    </ol>
  );
}

type TaskLineProps = Omit<PlanTasksProps, 'jobId'> & {
  readonly task: PlannedTask;
  readonly isCritical: boolean;
};

const STATE_WORDS: Readonly<Record<PlannedTask['state'], string>> = {
  planned: '',
  running: 'running',
  done: 'done',
};

function TaskLine({ task, sheet, view, isCritical }: TaskLineProps) {
  const [isOpen, setIsOpen] = useState(false);
  const frame = usePlanFrame(view.plan.plannedAt);
  const row = view.tasks.find(({ id }) => id === task.taskId);
  const { boundBy } = task;
  const onJob = view.jobs.find(({ id }) => id === boundBy?.jobId && id !== task.jobId)?.number ?? null;
  const nameIn = (list: readonly { id: string; name: string }[], id: string | null) =>
    list.find((entry) => entry.id === id)?.name ?? '';
  const pin = pinOf(sheet.input, task.key);
  const isPinned = pin.personId !== null || pin.bayId !== null || pin.earliestOn !== null;
  const pinWords = isOpen ? 'Close' : isPinned ? 'Pinned' : 'Pin';
  return (
    <li className={styles.task} data-state={task.state} data-critical={isCritical}>
      <div className={styles.what}>
        <strong>{task.title}</strong>
        <span className={boundBy?.kind === 'part' ? styles.held : styles.because}>
          {task.state === 'planned'
            ? boundBy === null
              ? 'can begin at once'
              : boundWords(boundBy, frame, onJob)
            : STATE_WORDS[task.state]}
          {isCritical ? ' · on the critical chain' : ''}
        </span>
      </div>
      <span className="figures">
        {task.startsAt === null ? '' : whenWords(task.startsAt, frame)}
        <br />
        {whenWords(task.endsAt, frame)}
      </span>
      <span>
        {nameIn(view.people, task.personId)}
        <br />
        <span className={styles.because}>
          {[nameIn(view.bays, task.bayId), row === undefined ? '' : formatMinutes(row.minutes)]
            .filter(Boolean)
            .join(' · ')}
        </span>
      </span>
      {sheet.mayEdit && task.state === 'planned' ? (
        <Button
          look="quiet"
          aria-expanded={isOpen}
          aria-label={`${pinWords} ${task.title}`}
          onPress={() => setIsOpen(!isOpen)}
        >
          {pinWords}
        </Button>
      ) : null}
      {isOpen ? <PinFields task={task} sheet={sheet} view={view} /> : null}
    </li>
  );
}

const ANY = 'any';

function PinFields({ task, sheet, view }: Omit<TaskLineProps, 'isCritical'>) {
  const { input, changeNow } = sheet;
  const pin = pinOf(input, task.key);
  const choices = (list: readonly { id: string; name: string }[], any: string) => [
    { id: ANY, label: any },
    ...list.map(({ id, name }) => ({ id, label: name })),
  ];
  const chosen = (id: string) => (id === ANY ? null : id);
  return (
    <div className={styles.edit}>
      <Select
        label="Who"
        options={choices(view.people, 'Whoever suits')}
        value={pin.personId ?? ANY}
        onChange={(id) => changeNow(changePin(input, task.key, { personId: chosen(id) }))}
      />
      <Select
        label="Where"
        options={choices(view.bays, 'Wherever there is room')}
        value={pin.bayId ?? ANY}
        onChange={(id) => changeNow(changePin(input, task.key, { bayId: chosen(id) }))}
      />
      <DateField
        label="Not before"
        isOptional
        value={pin.earliestOn}
        onChange={(earliestOn) => changeNow(changePin(input, task.key, { earliestOn }))}
      />
    </div>
  );
}
