'use client';

import { addDays, formatShopDate } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { ApiInputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Progress } from '../../shared/marks/progress.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { usePlanFrame } from '../../shared/plan/use-plan-frame.ts';
import { useMay } from '../../shared/shell/person.tsx';
import { MovedList } from './moved-list.tsx';
import styles from './plan-screen.module.css';
import type { JobPlan } from './plan-screen.tsx';

type Question = ApiInputs['plan']['whatIf'];
type PanelProps = { readonly view: JobPlan; readonly jobId: string };

/** Asks without changing anything: somebody away, or a part some days later. */
export function WhatIfPanel({ view, jobId }: PanelProps) {
  const trpc = useTRPC();
  const mayAsk = useMay('plan.edit');
  const [question, setQuestion] = useState<Question | null>(null);
  const answer = useQuery({
    ...trpc.plan.whatIf.queryOptions(question ?? NO_QUESTION),
    enabled: question !== null,
    gcTime: 0,
  });
  if (!mayAsk) return null;
  return (
    <section className={styles.whatIf} aria-label="What if" data-screen-only="">
      <h2 className="caption">What if? Nothing is changed by asking</h2>
      <LeaveQuestion view={view} onAsk={setQuestion} />
      <PartQuestion view={view} jobId={jobId} onAsk={setQuestion} />
      {answer.isFetching ? <Progress what="Planning it afresh" share={null} /> : null}
      {question !== null && answer.error !== null ? (
        <Verdict tone="fail" words={shownError(answer.error).message} />
      ) : null}
      {question !== null && answer.data !== undefined ? (
        answer.data.moved.length === 0 ? (
          <Verdict tone="pass" words="No promise moves" />
        ) : (
          <Verdict tone="check" words="These dates move">
            <MovedList moved={answer.data.moved} view={view} />
            <p>
              {answer.data.movedIfReplanned.length === 0
                ? 'Planned in another order, no date would move.'
                : `Planned in another order, ${answer.data.movedIfReplanned.map(({ number }) => number).join(', ')} would move.`}
            </p>
          </Verdict>
        )
      ) : null}
    </section>
  );
}

/** Never sent: the query is off until somebody asks. */
const NO_QUESTION: Question = { kind: 'leave', personId: '', fromOn: '', toOn: '' };

type AskProps = { readonly view: JobPlan; readonly onAsk: (question: Question) => void };

function LeaveQuestion({ view, onAsk }: AskProps) {
  const { today } = usePlanFrame(view.plan.plannedAt);
  const [personId, setPersonId] = useState<string | null>(null);
  const [fromOn, setFromOn] = useState<string | null>(addDays(today, 1));
  const [days, setDays] = useState(2);
  return (
    <FieldGrid cellMinPx={190}>
      <Select
        label="Away"
        options={view.people.map(({ id, name }) => ({ id, label: name }))}
        value={personId}
        onChange={setPersonId}
      />
      <DateField label="From" value={fromOn} onChange={setFromOn} minDay={today} />
      <NumberField
        label="Days"
        value={days}
        min={1}
        max={60}
        digits={0}
        onCommit={(figure) => setDays(Math.round(figure?.value ?? 1))}
      />
      <Button
        isDisabled={personId === null || fromOn === null}
        onPress={() => {
          if (personId === null || fromOn === null) return;
          onAsk({ kind: 'leave', personId, fromOn, toOn: addDays(fromOn, days - 1) });
        }}
      >
        Ask about leave
      </Button>
    </FieldGrid>
  );
}

function PartQuestion({ view, jobId, onAsk }: AskProps & PanelProps) {
  const frame = usePlanFrame(view.plan.plannedAt);
  const [lineKey, setLineKey] = useState<string | null>(null);
  const [days, setDays] = useState(2);
  const parts = view.parts.filter((part) => part.jobId === jobId);
  if (parts.length === 0) return null;
  const part = parts.find((entry) => entry.lineKey === lineKey);
  return (
    <FieldGrid cellMinPx={190}>
      <Select
        label="Part"
        options={parts.map(({ lineKey: id, description, expectedOn }) => ({
          id,
          label: description,
          detail: expectedOn === null ? 'no date yet' : formatShopDate(expectedOn, frame.locale, 'day'),
        }))}
        value={lineKey}
        onChange={setLineKey}
      />
      <NumberField
        label="Days later"
        value={days}
        min={1}
        max={60}
        digits={0}
        onCommit={(figure) => setDays(Math.round(figure?.value ?? 1))}
      />
      <Button
        isDisabled={part === undefined}
        onPress={() => {
          if (part === undefined) return;
          const expectedOn = addDays(part.expectedOn ?? frame.today, days);
          onAsk({ kind: 'part', jobId, lineKey: part.lineKey, expectedOn });
        }}
      >
        Ask about the part
      </Button>
    </FieldGrid>
  );
}
