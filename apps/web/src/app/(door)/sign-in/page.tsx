import type { Metadata } from 'next';
import { DoorSheet } from '../../../features/door/door-sheet.tsx';
import { SignInForm } from '../../../features/door/sign-in-form.tsx';
import { safeNext } from '../../../shared/paths.ts';

export const metadata: Metadata = { title: 'Sign in' };

export default async function SignInPage({
  searchParams,
}: {
  searchParams: Promise<{ next?: string | string[] }>;
}) {
  const { next } = await searchParams;
  return (
    <DoorSheet name="Sign in">
      <SignInForm next={safeNext(typeof next === 'string' ? next : null)} />
    </DoorSheet>
  );
}
