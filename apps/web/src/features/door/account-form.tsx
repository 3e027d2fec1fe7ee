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
import { type AccountValues, accountSchema } from './door-schemas.ts';
import { PasswordField } from './password-field.tsx';

export type AccountFormProps = {
  readonly title: string;
  readonly verb: string;
  /** Token of the invitation that brought them here. */
  readonly invitation?: string;
  /** Fixed where an invitation names the address. */
  readonly email?: string;
  /** As the invitation names the person. */
  readonly name?: string;
  readonly onDone: () => void | Promise<void>;
};

/** Makes an account and signs in: first step of a new shop, or of an invitation. */
export function AccountForm({ title, verb, email, name, invitation, onDone }: AccountFormProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const form = useForm<AccountValues>({
    resolver: zodResolver(accountSchema),
    defaultValues: { name: name ?? '', email: email ?? '', password: '' },
  });

  const make = form.handleSubmit(async (values) => {
    setProblem(null);
    const { error } = await authClient.signUp.email(
      values,
      invitation === undefined ? {} : { headers: { 'x-gusset-invitation': invitation } },
    );
    if (error) setProblem(doorSentence(error));
    else await onDone();
  });

  return (
    <DoorForm
      title={title}
      verb={verb}
      isPending={form.formState.isSubmitting}
      problem={problem}
      onSubmit={make}
      others={<Link href={paths.signIn()}>I have an account</Link>}
    >
      <FormText control={form.control} name="name" label="Your name" autoComplete="name" autoFocus />
      <FormText
        control={form.control}
        name="email"
        label="E-mail"
        type="email"
        autoComplete="username"
        isReadOnly={email !== undefined}
      />
      <PasswordField
        control={form.control}
        name="password"
        label="Password"
        hint="12 characters or more; four unrelated words do well"
        isNew
      />
    </DoorForm>
  );
}
