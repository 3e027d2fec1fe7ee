'use client';

import type { ReactNode, SubmitEvent } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import styles from './door-form.module.css';

export type DoorFormProps = {
  readonly title: string;
  readonly verb: string;
  readonly isPending: boolean;
  /** What went wrong with the whole form; null when nothing did. */
  readonly problem: string | null;
  readonly onSubmit: (event: SubmitEvent<HTMLFormElement>) => void;
  readonly children: ReactNode;
  /** Other ways on: a link or two. */
  readonly others?: ReactNode;
};

/** The common shape of the forms before the sign-in. */
export function DoorForm({ title, verb, isPending, problem, onSubmit, children, others }: DoorFormProps) {
  return (
    <form className={styles.form} onSubmit={onSubmit} noValidate>
      <h1>{title}</h1>
      <div role="alert">{problem ? <Verdict tone="fail" words={problem} /> : null}</div>
      {children}
      <Button type="submit" look="primary" isWide isPending={isPending}>
        {verb}
      </Button>
      {others ? <div className={styles.others}>{others}</div> : null}
    </form>
  );
}
