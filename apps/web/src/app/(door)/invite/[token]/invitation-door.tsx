'use client';

import { AccountForm } from '../../../../features/door/account-form.tsx';
import { AcceptInvitation } from '../../../../features/people/accept-invitation.tsx';

/** Joins two features that know nothing of each other: the invitation, and the form of a new account. */
export function InvitationDoor({ token }: { readonly token: string }) {
  return (
    <AcceptInvitation
      token={token}
      accountForm={(onDone) => (
        <AccountForm title="Make your account" verb="Make the account" onDone={onDone} />
      )}
    />
  );
}
