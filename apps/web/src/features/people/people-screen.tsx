'use client';

import { formatInstant } from '@gusset/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { ConfirmDialog } from '../../shared/overlays/confirm-dialog.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { InviteDialog } from './invite-dialog.tsx';
import styles from './people.module.css';
import { ROLE_OPTIONS } from './role-options.ts';
import { Staff } from './staff.tsx';

type Member = ApiOutputs['people']['members'][number];

/** Who works here, who may sign in and as what, and who has been asked. */
export function PeopleScreen({ above }: { readonly above: ReactNode }) {
  const { shop } = useDisplay();
  const manages = useMay('people.manage');
  const [isInviting, setIsInviting] = useState(false);
  return (
    <Page>
      <PageHeader
        kicker="Shop"
        title="People"
        acts={
          manages ? (
            <Button look="primary" onPress={() => setIsInviting(true)}>
              Invite a colleague
            </Button>
          ) : null
        }
      />
      {above}
      <SheetFrame
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 3 },
          { caption: 'Sheet', value: 'People', span: 2 },
        ]}
      >
        <div className={styles.page}>
          <FieldSet title="Can sign in">
            <Members />
          </FieldSet>
          {manages ? (
            <FieldSet title="Asked, not here yet">
              <Invitations />
            </FieldSet>
          ) : null}
          <FieldSet title="Work here: skills and cost">
            <Staff />
          </FieldSet>
        </div>
      </SheetFrame>
      {isInviting ? <InviteDialog onClose={() => setIsInviting(false)} /> : null}
    </Page>
  );
}

function Members() {
  const trpc = useTRPC();
  const queries = useQueryClient();
  const say = useMessages();
  const { shop } = useDisplay();
  const manages = useMay('people.manage');
  const query = useQuery(trpc.people.members.queryOptions());
  const [leaving, setLeaving] = useState<Member | null>(null);
  const refresh = () =>
    Promise.all([
      queries.invalidateQueries({ queryKey: trpc.people.pathKey() }),
      queries.invalidateQueries({ queryKey: trpc.person.pathKey() }),
    ]);
  const trouble = (failure: unknown) => say(shownError(failure).message, { tone: 'trouble' });
  const change = useMutation(
    trpc.people.changeRole.mutationOptions({ onSuccess: refresh, onError: trouble }),
  );
  const remove = useMutation(
    trpc.people.remove.mutationOptions({
      onSuccess: async () => {
        await refresh();
        setLeaving(null);
      },
      onError: (failure) => {
        setLeaving(null);
        trouble(failure);
      },
    }),
  );
  if (query.isPending) return <Skeleton lines={3} what="Fetching the people" />;
  if (query.isError) return <Verdict tone="fail" words={shownError(query.error).message} />;
  return (
    <>
      <ul className={styles.list}>
        {query.data.map((member) => (
          <li key={member.membershipId} className={styles.person}>
            <div>
              <strong>{member.name}</strong>
              {member.isMe ? ' (you)' : ''}
              <p className={styles.detail}>
                {member.email} · since{' '}
                {formatInstant(member.since, { zone: shop.timeZone, locale: shop.locale })}
              </p>
            </div>
            <div className={styles.role}>
              {manages ? (
                <Select
                  label={`Role of ${member.name}`}
                  options={ROLE_OPTIONS}
                  value={member.role}
                  onChange={(role) => change.mutate({ membershipId: member.membershipId, role })}
                />
              ) : (
                <span>{member.role}</span>
              )}
            </div>
            {manages ? (
              <Button
                look="quiet"
                aria-label={`Remove ${member.name} from the shop`}
                onPress={() => setLeaving(member)}
              >
                Remove
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
      <ConfirmDialog
        title={`Remove ${leaving?.name ?? ''} from the shop?`}
        verb="Remove from the shop"
        keep="Keep"
        removes
        isOpen={leaving !== null}
        isPending={remove.isPending}
        onClose={() => setLeaving(null)}
        onConfirm={() => {
          if (leaving !== null) remove.mutate({ membershipId: leaving.membershipId });
        }}
      >
        <p>Their next request is refused, on every device. What they did stays under their name.</p>
        <p>To come back they need a new invitation.</p>
      </ConfirmDialog>
    </>
  );
}

function Invitations() {
  const trpc = useTRPC();
  const queries = useQueryClient();
  const say = useMessages();
  const { shop } = useDisplay();
  const query = useQuery(trpc.people.invitations.queryOptions());
  const revoke = useMutation(
    trpc.people.revokeInvitation.mutationOptions({
      onSuccess: () => queries.invalidateQueries({ queryKey: trpc.people.invitations.queryKey() }),
      onError: (failure) => say(shownError(failure).message, { tone: 'trouble' }),
    }),
  );
  if (query.isPending) return <Skeleton lines={1} what="Fetching the invitations" />;
  if (query.isError) return <Verdict tone="fail" words={shownError(query.error).message} />;
  if (query.data.length === 0) return <p>Nobody. An invitation goes by mail and holds for seven days.</p>;
  return (
    <ul className={styles.list}>
      {query.data.map((invitation) => (
        <li key={invitation.id} className={styles.person}>
          <div>
            <strong>{invitation.name}</strong>
            <p className={styles.detail}>
              {invitation.email} · asked by {invitation.invitedBy} · until{' '}
              {formatInstant(invitation.expiresAt, { zone: shop.timeZone, locale: shop.locale })}
            </p>
          </div>
          <span className={styles.role}>{invitation.role}</span>
          <Button
            look="quiet"
            aria-label={`Take back the invitation of ${invitation.name}`}
            onPress={() => revoke.mutate({ id: invitation.id })}
          >
            Take back
          </Button>
        </li>
      ))}
    </ul>
  );
}
