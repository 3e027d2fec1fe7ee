'use client';

import { formatInstant } from '@gusset/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import type { ReactNode } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { RadioGroup } from '../../shared/controls/radio-group.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { paths } from '../../shared/paths.ts';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { usePerson } from '../../shared/shell/person.tsx';
import { browserWords } from './browser-words.ts';
import styles from './people.module.css';

/** One's own units, shops and sign-ins. */
export function AccountScreen({ above }: { readonly above: ReactNode }) {
  const { shop } = useDisplay();
  const person = usePerson();
  return (
    <Page>
      <PageHeader kicker="Shop" title="My account" />
      {above}
      <SheetFrame
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 2 },
          { caption: 'Person', value: person.name, span: 2 },
          { caption: 'Role', value: person.role },
        ]}
      >
        <div className={styles.page}>
          <FieldSet title="My units">
            <OwnUnits />
          </FieldSet>
          <FieldSet title="My shops">
            <OwnShops />
          </FieldSet>
          <FieldSet title="Where I am signed in">
            <OwnSessions />
          </FieldSet>
        </div>
      </SheetFrame>
    </Page>
  );
}

type Unit = 'mm' | 'in' | 'shop';

function OwnUnits() {
  const trpc = useTRPC();
  const queries = useQueryClient();
  const router = useRouter();
  const say = useMessages();
  const current = useQuery(trpc.shop.current.queryOptions());
  const choose = useMutation(
    trpc.shop.chooseUnits.mutationOptions({
      onSuccess: async () => {
        await queries.invalidateQueries({ queryKey: trpc.shop.current.queryKey() });
        router.refresh();
      },
      onError: (failure) => say(shownError(failure).message, { tone: 'trouble' }),
    }),
  );
  const own = current.data?.lengthUnit;
  const value: Unit | null = current.data === undefined ? null : own === 'mm' || own === 'in' ? own : 'shop';
  return (
    <RadioGroup<Unit>
      label="Lengths, on every device where I sign in"
      isRow
      value={value}
      onChange={(unit) => choose.mutate({ lengthUnit: unit === 'shop' ? null : unit })}
      options={[
        { id: 'shop', label: 'As the shop' },
        { id: 'mm', label: 'Millimetres' },
        { id: 'in', label: 'Inches' },
      ]}
    />
  );
}

function OwnShops() {
  const trpc = useTRPC();
  const { shopId } = usePerson();
  const say = useMessages();
  const query = useQuery(trpc.shop.mine.queryOptions());
  const choose = useMutation(
    trpc.shop.choose.mutationOptions({
      // A full load: nothing of the other shop stays in memory.
      onSuccess: () => window.location.assign(paths.today()),
      onError: (failure) => say(shownError(failure).message, { tone: 'trouble' }),
    }),
  );
  if (query.isPending) return <Skeleton lines={1} what="Fetching your shops" />;
  if (query.isError) return <Verdict tone="fail" words={shownError(query.error).message} />;
  return (
    <ul className={styles.list}>
      {query.data.map((one) => (
        <li key={one.shopId} className={styles.person}>
          <strong>{one.name}</strong>
          <span className={styles.role}>{one.role}</span>
          {one.shopId === shopId ? (
            <span className={styles.detail}>here now</span>
          ) : (
            <Button
              look="quiet"
              aria-label={`Go to ${one.name}`}
              onPress={() => choose.mutate({ shopId: one.shopId })}
            >
              Go there
            </Button>
          )}
        </li>
      ))}
    </ul>
  );
}

function OwnSessions() {
  const trpc = useTRPC();
  const queries = useQueryClient();
  const say = useMessages();
  const { shop } = useDisplay();
  const query = useQuery(trpc.account.sessions.queryOptions());
  const refresh = () => queries.invalidateQueries({ queryKey: trpc.account.sessions.queryKey() });
  const trouble = (failure: unknown) => say(shownError(failure).message, { tone: 'trouble' });
  const end = useMutation(trpc.account.endSession.mutationOptions({ onSuccess: refresh, onError: trouble }));
  const endOthers = useMutation(
    trpc.account.endOtherSessions.mutationOptions({
      onSuccess: async ({ count }) => {
        await refresh();
        say(count === 1 ? 'One other sign-in ended.' : `${count} other sign-ins ended.`);
      },
      onError: trouble,
    }),
  );
  if (query.isPending) return <Skeleton lines={2} what="Fetching your sign-ins" />;
  if (query.isError) return <Verdict tone="fail" words={shownError(query.error).message} />;
  return (
    <>
      <ul className={styles.list}>
        {query.data.map((session) => {
          const name = browserWords(session.browser);
          return (
            <li key={session.id} className={styles.person}>
              <div>
                <strong>{name}</strong>
                <p className={styles.detail}>
                  since {formatInstant(session.signedInAt, { zone: shop.timeZone, locale: shop.locale })}
                </p>
              </div>
              <span className="figures">{session.address}</span>
              {session.isThis ? (
                <span className={styles.detail}>this device</span>
              ) : (
                <Button
                  look="quiet"
                  aria-label={`End the sign-in on ${name}`}
                  onPress={() => end.mutate({ id: session.id })}
                >
                  End
                </Button>
              )}
            </li>
          );
        })}
      </ul>
      {query.data.length > 1 ? (
        <div>
          <Button onPress={() => endOthers.mutate()} isPending={endOthers.isPending}>
            End all others
          </Button>
        </div>
      ) : null}
    </>
  );
}
