import type { Metadata } from 'next';
import Link from 'next/link';
import { DoorSheet } from '../../../../features/door/door-sheet.tsx';
import { JoinShop } from '../../../../features/door/join-shop.tsx';
import { serverApi } from '../../../../shared/data/server-api.ts';
import { shownError } from '../../../../shared/data/shop-error.ts';
import { Verdict } from '../../../../shared/marks/verdict.tsx';
import { paths } from '../../../../shared/paths.ts';

/** The secret in the address must not travel on in a Referer. */
export const metadata: Metadata = { title: 'Join a shop', referrer: 'no-referrer' };

const readInvitation = async (token: string) => {
  const api = await serverApi();
  try {
    return await api.people.invitation.query({ token });
  } catch (error) {
    const { code } = shownError(error);
    if (code === 'LINK_ENDED' || code === 'NOT_FOUND' || code === 'NOT_ACCEPTED') return null;
    throw error;
  }
};

export default async function InvitePage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  const invitation = await readInvitation(token);
  return (
    <DoorSheet name="Invitation">
      {invitation ? (
        <JoinShop token={token} invitation={invitation} />
      ) : (
        <>
          <h1>This invitation has ended</h1>
          <Verdict tone="note" words="It works once, for seven days">
            <p>
              Ask whoever invited you for a new one, or <Link href={paths.signIn()}>sign in</Link> if you
              joined already.
            </p>
          </Verdict>
        </>
      )}
    </DoorSheet>
  );
}
