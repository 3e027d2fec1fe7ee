'use client';

import { zodResolver } from '@hookform/resolvers/zod';
import Link from 'next/link';
import { useState } from 'react';
import { useForm } from 'react-hook-form';
import { FormText } from '../../shared/controls/form-text.tsx';
import { authClient } from '../../shared/data/auth-client.ts';
import { paths } from '../../shared/paths.ts';
import { doorSentence } from './door-error.ts';
import { DoorForm } from './door-form.tsx';
import { type SignInValues, signInSchema } from './door-schemas.ts';
import { PasswordField } from './password-field.tsx';

/** `next`: a path of this app, already checked by `safeNext`. */
export function SignInForm({ next }: { readonly next: string }) {
  const [problem, setProblem] = useState<string | null>(null);
  const form = useForm<SignInValues>({
    resolver: zodResolver(signInSchema),
    defaultValues: { email: '', password: '' },
  });

  const signIn = form.handleSubmit(async (values) => {
    setProblem(null);
    const { error } = await authClient.signIn.email(values);
    if (error) setProblem(doorSentence(error));
    // A full load, so that the server draws the first page for this person.
    else window.location.assign(next);
  });

  return (
    <DoorForm
      title="Sign in"
      verb="Sign in"
      isPending={form.formState.isSubmitting}
      problem={problem}
      onSubmit={signIn}
      others={
        <>
          <Link href={paths.forgotPassword()}>Get a new password</Link>
          <Link href={paths.setUp()}>Set up a new shop</Link>
        </>
      }
    >
      <FormText
        control={form.control}
        name="email"
        label="E-mail"
        type="email"
        autoComplete="username"
        autoFocus
      />
      <PasswordField control={form.control} name="password" label="Password" isNew={false} />
    </DoorForm>
  );
}
