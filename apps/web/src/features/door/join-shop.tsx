'use client';

import { ROLE_MEANING, type Role } from '@gusset/contracts/access';
import { useMutation } from '@tanstack/react-query';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { authClient } from '../../shared/data/auth-client.ts';
import { DataProvider } from '../../shared/data/data-provider.tsx';
import { shownError } from '../../shared/data/shop-error.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { AccountForm } from './account-form.tsx';
import styles from './door-form.module.css';

export type Invitation = {
  readonly shopName: string;
  readonly name: string;
  readonly role: Role;
  readonly invitedBy: string;
};

export type JoinShopProps = { readonly token: string; readonly invitation: Invitation };

/** Accepts an invitation: with the account one is signed in to, or with a new one. */
export function JoinShop(props: JoinShopProps) {
  return (
    <DataProvider>
      <Join {...props} />
    </DataProvider>
  );
}

function Join({ token, invitation }: JoinShopProps) {
  const { shopName, invitedBy, role, name } = invitation;
  const trpc = useTRPC();
  const session = authClient.useSession();
  const accept = useMutation(
    trpc.people.acceptInvitation.mutationOptions({ onSuccess: () => window.location.assign(paths.today()) }),
  );
  const problem = accept.error ? shownError(accept.error).message : null;
  const asWhat = `${invitedBy} asks you in as ${role}. ${ROLE_MEANING[role]}.`;

  if (session.isPending) return <Skeleton lines={4} what="Looking whether you are signed in" />;
  if (session.data === null) {
    return (
      <>
        <p>{asWhat}</p>
        <AccountForm
          title={`Join ${shopName}`}
          verb="Make my account and join"
          invitation={token}
          name={name}
          onDone={async () => {
            await session.refetch();
            accept.mutate({ token });
          }}
        />
      </>
    );
  }
  return (
    <div className={styles.form}>
      <h1>Join {shopName}</h1>
      <p>{asWhat}</p>
      <div role="alert">{problem ? <Verdict tone="fail" words={problem} /> : null}</div>
      <Button look="primary" isWide isPending={accept.isPending} onPress={() => accept.mutate({ token })}>
        Join as {session.data.user.name}
      </Button>
    </div>
  );
}
