// Hears what other processes tell through PostgreSQL's NOTIFY: one connection of its own, opened again when it breaks.
import pg from 'pg';

const FIRST_RETRY_MS = 250;
const LONGEST_RETRY_MS = 5_000;
/** A connection that died without a word is found out within this time. */
const ASK_EVERY_MS = 20_000;
const ANSWER_WITHIN_MS = 5_000;

export type ListenOptions = {
  readonly url: string;
  /** A plain SQL name. */
  readonly channel: string;
  readonly onMessage: (payload: string) => void;
  /** The connection is there again; whatever was told meanwhile is lost. */
  readonly onReturn: () => void;
  readonly onError: (error: unknown) => void;
};

export type Listening = { close(): Promise<void> };

/** Resolves once it listens; rejects when the database cannot be reached the first time. */
export async function listen(options: ListenOptions): Promise<Listening> {
  let client = await connect(options, () => void again());
  let isClosed = false;
  let waiting: NodeJS.Timeout | null = null;
  const asking = setInterval(() => {
    const asked = client;
    asked.query('SELECT 1').catch((error: unknown) => {
      options.onError(error);
      void asked.end(); // and its end opens another
    });
  }, ASK_EVERY_MS).unref();

  async function again(retryMs = FIRST_RETRY_MS): Promise<void> {
    if (isClosed) return;
    try {
      client = await connect(options, () => void again());
      if (isClosed) await client.end();
      else options.onReturn();
    } catch (error) {
      options.onError(error);
      const next = Math.min(LONGEST_RETRY_MS, retryMs * 2);
      waiting = setTimeout(() => void again(next), retryMs).unref();
    }
  }

  return {
    async close() {
      isClosed = true;
      clearInterval(asking);
      if (waiting !== null) clearTimeout(waiting);
      await client.end();
    },
  };
}

async function connect(
  { url, channel, onMessage, onError }: ListenOptions,
  onEnd: () => void,
): Promise<pg.Client> {
  const client = new pg.Client({
    connectionString: url,
    options: '-c role=gusset_api',
    application_name: 'gusset-live',
    connectionTimeoutMillis: ANSWER_WITHIN_MS,
    query_timeout: ANSWER_WITHIN_MS,
    keepAlive: true,
  });
  client.on('error', onError);
  client.on('notification', ({ payload }) => onMessage(payload ?? ''));
  let isListening = false;
  client.once('end', () => {
    if (isListening) onEnd();
  });
  try {
    await client.connect();
    await client.query(`LISTEN ${client.escapeIdentifier(channel)}`);
    isListening = true;
    return client;
  } catch (error) {
    await client.end();
    throw error;
  }
}
