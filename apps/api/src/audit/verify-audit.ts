// Follows every shop's chain in a database. Needs a role that sees all shops; the program's own does not.
import { type BrokenLink, CHAIN_START, type ChainEnd, type ChainLink, followChain } from './audit-chain.ts';

/** Links read at a time. */
const BATCH = 1_000;

export type ShopChain = {
  readonly shopId: string;
  readonly shopName: string;
  readonly entries: number;
  readonly broken: BrokenLink | null;
};

/** Asks the database as its administrator. */
export type AdminQuery = <Row extends object>(sql: string, values: readonly unknown[]) => Promise<Row[]>;

export async function verifyAudit(query: AdminQuery): Promise<ShopChain[]> {
  const shops = await query<{ id: string; name: string; last: number | null }>(
    `SELECT s.id, s.name, c.value AS last
     FROM shop s LEFT JOIN counter c ON c.shop_id = s.id AND c.name = 'audit'
     ORDER BY s.created_at, s.id`,
    [],
  );
  const chains: ShopChain[] = [];
  for (const { id, name, last } of shops) {
    chains.push({ shopId: id, shopName: name, ...(await verifyShop(query, id, last ?? 0)) });
  }
  return chains;
}

/** `last`: the number that was handed out last, so that entries cut off at the end are missed too. */
async function verifyShop(
  query: AdminQuery,
  shopId: string,
  last: number,
): Promise<Pick<ShopChain, 'entries' | 'broken'>> {
  let end: ChainEnd = CHAIN_START;
  for (;;) {
    const links = await query<ChainLink>(
      `SELECT seq, actor, actor_name AS "actorName", request_id AS "requestId", act, subject,
              subject_id AS "subjectId", before, after, prev_hash AS "prevHash", hash
       FROM audit_entry WHERE shop_id = $1 AND seq > $2 ORDER BY seq LIMIT $3`,
      [shopId, end.seq, BATCH],
    );
    const followed = followChain(end, links);
    if ('why' in followed) return { entries: end.seq, broken: followed };
    end = followed;
    if (links.length < BATCH) break;
  }
  const isCutOff = end.seq !== last;
  return { entries: end.seq, broken: isCutOff ? { seq: end.seq + 1, why: 'the entry is missing' } : null };
}
