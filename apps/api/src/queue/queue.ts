// Work that happens after the answer: queued in the same transaction as the change it follows from, done by a worker.
// Delivery is at least once, so every handler can be run twice without harm.
import type { Tx } from '@gusset/database';
import { fromPrisma, PgBoss } from 'pg-boss';
import type { Log } from '../log.ts';

/** Every kind of queued work and what its message holds: ids only, the worker reads the rest anew. */
export type Work = {
  readonly 'send-mail': { readonly shopId: string; readonly mailId: string };
  readonly 'send-reset-mail': { readonly to: string; readonly link: string };
};
export type WorkName = keyof Work;

const QUEUES: readonly WorkName[] = ['send-mail', 'send-reset-mail'];
const RETRY = { retryLimit: 6, retryDelay: 5, retryBackoff: true, expireInSeconds: 120 };

export interface Queue {
  /** Inside the business transaction: rolled back with it. */
  ask<N extends WorkName>(tx: Tx, name: N, message: Work[N]): Promise<void>;
  /** Outside any transaction. */
  askNow<N extends WorkName>(name: N, message: Work[N]): Promise<void>;
  /** Starts doing the work in this process. */
  work<N extends WorkName>(name: N, handler: (message: Work[N]) => Promise<void>): Promise<void>;
  stop(): Promise<void>;
}

export async function startQueue(
  databaseUrl: string,
  log: Log,
  options: { readonly supervise: boolean },
): Promise<Queue> {
  const boss = new PgBoss({
    connectionString: databaseUrl,
    options: '-c role=gusset_api',
    max: 3,
    migrate: false,
    createSchema: false,
    supervise: options.supervise,
    schedule: false,
  });
  boss.on('error', (error) => log.error({ err: error }, 'queue'));
  await boss.start();
  for (const name of QUEUES) await boss.createQueue(name, RETRY);
  return {
    async ask(tx, name, message) {
      await boss.send(name, message, { db: fromPrisma(tx) });
    },
    async askNow(name, message) {
      await boss.send(name, message);
    },
    async work(name, handler) {
      await boss.work<Work[typeof name]>(name, { pollingIntervalSeconds: 1 }, async (jobs) => {
        for (const job of jobs) await handler(job.data);
      });
    },
    stop: () => boss.stop({ graceful: true, timeout: 10_000 }),
  };
}
