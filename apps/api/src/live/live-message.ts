// What is told when something has changed: that it has, never what to. Screens fetch it by their own right.
import type { Tx } from '@gusset/database';
import { z } from 'zod';

export const LIVE_CHANNEL = 'gusset_live';

const liveNewsSchema = z.object({
  /** As in the record of changes: `sheet.issued`, `task.started`. */
  act: z.string(),
  /** What it happened to: `sheet.box`, `task`, `part.driver`. */
  noun: z.string(),
  /** Its id; for a sheet, the job's. */
  id: z.string(),
});
/** As a browser gets it. */
export type LiveNews = Readonly<z.infer<typeof liveNewsSchema>>;

const liveMessageSchema = liveNewsSchema.extend({ shopId: z.string() });
export type LiveMessage = Readonly<z.infer<typeof liveMessageSchema>>;

/** Reaches every API process when the transaction commits, and none when it does not. */
export async function tellLive(tx: Tx, message: LiveMessage): Promise<void> {
  await tx.$executeRaw`SELECT pg_notify(${LIVE_CHANNEL}, ${JSON.stringify(message)})`;
}

/** Null for what another version of the program may have sent. */
export function readLiveMessage(payload: string): LiveMessage | null {
  try {
    return liveMessageSchema.safeParse(JSON.parse(payload)).data ?? null;
  } catch {
    return null; // not JSON: not ours
  }
}
