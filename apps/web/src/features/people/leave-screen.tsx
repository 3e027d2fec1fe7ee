'use client';

import { daysBetween, formatShopDate } from '@gusset/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { fieldError, type ShownError, shownError } from '../../shared/data/shop-error.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import styles from './people.module.css';

type Leave = ApiOutputs['leave']['list'][number];

/** Who is away and when: the plan gives nobody work on those days. */
export function LeaveScreen({ above, today }: { readonly above: ReactNode; readonly today: string }) {
  const { shop } = useDisplay();
  const mayEdit = useMay('leave.edit');
  return (
    <Page>
      <PageHeader kicker="Shop" title="Leave" />
      {above}
      <SheetFrame
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 3 },
          { caption: 'Sheet', value: 'Leave', span: 2 },
        ]}
      >
        <div className={styles.page}>
          {mayEdit ? <AddLeave today={today} /> : null}
          <FieldSet title="Away now and later">
            <LeaveList today={today} mayEdit={mayEdit} />
          </FieldSet>
        </div>
      </SheetFrame>
    </Page>
  );
}

function LeaveList({ today, mayEdit }: { readonly today: string; readonly mayEdit: boolean }) {
  const trpc = useTRPC();
  const client = useTRPCClient();
  const queries = useQueryClient();
  const say = useMessages();
  const { shop } = useDisplay();
  const query = useQuery(trpc.leave.list.queryOptions({ endsFrom: today }));
  const refresh = () => queries.invalidateQueries({ queryKey: trpc.leave.pathKey() });
  const trouble = (failure: unknown) => say(shownError(failure).message, { tone: 'trouble' });
  const addAgain = ({ personId, fromOn, toOn, note }: Leave) =>
    client.leave.add
      .mutate({ key: crypto.randomUUID(), leave: { personId, fromOn, toOn, note: note ?? '' } })
      .then(refresh, trouble);
  const remove = useMutation(
    trpc.leave.remove.mutationOptions({
      onSuccess: async (leave) => {
        await refresh();
        say(`Leave of ${leave.personName} removed.`, { undo: () => void addAgain(leave) });
      },
      onError: trouble,
    }),
  );
  if (query.isPending) return <Skeleton lines={3} what="Fetching the leave" />;
  if (query.isError) return <Verdict tone="fail" words={shownError(query.error).message} />;
  if (query.data.length === 0) return <p>Nobody is away.</p>;
  return (
    <ul className={styles.list}>
      {query.data.map((leave) => (
        <li key={leave.id} className={styles.person}>
          <div>
            <strong>{leave.personName}</strong>
            {leave.note ? <p className={styles.detail}>{leave.note}</p> : null}
          </div>
          <span>
            {formatShopDate(leave.fromOn, shop.locale, 'medium')}
            {leave.fromOn === leave.toOn ? '' : ` to ${formatShopDate(leave.toOn, shop.locale, 'medium')}`},{' '}
            {daysWords(daysBetween(leave.fromOn, leave.toOn) + 1)}
          </span>
          {mayEdit ? (
            <Button
              look="quiet"
              aria-label={`Remove leave of ${leave.personName}`}
              onPress={() => remove.mutate({ id: leave.id })}
            >
              Remove
            </Button>
          ) : null}
        </li>
      ))}
    </ul>
  );
}

function daysWords(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}

function AddLeave({ today }: { readonly today: string }) {
  const trpc = useTRPC();
  const client = useTRPCClient();
  const queries = useQueryClient();
  const people = useQuery(trpc.person.list.queryOptions({ limit: 200 }));
  const [key, setKey] = useState(() => crypto.randomUUID());
  const [personId, setPersonId] = useState<string | null>(null);
  const [fromOn, setFromOn] = useState<string | null>(today);
  const [toOn, setToOn] = useState<string | null>(today);
  const [note, setNote] = useState('');
  const [isPending, setIsPending] = useState(false);
  const [error, setError] = useState<ShownError | null>(null);
  const add = async () => {
    setIsPending(true);
    setError(null);
    try {
      await client.leave.add.mutate({
        key,
        leave: { personId: personId ?? '', fromOn: fromOn ?? '', toOn: toOn ?? '', note },
      });
      await queries.invalidateQueries({ queryKey: trpc.leave.pathKey() });
      setKey(crypto.randomUUID());
      setNote('');
    } catch (failure) {
      setError(shownError(failure));
    } finally {
      setIsPending(false);
    }
  };
  const who = fieldError(error, 'leave.personId') ?? fieldError(error, 'personId');
  return (
    <FieldSet title="Add leave">
      {error !== null && error.fields.length === 0 ? <Verdict tone="fail" words={error.message} /> : null}
      <FieldGrid cellMinPx={200}>
        <Select
          label="Who"
          options={(people.data?.rows ?? []).map((person) => ({ id: person.id, label: person.name }))}
          value={personId}
          onChange={setPersonId}
          error={who === null ? null : 'Choose somebody who works here.'}
        />
        <DateField
          label="From"
          value={fromOn}
          onChange={setFromOn}
          error={fieldError(error, 'leave.fromOn')}
        />
        <DateField
          label="To, last day"
          value={toOn}
          onChange={setToOn}
          error={fieldError(error, 'leave.toOn')}
        />
        <TextField label="Why" isOptional hint="Seen by the office only" value={note} onChange={setNote} />
      </FieldGrid>
      <div>
        <Button look="primary" onPress={() => void add()} isPending={isPending}>
          Add leave
        </Button>
      </div>
    </FieldSet>
  );
}
