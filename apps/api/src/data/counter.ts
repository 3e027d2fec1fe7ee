// Numbers handed out one by one under a row lock, in the same transaction as what they number: no gaps, no doubles.
import type { Tx } from '@gusset/database';

export async function nextNumber(tx: Tx, shopId: string, name: string, first = 1): Promise<number> {
  const rows = await tx.$queryRaw<{ value: number }[]>`
    INSERT INTO counter (shop_id, name, value) VALUES (${shopId}::uuid, ${name}, ${first})
    ON CONFLICT (shop_id, name) DO UPDATE SET value = counter.value + 1
    RETURNING value`;
  const value = rows[0]?.value;
  if (value === undefined) throw new Error(`the counter ${name} gave no number`);
  return value;
}
