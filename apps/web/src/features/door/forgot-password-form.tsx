'use client';

import { zodResolver } from '@hookform/resolvers/zod';
import Link from 'next/link';
import { useState } from 'react';
import { useForm } from 'react-hook-form';
import { FormText } from '../../shared/controls/form-text.tsx';
import { authClient } from '../../shared/data/auth-client.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { doorSentence } from './door-error.ts';
import { DoorForm } from './door-form.tsx';
import { type ForgotValues, forgotSchema } from './door-schemas.ts';

export function ForgotPasswordForm() {
  const [problem, setProblem] = useState<string | null>(null);
  const [sentTo, setSentTo] = useState<string | null>(null);
  const form = useForm<ForgotValues>({ resolver: zodResolver(forgotSchema), defaultValues: { email: '' } });

  const ask = form.handleSubmit(async ({ email }) => {
    setProblem(null);
    const { error } = await authClient.requestPasswordReset({ email, redirectTo: paths.resetPassword() });
    if (error) setProblem(doorSentence(error));
    else setSentTo(email);
  });

  return (
    <DoorForm
      title="Get a new password"
      verb={sentTo ? 'Send it again' : 'Send me a link'}
      isPending={form.formState.isSubmitting}
      problem={problem}
      onSubmit={ask}
      others={<Link href={paths.signIn()}>Back to sign in</Link>}
    >
      {sentTo ? (
        <Verdict tone="note" words="Look in your mail">
          {/* The same words whether or not the address is known, so that nobody can ask who works here. */}
          <p>If {sentTo} has an account, a link is on its way. It works once, for an hour.</p>
        </Verdict>
      ) : null}
      <FormText
        control={form.control}
        name="email"
        label="E-mail"
        type="email"
        autoComplete="username"
        autoFocus
      />
    </DoorForm>
  );
}
