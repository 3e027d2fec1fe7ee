// Everything a service may reach for. Built once in `server.ts` (or by a test) and passed down; nothing is global.
import type { Role } from '@gusset/contracts/access';
import type { Doors } from '@gusset/database';
import type { Auth } from './auth/auth.ts';
import type { Compute } from './compute/compute.ts';
import type { Env } from './env.ts';
import type { FileStore } from './files/file-store.ts';
import type { Log } from './log.ts';
import type { Queue } from './queue/queue.ts';

/** The one source of the time, so that tests can set it. */
export interface Clock {
  now(): Date;
}

export type Deps = {
  readonly env: Env;
  readonly doors: Doors;
  readonly auth: Auth;
  readonly queue: Queue;
  readonly files: FileStore;
  /** Long computations, in threads. */
  readonly compute: Compute;
  readonly clock: Clock;
  readonly log: Log;
};

/** A signed-in person in one shop: who acts, and by which right. */
export type Actor = {
  readonly shopId: string;
  readonly userId: string;
  readonly name: string;
  readonly role: Role;
  readonly personId: string | null;
  readonly requestId: string;
};
