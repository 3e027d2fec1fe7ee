// One computation at a time; while it runs only the newest question waits. Pure: posting is given.

export type Asked<Request> = { readonly id: number; readonly request: Request };

export type LatestWins<Request> = {
  readonly ask: (request: Request) => void;
  /** An answer came; true when it is to be shown (no later one has been shown). */
  readonly answered: (id: number) => boolean;
  /** What runs was stopped; the waiting question, if any, is posted. */
  readonly stopped: () => void;
  readonly isBusy: () => boolean;
};

export function createLatestWins<Request>(post: (asked: Asked<Request>) => void): LatestWins<Request> {
  let lastId = 0;
  let running: number | null = null;
  let waiting: Request | null = null;

  const start = (request: Request): void => {
    lastId += 1;
    running = lastId;
    post({ id: lastId, request });
  };
  const goOn = (): void => {
    running = null;
    if (waiting === null) return;
    const next = waiting;
    waiting = null;
    start(next);
  };

  return {
    ask: (request) => {
      if (running === null) start(request);
      else waiting = request;
    },
    answered: (id) => {
      if (id !== running) return false;
      goOn();
      return true;
    },
    stopped: goOn,
    isBusy: () => running !== null,
  };
}
