// Puts the parts together for a process: API, worker, seed or test.
import { makeDoors, openClient } from '@gusset/database';
import { makeAuth } from './auth/auth.ts';
import { startCompute } from './compute/compute.ts';
import { computeTasks } from './compute/compute-tasks.ts';
import type { Clock, Deps } from './deps.ts';
import type { Env } from './env.ts';
import { folderFileStore } from './files/file-store.ts';
import { makeLog } from './log.ts';
import { presentedInvitation } from './people/invitation.queries.ts';
import { hashOfSecret } from './people/secret.ts';
import { startQueue } from './queue/queue.ts';

export const systemClock: Clock = { now: () => new Date() };

export type RunningDeps = { readonly deps: Deps; close(): Promise<void> };

export async function buildDeps(
  env: Env,
  options: { readonly clock?: Clock; readonly superviseQueue?: boolean; readonly limitRate?: boolean } = {},
): Promise<RunningDeps> {
  const { clock = systemClock, superviseQueue = env.WITH_WORKER, limitRate = true } = options;
  const log = makeLog(env.LOG_LEVEL);
  const doors = makeDoors(openClient({ url: env.DATABASE_URL, poolSize: env.DATABASE_POOL }));
  const queue = await startQueue(env.DATABASE_URL, log, { supervise: superviseQueue });
  const auth = makeAuth({
    env,
    doors,
    limitRate,
    isInvited: async (token) => {
      const tokenHash = hashOfSecret(token);
      const invitation = await doors.withSecret(tokenHash, (tx) =>
        presentedInvitation(tx, tokenHash, clock.now()),
      );
      return invitation !== null;
    },
    sendResetMail: (to, link) => queue.askNow('send-reset-mail', { to, link }),
  });
  const compute = startCompute(log, computeTasks);
  const deps: Deps = { env, doors, auth, queue, files: folderFileStore(env.FILES_DIR), compute, clock, log };
  return {
    deps,
    async close() {
      await compute.close();
      await queue.stop();
      await doors.close();
    },
  };
}
