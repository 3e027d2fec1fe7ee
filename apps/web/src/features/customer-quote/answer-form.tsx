'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, type ReactNode, useId, useState } from 'react';
import styles from './customer-quote.module.css';
import { type Answered, sendAnswer } from './send-answer.ts';

export type AnswerFormProps = {
  /** False once it has run out or was replaced: then asking is all that is left. */
  readonly canApprove: boolean;
  readonly snapshotSha256: string;
  readonly customerName: string;
  readonly shopName: string;
  readonly totalWords: string;
  readonly depositWords: string | null;
};

type Act = 'approve' | 'decline' | 'ask';

/** Approve, ask, or not now. Each button says what it does; nothing is sent before it is pressed. */
export function AnswerForm(props: AnswerFormProps) {
  const { canApprove, shopName } = props;
  const router = useRouter();
  const [open, setOpen] = useState<Act>(canApprove ? 'approve' : 'ask');
  const [busy, setBusy] = useState(false);
  const [refusal, setRefusal] = useState<Extract<Answered, { isTaken: false }> | null>(null);
  const [said, setSaid] = useState('');
  const send = async (act: Act, input: unknown, done: string) => {
    setBusy(true);
    setRefusal(null);
    const answered = await sendAnswer(act, input);
    setBusy(false);
    if (!answered.isTaken) {
      setRefusal(answered);
      return false;
    }
    setSaid(done);
    router.refresh();
    // The form goes with the answer; what the page says now stands at its head.
    if (act !== 'ask') window.scrollTo({ top: 0 });
    return true;
  };
  const choose = (act: Act) => {
    setOpen(act);
    setRefusal(null);
  };
  return (
    <section className={styles.answer} aria-labelledby="answer-head" data-screen-only="">
      <h2 id="answer-head">Your answer</h2>
      {canApprove ? (
        <div className={styles.choices}>
          <Choice act="approve" open={open} onChoose={choose}>
            Approve
          </Choice>
          <Choice act="ask" open={open} onChoose={choose}>
            Ask something
          </Choice>
          <Choice act="decline" open={open} onChoose={choose}>
            Not now
          </Choice>
        </div>
      ) : null}
      {open === 'approve' ? <Approve {...props} busy={busy} refusal={refusal} send={send} /> : null}
      {open === 'ask' ? <Ask {...props} busy={busy} refusal={refusal} send={send} /> : null}
      {open === 'decline' ? (
        <div className={styles.form}>
          <p>
            {shopName} is told that you are not going ahead, and this quote closes. You can always ask for a
            new one.
          </p>
          {refusal === null ? null : <Refused>{refusal.message}</Refused>}
          <button
            type="button"
            className={styles.plain}
            disabled={busy}
            onClick={() =>
              void send('decline', { snapshotSha256: props.snapshotSha256 }, 'The shop is told.')
            }
          >
            Not now: tell the shop
          </button>
        </div>
      ) : null}
      <p role="status" className={styles.said}>
        {said}
      </p>
    </section>
  );
}

type ChoiceProps = {
  readonly act: Act;
  readonly open: Act;
  readonly onChoose: (act: Act) => void;
  readonly children: string;
};

function Choice({ act, open, onChoose, children }: ChoiceProps) {
  return (
    <button type="button" aria-pressed={act === open} onClick={() => onChoose(act)}>
      {children}
    </button>
  );
}

type PartProps = AnswerFormProps & {
  readonly busy: boolean;
  readonly refusal: Extract<Answered, { isTaken: false }> | null;
  readonly send: (act: Act, input: unknown, done: string) => Promise<boolean>;
};

function Approve({ snapshotSha256, totalWords, depositWords, busy, refusal, send }: PartProps) {
  const [name, setName] = useState('');
  const [isTried, setIsTried] = useState(false);
  const id = useId();
  const problem = isTried && name.trim() === '' ? 'Type your name: it stands for your yes.' : null;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setIsTried(true);
    if (name.trim() === '') return;
    void send('approve', { name, snapshotSha256 }, 'Approved.');
  };
  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      <p>
        You approve the work and price above: {totalWords}
        {depositWords === null ? '' : `, of which ${depositWords} as deposit before parts are ordered`}. Your
        name, the time and where it came from are kept with it.
      </p>
      <Field id={id} label="Your name" problem={problem}>
        <input
          id={id}
          value={name}
          onChange={(event) => setName(event.target.value)}
          maxLength={120}
          autoComplete="name"
          aria-invalid={problem !== null}
          aria-describedby={problem === null ? undefined : `${id}-problem`}
        />
      </Field>
      {refusal === null ? null : <Refused>{refusal.message}</Refused>}
      <button type="submit" className={styles.primary} disabled={busy}>
        Approve for {totalWords}
      </button>
    </form>
  );
}

function Ask({ customerName, shopName, busy, refusal, send }: PartProps) {
  const [name, setName] = useState(customerName);
  const [text, setText] = useState('');
  const [key, setKey] = useState(() => crypto.randomUUID());
  const [isTried, setIsTried] = useState(false);
  const id = useId();
  const nameProblem = isTried && name.trim() === '' ? 'Type your name, so that they know who asks.' : null;
  const textProblem = isTried && text.trim() === '' ? 'Write what you would like to know.' : null;
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setIsTried(true);
    if (name.trim() === '' || text.trim() === '') return;
    if (await send('ask', { key, name, text }, `Your question is on its way to ${shopName}.`)) {
      setText('');
      setKey(crypto.randomUUID());
      setIsTried(false);
    }
  };
  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)} noValidate>
      <Field id={`${id}-text`} label={`What would you like to ask ${shopName}?`} problem={textProblem}>
        <textarea
          id={`${id}-text`}
          rows={4}
          value={text}
          dir="auto"
          maxLength={4_000}
          onChange={(event) => {
            setText(event.target.value);
            setKey(crypto.randomUUID());
          }}
          aria-invalid={textProblem !== null}
          aria-describedby={textProblem === null ? undefined : `${id}-text-problem`}
        />
      </Field>
      <Field id={`${id}-name`} label="Your name" problem={nameProblem}>
        <input
          id={`${id}-name`}
          value={name}
          maxLength={120}
          autoComplete="name"
          onChange={(event) => setName(event.target.value)}
          aria-invalid={nameProblem !== null}
          aria-describedby={nameProblem === null ? undefined : `${id}-name-problem`}
        />
      </Field>
      {refusal === null ? null : <Refused>{refusal.message}</Refused>}
      <button type="submit" className={styles.plain} disabled={busy}>
        Send the question
      </button>
    </form>
  );
}

type FieldProps = {
  readonly id: string;
  readonly label: string;
  readonly problem: string | null;
  readonly children: ReactNode;
};

function Field({ id, label, problem, children }: FieldProps) {
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      {children}
      {problem === null ? null : (
        <p id={`${id}-problem`} className={styles.problem}>
          {problem}
        </p>
      )}
    </div>
  );
}

function Refused({ children }: { readonly children: string }) {
  return (
    <p role="alert" className={styles.problem}>
      {children}
    </p>
  );
}
