'use client';

import { formatInstant } from '@gusset/units';
import { useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { ConfirmDialog } from '../../shared/overlays/confirm-dialog.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import styles from './calendar-screen.module.css';

type Feed = ApiOutputs['calendar']['mine'];

/** One's planned work in the calendar on the phone: an address to make, copy and take back. */
export function CalendarScreen({ start }: { readonly start: Feed }) {
  const trpc = useTRPC();
  const { data: feed, refetch } = useQuery(
    trpc.calendar.mine.queryOptions(undefined, { initialData: start }),
  );
  const settled = { onSettled: () => void refetch() };
  const making = useMutation(trpc.calendar.make.mutationOptions(settled));
  const revoking = useMutation(trpc.calendar.revoke.mutationOptions(settled));
  const [asks, setAsks] = useState<'replace' | 'revoke' | null>(null);
  const made = feed.madeAt === null ? null : (making.data?.url ?? null);
  const failed = making.error ?? revoking.error;
  const make = () => {
    setAsks(null);
    making.mutate();
  };
  return (
    <Page>
      <PageHeader kicker="My account" title="My calendar" />
      <div className={styles.screen}>
        <p>
          Your planned tasks and your leave, in the calendar on your phone. It holds the task, the job’s
          number, the vehicle and the bay; no customers, no prices, no phone numbers. Dates move as the plan
          does.
        </p>
        {failed === null ? null : <Verdict tone="fail" words={shownError(failed).message} />}
        {feed.canHave ? (
          <FeedState feed={feed} />
        ) : (
          <Verdict tone="check" words="There is nothing to show yet">
            Your sign-in is not linked to anybody who works at the bench. The owner links it under Shop,
            People.
          </Verdict>
        )}
        {made === null ? null : <FeedAddress url={made} />}
        {feed.canHave ? (
          <div className={styles.acts}>
            {feed.madeAt === null ? null : (
              <Button look="danger" isPending={revoking.isPending} onPress={() => setAsks('revoke')}>
                Take the address back
              </Button>
            )}
            <Button
              look="primary"
              isPending={making.isPending}
              onPress={() => (feed.madeAt === null ? make() : setAsks('replace'))}
            >
              {feed.madeAt === null ? 'Make my address' : 'Make a new address'}
            </Button>
          </div>
        ) : null}
      </div>
      <ConfirmDialog
        title="Replace the address?"
        verb="Make a new address"
        keep="Keep the old one"
        isOpen={asks === 'replace'}
        onClose={() => setAsks(null)}
        onConfirm={make}
      >
        Calendars that read the old address show nothing new any more.
      </ConfirmDialog>
      <ConfirmDialog
        title="Take the address back?"
        verb="Take it back"
        keep="Keep it"
        removes
        isOpen={asks === 'revoke'}
        onClose={() => setAsks(null)}
        onConfirm={() => {
          setAsks(null);
          revoking.mutate();
        }}
      >
        It opens nothing from then on.
      </ConfirmDialog>
    </Page>
  );
}

function FeedState({ feed }: { readonly feed: Feed }) {
  const { shop } = useDisplay();
  const when = (at: string) => formatInstant(at, { zone: shop.timeZone, locale: shop.locale, style: 'full' });
  if (feed.madeAt === null) return <Verdict tone="note" words="No address yet" />;
  return (
    <Rows title="Address">
      <Row label="Made" isWords>
        {when(feed.madeAt)}
      </Row>
      <Row label="Last read by a calendar" isWords>
        {feed.lastReadAt === null ? 'not yet' : when(feed.lastReadAt)}
      </Row>
      {feed.endsAt === null ? null : (
        <Row label="Has to be made anew after" isWords>
          {when(feed.endsAt)}
        </Row>
      )}
    </Rows>
  );
}

function FeedAddress({ url }: { readonly url: string }) {
  const say = useMessages();
  const copy = async () => {
    await navigator.clipboard.writeText(url);
    say('Address copied.');
  };
  return (
    <section className={styles.address} aria-label="Your address">
      <Verdict tone="check" words="Copy it now: it is shown this once">
        Whoever has it can read your days. In your calendar, choose to subscribe to a calendar by its address.
      </Verdict>
      <TextField label="Address" value={url} isReadOnly onChange={() => undefined} />
      <Button onPress={() => void copy()}>Copy the address</Button>
    </section>
  );
}
