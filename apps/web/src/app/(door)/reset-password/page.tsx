import type { Metadata } from 'next';
import { DoorSheet } from '../../../features/door/door-sheet.tsx';
import { ResetPasswordForm } from '../../../features/door/reset-password-form.tsx';

/** The token must not travel on in a Referer. */
export const metadata: Metadata = { title: 'Choose a new password', referrer: 'no-referrer' };

type Query = { token?: string | string[]; error?: string | string[] };

export default async function ResetPasswordPage({ searchParams }: { searchParams: Promise<Query> }) {
  const { token, error } = await searchParams;
  return (
    <DoorSheet name="New password">
      <ResetPasswordForm token={typeof token === 'string' && error === undefined ? token : null} />
    </DoorSheet>
  );
}
