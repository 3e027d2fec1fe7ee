// A computation that tells of its progress by a callback, as something that can be waited for line by line.

export type StreamedRun<Progress, Answer> = (tools: {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
}) => Promise<Answer>;

export type StreamLine<Progress, Answer> =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'answer'; readonly answer: Answer };

/**
 * Progress as it comes (the newest where the reader is slower), then the answer. Ends the run when the reader stops
 * reading or `signal` aborts.
 */
export async function* streamProgress<Progress, Answer>(
  run: StreamedRun<Progress, Answer>,
  signal: AbortSignal | undefined,
): AsyncGenerator<StreamLine<Progress, Answer>, void, void> {
  const stopper = new AbortController();
  const newest: { progress: Progress | null; wake: () => void } = { progress: null, wake: () => undefined };
  const asked = signal === undefined ? stopper.signal : AbortSignal.any([signal, stopper.signal]);
  const onProgress = (progress: Progress) => {
    newest.progress = progress;
    newest.wake();
  };
  const running = run({ signal: asked, onProgress }).then((answer) => ({ kind: 'answer' as const, answer }));
  running.catch(() => undefined); // awaited below; by then the reader may have left
  try {
    for (;;) {
      const news = new Promise<null>((resolve) => {
        newest.wake = () => resolve(null);
      });
      const line = newest.progress === null ? await Promise.race([running, news]) : null;
      if (line !== null) {
        yield line;
        return;
      }
      const { progress } = newest;
      newest.progress = null;
      if (progress !== null) yield { kind: 'progress', progress };
    }
  } finally {
    stopper.abort();
  }
}
