// The one way to the data. Nothing outside this file and `door.ts` holds the bare client.
import { PrismaPg } from '@prisma/adapter-pg';
import { PrismaClient } from './generated/prisma/client.ts';

export type DatabaseOptions = {
  readonly url: string;
  /** Most connections this process opens. */
  readonly poolSize?: number;
};

/** Opens the pool as the role that owns nothing: `role=gusset_api` also when the URL names the owner. */
export function openClient({ url, poolSize = 10 }: DatabaseOptions): PrismaClient {
  const adapter = new PrismaPg({
    connectionString: url,
    max: poolSize,
    connectionTimeoutMillis: 5_000,
    statement_timeout: 10_000,
    lock_timeout: 2_000,
    idle_in_transaction_session_timeout: 15_000,
    options: '-c role=gusset_api',
    application_name: 'gusset',
  });
  return new PrismaClient({ adapter });
}
