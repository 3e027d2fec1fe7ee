// The same request sent twice takes effect once: the key, the request's hash and the answer are written in the same
// transaction as the effect. A second sender waits on the unique key until the first has committed.
import { createHash } from 'node:crypto';
import type { Tx } from '@gusset/database';
import { canonicalJson } from '@gusset/sheets';
import type { Actor } from '../deps.ts';
import { ShopError } from '../errors.ts';
import { asRequiredJson } from './json.ts';

export async function once<Answer>(
  tx: Tx,
  actor: Pick<Actor, 'shopId' | 'userId'>,
  key: string,
  request: unknown,
  effect: () => Promise<Answer>,
): Promise<Answer> {
  const requestHash = createHash('sha256').update(canonicalJson(request)).digest('hex');
  const where = { shopId: actor.shopId, actor: actor.userId, key };
  const { count } = await tx.idempotencyKey.createMany({
    data: [{ ...where, requestHash }],
    skipDuplicates: true,
  });
  if (count === 0) {
    const stored = await tx.idempotencyKey.findUnique({ where: { shopId_actor_key: where } });
    if (stored === null || stored.requestHash !== requestHash) {
      throw new ShopError(
        'SAME_KEY_OTHER_REQUEST',
        'This form was already sent with other contents. Open it anew.',
      );
    }
    // The answer was stored by this same function for the same request.
    return (stored.answer as { value: Answer }).value;
  }
  const value = await effect();
  await tx.idempotencyKey.update({
    where: { shopId_actor_key: where },
    data: { answer: asRequiredJson({ value }) },
  });
  return value;
}
