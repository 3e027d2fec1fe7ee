// Who presents secrets that nobody made is guessing. Counted in the database, so that all processes count together.
import { v7 as uuidv7 } from 'uuid';
import type { Deps } from '../deps.ts';
import { ShopError } from '../errors.ts';

/** A person mistypes or reopens an old link a few times; a machine does not stop there. */
const MISSES_ALLOWED = 60;
const WINDOW_MS = 10 * 60 * 1000;

/** Throws TOO_MANY for an address that has missed too often of late. */
export async function refuseGuesser({ doors, clock }: Deps, address: string): Promise<void> {
  const row = await doors.signIn.rateLimit.findUnique({
    where: { key: keyOf(address) },
    select: { count: true, lastRequest: true },
  });
  if (row === null || row.count < MISSES_ALLOWED) return;
  if (Number(row.lastRequest) + WINDOW_MS < clock.now().getTime()) return;
  throw new ShopError('TOO_MANY', 'Too many links that open nothing. Wait ten minutes, or ask the shop.');
}

export async function noteMiss({ doors, clock }: Deps, address: string): Promise<void> {
  const key = keyOf(address);
  const now = clock.now().getTime();
  await doors.signIn.$executeRaw`
    INSERT INTO rate_limit (id, key, count, last_request) VALUES (${uuidv7()}, ${key}, 1, ${now})
    ON CONFLICT (key) DO UPDATE SET
      count = CASE WHEN rate_limit.last_request < ${now - WINDOW_MS} THEN 1 ELSE rate_limit.count + 1 END,
      last_request = ${now}`;
}

const keyOf = (address: string): string => `quote-link ${address}`;
