'use client';

import type { JobTaskSpec, PriceResult } from '@gusset/contracts/price';
import { SKILL_NAME, SKILLS } from '@gusset/contracts/shop';
import { withoutTask, withTask } from '@gusset/sheets';
import { formatMinutes } from '@gusset/units';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { Dialog } from '../../shared/overlays/dialog.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { HoursCell } from './hours-cell.tsx';
import { PriceButton } from './price-button.tsx';
import { PriceDialog } from './price-dialog.tsx';
import styles from './price-screen.module.css';
import type { PriceJobSheet } from './price-sheet-types.ts';
import { useMoney } from './use-money.ts';

const PHASES: readonly { readonly id: JobTaskSpec['phase']; readonly label: string }[] = [
  { id: 'intake', label: 'Taking in and measuring' },
  { id: 'design', label: 'Design' },
  { id: 'parts', label: 'Parts' },
  { id: 'wood', label: 'Building the box' },
  { id: 'finish', label: 'Finish' },
  { id: 'wiring', label: 'Wiring' },
  { id: 'fitting', label: 'Fitting' },
  { id: 'handover', label: 'Tuning and hand-over' },
];

export type TaskListProps = {
  readonly sheet: PriceJobSheet;
  readonly tasks: readonly JobTaskSpec[];
  readonly result: PriceResult | null;
};

/** The work by phase, hours typed in place; the plan takes the same list. */
export function TaskList({ sheet, tasks, result }: TaskListProps) {
  const { facts } = sheet.data;
  const money = useMoney(facts.currency);
  const say = useMessages();
  const [adding, setAdding] = useState(false);
  const [pricedKey, setPricedKey] = useState<string | null>(null);
  const lines = new Map((result?.quote.lines ?? []).map((line) => [line.key, line]));
  const pricedLine = pricedKey === null ? undefined : lines.get(pricedKey);
  const sum = tasks.reduce((total, { key }) => total + (lines.get(key)?.listMinor ?? 0), 0);
  const minutes = tasks.reduce((total, task) => total + task.minutes, 0);
  const setMinutes = (key: string, changed: number) =>
    sheet.change({ tasks: tasks.map((task) => (task.key === key ? { ...task, minutes: changed } : task)) });
  const remove = (task: JobTaskSpec) => {
    const before = [...tasks];
    sheet.changeNow({ tasks: withoutTask(tasks, task.key) });
    say(`${task.title} is off the list.`, { undo: () => sheet.changeNow({ tasks: before }) });
  };
  return (
    <section className={styles.group} aria-labelledby="price-work">
      <header className={styles.groupHead}>
        <h2 id="price-work">Work</h2>
        <span className="figures">
          {formatMinutes(minutes)} · {money(sum)}
        </span>
      </header>
      {tasks.length === 0 ? <p className={styles.none}>No tasks on the list.</p> : null}
      {PHASES.map(({ id, label }) => {
        const own = tasks.filter(({ phase }) => phase === id);
        if (own.length === 0) return null;
        return (
          <table key={id} className={styles.lines}>
            <caption className="caption">{label}</caption>
            <thead className="unseen">
              <tr>
                <th scope="col">Task</th>
                <th scope="col">Hours</th>
                <th scope="col">Price</th>
                <th scope="col">Remove</th>
              </tr>
            </thead>
            <tbody>
              {own.map((task) => {
                const line = lines.get(task.key);
                return (
                  <tr key={task.key}>
                    <th scope="row">
                      {task.title}
                      <small>{SKILL_NAME[task.skill]}</small>
                    </th>
                    <td className={styles.hoursColumn}>
                      {sheet.mayEdit ? (
                        <HoursCell
                          label={task.title}
                          minutes={task.minutes}
                          onCommit={(changed) => setMinutes(task.key, changed)}
                          isDisabled={false}
                        />
                      ) : (
                        <span className="figures">{formatMinutes(task.minutes)}</span>
                      )}
                    </td>
                    <td className="figures">
                      {line === undefined ? (
                        '–'
                      ) : (
                        <PriceButton
                          act={`Change the rate of ${task.title}`}
                          amount={money(line.listMinor)}
                          onPress={sheet.mayEdit ? () => setPricedKey(task.key) : null}
                        />
                      )}
                    </td>
                    <td className={styles.remove} data-screen-only="">
                      {sheet.mayEdit ? (
                        <Button
                          look="quiet"
                          onPress={() => remove(task)}
                          aria-label={`Take off: ${task.title}`}
                        >
                          ×
                        </Button>
                      ) : null}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        );
      })}
      {sheet.mayEdit ? (
        <div className={styles.buttons} data-screen-only="">
          <Button onPress={() => setAdding(true)}>Add a task</Button>
        </div>
      ) : null}
      {adding ? <AddTask sheet={sheet} tasks={tasks} onClose={() => setAdding(false)} /> : null}
      {pricedLine === undefined ? null : (
        <PriceDialog sheet={sheet} line={pricedLine} onClose={() => setPricedKey(null)} />
      )}
    </section>
  );
}

type AddTaskProps = Pick<TaskListProps, 'sheet' | 'tasks'> & { readonly onClose: () => void };

function AddTask({ sheet, tasks, onClose }: AddTaskProps) {
  const [title, setTitle] = useState('');
  const [phase, setPhase] = useState<JobTaskSpec['phase']>('wood');
  const [skill, setSkill] = useState<JobTaskSpec['skill']>('fab');
  const [minutes, setMinutes] = useState(60);
  const [isTried, setIsTried] = useState(false);
  const add = () => {
    setIsTried(true);
    if (title.trim() === '') return;
    const key = `own-${crypto.randomUUID().slice(0, 8)}`;
    sheet.changeNow({ tasks: withTask(tasks, { key, title: title.trim(), phase, skill, minutes }) });
    onClose();
  };
  return (
    <Dialog
      title="Add a task"
      isOpen
      onClose={onClose}
      acts={
        <Button look="primary" onPress={add}>
          Add this task
        </Button>
      }
    >
      <div className={styles.form}>
        <TextField
          label="What is done"
          value={title}
          onChange={setTitle}
          maxLength={120}
          error={isTried && title.trim() === '' ? 'Say what is done: Fit the badge.' : null}
        />
        <Select label="Phase" options={PHASES} value={phase} onChange={setPhase} />
        <Select
          label="Who can do it"
          options={SKILLS.map((id) => ({ id, label: SKILL_NAME[id] }))}
          value={skill}
          onChange={setSkill}
        />
        <div className={styles.hoursInForm}>
          <span className="caption" aria-hidden="true">
            Hours
          </span>
          <HoursCell label="the new task" minutes={minutes} onCommit={setMinutes} isDisabled={false} />
        </div>
      </div>
    </Dialog>
  );
}
