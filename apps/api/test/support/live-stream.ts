// What a browser's EventSource would hear of `/api/live`.
import { get, type IncomingHttpHeaders, type IncomingMessage } from 'node:http';
import { PUBLIC_URL } from './harness.ts';

export type HeardLive = {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  /** Everything that came so far, oldest first: `data` lines as JSON, other events by their name. */
  readonly heard: readonly unknown[];
  /** Resolves with the first that matches, also one that came before; rejects after a few seconds. */
  until(matches: (news: unknown) => boolean): Promise<unknown>;
  /** Resolves when the server ends it. */
  readonly ended: Promise<void>;
  leave(): void;
};

const WITHIN_MS = 5_000;

export async function hearLive(address: string, cookies: string): Promise<HeardLive> {
  const answer = await open(address, cookies);
  const heard: unknown[] = [];
  let rest = '';
  answer.setEncoding('utf8').on('data', (chunk: string) => {
    const blocks = (rest + chunk).split('\n\n');
    rest = blocks.pop() ?? '';
    heard.push(...blocks.flatMap(newsOf));
  });
  const ended = new Promise<void>((resolve) => answer.once('close', resolve));
  return {
    status: answer.statusCode ?? 0,
    headers: answer.headers,
    heard,
    ended,
    leave: () => void answer.destroy(),
    async until(matches) {
      const deadline = Date.now() + WITHIN_MS;
      for (;;) {
        const found = heard.find(matches);
        if (found !== undefined) return found;
        if (Date.now() > deadline) throw new Error(`not heard; but: ${JSON.stringify(heard)}`);
        await new Promise((resolve) => setTimeout(resolve, 20));
      }
    },
  };
}

/** A line of its own, as a browser has it: no pool that opens another when this one is dropped. */
function open(address: string, cookies: string): Promise<IncomingMessage> {
  const headers = { cookie: cookies, origin: PUBLIC_URL, accept: 'text/event-stream' };
  return new Promise((resolve, reject) => {
    get(`${address}/api/live`, { headers, agent: false }, resolve).once('error', reject);
  });
}

function newsOf(block: string): unknown[] {
  const line = (name: string) =>
    block
      .split('\n')
      .find((text) => text.startsWith(`${name}:`))
      ?.slice(name.length + 1)
      .trim();
  const event = line('event');
  if (event !== undefined) return [event];
  const data = line('data');
  return data === undefined ? [] : [JSON.parse(data)];
}
