// Every read and write goes through one of these doors: each opens a transaction, tells PostgreSQL for whom it
// speaks, and hands out that transaction's client only. Row-level security does the rest.
import type { PrismaClient } from './generated/prisma/client.ts';
import { Prisma } from './generated/prisma/client.ts';

/** The client of one transaction. */
export type Tx = Prisma.TransactionClient;

const RETRIES = 3;
const TRANSACTION = { maxWait: 5_000, timeout: 10_000 };

export type Doors = {
  /** As a shop: sees and writes that shop's rows only. */
  inShop<T>(shopId: string, work: (tx: Tx) => Promise<T>): Promise<T>;
  /** As a signed-in person who has not chosen a shop yet: sees own memberships and their shops. */
  asPerson<T>(userId: string, work: (tx: Tx) => Promise<T>): Promise<T>;
  /** As whoever presents a secret link: sees that secret's row. */
  withSecret<T>(tokenHash: string, work: (tx: Tx) => Promise<T>): Promise<T>;
  /** Sign-in tables only; for the auth library's adapter. */
  readonly signIn: PrismaClient;
  /** True when the database answers within a second and its schema is the one this program knows. */
  answers(): Promise<boolean>;
  close(): Promise<void>;
};

export function makeDoors(client: PrismaClient): Doors {
  const through = <T>(
    setting: 'app.shop_id' | 'app.user_id' | 'app.token_hash',
    value: string,
    work: (tx: Tx) => Promise<T>,
  ) =>
    retrying(() =>
      client.$transaction(async (tx) => {
        await tx.$executeRaw`SELECT set_config(${setting}, ${value}, true)`;
        return work(tx);
      }, TRANSACTION),
    );
  return {
    inShop: (shopId, work) => through('app.shop_id', shopId, work),
    asPerson: (userId, work) => through('app.user_id', userId, work),
    withSecret: (tokenHash, work) => through('app.token_hash', tokenHash, work),
    signIn: client,
    async answers() {
      try {
        await client.$queryRaw`SELECT 1`;
        return true;
      } catch {
        return false; // the caller reports "not ready"; the cause is in the database's own log
      }
    },
    close: () => client.$disconnect(),
  };
}

/** Serialisation failures and deadlocks are tried again as a whole; the work must have no effect outside. */
async function retrying<T>(attempt: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await attempt();
    } catch (error) {
      if (tries >= RETRIES || !isConcurrencyFailure(error)) throw error;
      await new Promise((resolve) => setTimeout(resolve, 10 * tries * tries));
    }
  }
}

function isConcurrencyFailure(error: unknown): boolean {
  if (error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2034') return true;
  return error instanceof Error && /\b(40001|40P01)\b/.test(error.message);
}
