// Which API process takes the next request. Round robin over those that answered last; one that refused
// a connection rests for a moment and is then tried again.

/** Long enough for a process to restart, short enough that nobody notices it came back. */
const REST_MS = 2_000;

export type ApiOrigins = {
  readonly count: number;
  /** The next origin in turn; when all are resting, the one that has rested longest. */
  readonly next: () => string;
  readonly rest: (origin: string) => void;
};

export function createApiOrigins(origins: readonly string[], nowMs: () => number): ApiOrigins {
  const restUntilMs = new Map<string, number>();
  let turn = 0;
  const wakes = (origin: string): number => restUntilMs.get(origin) ?? 0;

  return {
    count: origins.length,
    next: () => {
      const fromTurn = origins.map((_, offset) => origins[(turn + offset) % origins.length] ?? '');
      const awake = fromTurn.find((origin) => wakes(origin) <= nowMs());
      const chosen = awake ?? [...fromTurn].sort((a, b) => wakes(a) - wakes(b))[0] ?? '';
      turn = (origins.indexOf(chosen) + 1) % origins.length;
      return chosen;
    },
    rest: (origin) => {
      restUntilMs.set(origin, nowMs() + REST_MS);
    },
  };
}

/** Nothing was sent yet, so even a change may be tried elsewhere. */
const NEVER_CONNECTED = new Set(['ECONNREFUSED', 'ENOTFOUND', 'EHOSTUNREACH', 'UND_ERR_CONNECT_TIMEOUT']);
/** The connection broke on the way: only a question may be asked again. */
const BROKE_OFF = new Set(['ECONNRESET', 'EPIPE', 'UND_ERR_SOCKET']);
const QUESTIONS = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Walks `cause` down to the system's own code, because the proxy wraps it. */
export function connectionCode(error: unknown): string | null {
  let current = error;
  let code: string | null = null;
  while (current instanceof Error) {
    if ('code' in current && typeof current.code === 'string') code = current.code;
    current = current.cause;
  }
  return code;
}

export function mayAskAnother(method: string, code: string | null): boolean {
  if (code === null) return false;
  return NEVER_CONNECTED.has(code) || (BROKE_OFF.has(code) && QUESTIONS.has(method));
}
