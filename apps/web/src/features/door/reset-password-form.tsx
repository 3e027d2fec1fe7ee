'use client';

import { zodResolver } from '@hookform/resolvers/zod';
import Link from 'next/link';
import { useState } from 'react';
import { useForm } from 'react-hook-form';
import { authClient } from '../../shared/data/auth-client.ts';
import { paths } from '../../shared/paths.ts';
import { doorSentence } from './door-error.ts';
import { DoorForm } from './door-form.tsx';
import { type ResetValues, resetSchema } from './door-schemas.ts';
import { PasswordField } from './password-field.tsx';

/** `token`: from the link in the mail; null when the link came without one or the library refused it. */
export function ResetPasswordForm({ token }: { readonly token: string | null }) {
  const [problem, setProblem] = useState<string | null>(
    token === null ? doorSentence({ code: 'INVALID_TOKEN' }) : null,
  );
  const form = useForm<ResetValues>({ resolver: zodResolver(resetSchema), defaultValues: { password: '' } });

  const reset = form.handleSubmit(async ({ password }) => {
    if (token === null) return;
    setProblem(null);
    const { error } = await authClient.resetPassword({ newPassword: password, token });
    if (error) setProblem(doorSentence(error));
    else window.location.assign(paths.signIn());
  });

  return (
    <DoorForm
      title="Choose a new password"
      verb="Keep this password"
      isPending={form.formState.isSubmitting}
      problem={problem}
      onSubmit={reset}
      others={<Link href={paths.forgotPassword()}>Ask for a new link</Link>}
    >
      <PasswordField
        control={form.control}
        name="password"
        label="New password"
        hint="12 characters or more. Other devices are signed out."
        isNew
      />
    </DoorForm>
  );
}
