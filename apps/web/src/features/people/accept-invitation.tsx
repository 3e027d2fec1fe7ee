'use client';

import { ROLE_MEANING } from '@gusset/contracts/access';
import { useMutation, useQuery } from '@tanstack/react-query';
import { Button } from '../../shared/controls/button.tsx';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { authClient } from '../../shared/data/auth-client.ts';
import { DataProvider } from '../../shared/data/data-provider.tsx';
import { shownError } from '../../shared/data/shop-error.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import styles from './people.module.css';

export type AcceptInvitationProps = {
  readonly token: string;
  /** The form of a new account, for those who have none; calls back once it is made. */
  readonly accountForm: (onDone: () => void) => React.ReactNode;
};

/** What the link in an invitation opens: who asks, as what, and the way in. */
export function AcceptInvitation(props: AcceptInvitationProps) {
  return (
    <DataProvider>
      <Invitation {...props} />
    </DataProvider>
  );
}

function Invitation({ token, accountForm }: AcceptInvitationProps) {
  const trpc = useTRPC();
  const session = authClient.useSession();
  const query = useQuery({ ...trpc.people.invitation.queryOptions({ token }), retry: false });
  const accept = useMutation(
    trpc.people.acceptInvitation.mutationOptions({
      onSuccess: () => window.location.assign(paths.today()),
    }),
  );
  if (query.isPending || session.isPending) return <Skeleton lines={4} what="Opening the invitation" />;
  if (query.isError) {
    return (
      <div className={styles.fields}>
        <Verdict tone="fail" words={shownError(query.error).message} />
        <LinkButton href={paths.signIn()}>To the sign-in</LinkButton>
      </div>
    );
  }
  const { shopName, invitedBy, role, name } = query.data;
  return (
    <div className={styles.fields}>
      <h1>{shopName}</h1>
      <p>
        Hello {name}. {invitedBy} asks you in as {role}: {ROLE_MEANING[role]}.
      </p>
      <div role="alert">
        {accept.isError ? <Verdict tone="fail" words={shownError(accept.error).message} /> : null}
      </div>
      {session.data === null ? (
        <>
          {accountForm(() => void session.refetch())}
          <p>
            <LinkButton look="quiet" href={paths.signIn(paths.invite(token))}>
              I have an account: sign in
            </LinkButton>
          </p>
        </>
      ) : (
        <>
          <p>You are signed in as {session.data.user.name}.</p>
          <Button look="primary" isWide isPending={accept.isPending} onPress={() => accept.mutate({ token })}>
            {`Work with ${shopName}`}
          </Button>
        </>
      )}
    </div>
  );
}
