'use client';

import type { Reading } from '@gusset/contracts/survey';
import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { usePerson } from '../../shared/shell/person.tsx';
import { type SurveyAnswer, UploadError, uploadPhoto } from './photo-upload.ts';
import { browserActs, watchActs } from './survey-act-store.ts';
import { type SendOutcome, type SurveyAct, sendWaiting } from './survey-acts.ts';

/** How long to wait before asking a server again that gave no answer. */
const ASK_AGAIN_MS = 5_000;

export type SurveyActs = {
  /** Of all surveys, this person's, oldest first. */
  readonly acts: readonly SurveyAct[];
  readonly isOnline: boolean;
  readonly isStopped: boolean;
  /** The device cannot keep anything (private window, full): then only the line decides. */
  readonly cannotKeep: boolean;
  readonly setReading: (reading: Reading, version: number) => Promise<void>;
  readonly removeReading: (key: string, version: number) => Promise<void>;
  readonly addPhoto: (photo: File, measurementKey: string | null) => Promise<void>;
  readonly drop: (actId: string) => Promise<void>;
  /** The same act over another version: "mine stays". */
  readonly sendOver: (act: SurveyAct, version: number) => Promise<void>;
};

/** Acts at a survey: kept first, then sent; `onAnswer` gets the survey as the server has it then. */
export function useSurveyActs(surveyId: string, onAnswer: (survey: SurveyAnswer) => void): SurveyActs {
  const person = usePerson();
  const owner = `${person.userId} ${person.shopId}`;
  const client = useTRPCClient();
  const trpc = useTRPC();
  const queries = useQueryClient();
  const [acts, setActs] = useState<readonly SurveyAct[]>([]);
  const [isOnline, setIsOnline] = useState(true);
  const [outcome, setOutcome] = useState<SendOutcome>('all-sent');
  const [cannotKeep, setCannotKeep] = useState(false);
  const answered = useRef(onAnswer);
  answered.current = onAnswer;
  const running = useRef<Promise<SendOutcome> | null>(null);
  const known = useRef(new Map<string, number>());

  const send = useCallback(
    async (act: SurveyAct) => {
      const survey = await sendOne(client, act);
      queries.setQueryData(trpc.survey.read.queryKey({ surveyId: survey.id }), survey);
      answered.current(survey);
      return { versionOf: (key: string) => survey.readings.find((each) => each.key === key)?.version ?? 0 };
    },
    [client, queries, trpc],
  );

  const flush = useCallback(async () => {
    // One at a time: a second call waits for the first and then looks again.
    while (running.current !== null) await running.current;
    running.current = sendWaiting({ owner, store: browserActs, send, shown: shownOf, known: known.current });
    try {
      setOutcome(await running.current);
    } finally {
      running.current = null;
    }
  }, [owner, send]);

  useEffect(
    () =>
      watchActs(
        owner,
        (kept) => setActs([...kept].sort((a, b) => a.order - b.order)),
        () => setCannotKeep(true),
      ),
    [owner],
  );

  useEffect(() => {
    const go = () => {
      setIsOnline(navigator.onLine);
      if (navigator.onLine) void flush();
    };
    go();
    window.addEventListener('online', go);
    window.addEventListener('offline', go);
    document.addEventListener('visibilitychange', go);
    return () => {
      window.removeEventListener('online', go);
      window.removeEventListener('offline', go);
      document.removeEventListener('visibilitychange', go);
    };
  }, [flush]);

  useEffect(() => {
    if (outcome !== 'stopped' || !isOnline) return;
    const timer = setInterval(() => void flush(), ASK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [outcome, isOnline, flush]);

  return useMemo(() => {
    const base = () => ({ id: crypto.randomUUID(), owner, surveyId, order: Date.now(), trouble: null });
    const keep = async (act: SurveyAct) => {
      try {
        await browserActs.put(act);
      } catch {
        // Nothing can be kept here (private window, full disk): it goes straight out, or the person is told.
        setCannotKeep(true);
        await send(act);
        return;
      }
      if (navigator.onLine) await flush();
    };
    /** A reading of the same letter that has not left yet is replaced, over the version it was made on. */
    const replacing = async (key: string, version: number): Promise<number> => {
      const waiting = (await browserActs.all(owner)).filter(
        (act) => act.surveyId === surveyId && act.kind === 'set' && act.reading.key === key,
      );
      const [first] = waiting;
      if (running.current !== null || first === undefined || first.kind !== 'set') return version;
      for (const act of waiting) await browserActs.drop(act.id);
      return first.version;
    };
    return {
      acts,
      isOnline,
      isStopped: outcome === 'stopped',
      cannotKeep,
      async setReading(reading, version) {
        const over = await replacing(reading.key, version);
        await keep({ ...base(), kind: 'set', reading, version: over, takenAt: new Date().toISOString() });
      },
      async removeReading(key, version) {
        const over = await replacing(key, version);
        if (over > 0) await keep({ ...base(), kind: 'remove', key, version: over });
      },
      addPhoto: (photo, measurementKey) =>
        keep({ ...base(), kind: 'photo', measurementKey, photo, name: photo.name }),
      drop: (actId) => browserActs.drop(actId),
      async sendOver(act, version) {
        await browserActs.drop(act.id);
        const again = { ...act, id: crypto.randomUUID(), trouble: null };
        await keep(again.kind === 'photo' ? again : { ...again, version });
      },
    };
  }, [acts, isOnline, outcome, cannotKeep, owner, surveyId, flush, send]);
}

function sendOne(client: ReturnType<typeof useTRPCClient>, act: SurveyAct): Promise<SurveyAnswer> {
  if (act.kind === 'photo') return uploadPhoto(act);
  const { id: key, surveyId, version } = act;
  if (act.kind === 'remove') {
    return client.survey.removeReading.mutate({ key, surveyId, dimension: act.key, version });
  }
  const { reading, takenAt } = act;
  return client.survey.setReading.mutate({ key, reading: { surveyId, version, reading, takenAt } });
}

const shownOf = (error: unknown) => (error instanceof UploadError ? error.shown : shownError(error));
