// The search box's five questions. What contains every word typed comes first; what only looks alike comes after it
// and is asked for only where the first left room, because comparing letters costs far more than finding them.
import { Prisma, type Tx } from '@gusset/database';
import type { Actor } from '../deps.ts';
import type { SearchText } from './search-text.ts';

/** Hits of one kind. */
export const MOST_HITS = 6;
/** How alike a word must be, 0 to 1: one wrong or missing letter in a name of six passes, another name does not. */
const ALIKE = 0.4;

export type HitRow = { readonly id: string; readonly title: string; readonly detail: string };
export type JobHitRow = HitRow & { readonly number: number };
export type PartHitRow = HitRow & { readonly kind: string };

type Question<Row> = (tx: Tx, actor: Pick<Actor, 'shopId'>, match: Match, limit: number) => Promise<Row[]>;

/** How a row's words are compared: a condition, and what puts better rows first. */
type Match = {
  readonly where: (words: Prisma.Sql) => Prisma.Sql;
  readonly order: (words: Prisma.Sql) => Prisma.Sql;
  readonly search: SearchText;
};

export async function closest<Row extends HitRow>(
  tx: Tx,
  actor: Pick<Actor, 'shopId'>,
  search: SearchText,
  question: Question<Row>,
): Promise<Row[]> {
  const found = await question(tx, actor, containing(search), MOST_HITS);
  if (found.length >= MOST_HITS) return found;
  const alike = await question(tx, actor, lookingAlike(search), MOST_HITS);
  const known = new Set(found.map(({ id }) => id));
  return [...found, ...alike.filter(({ id }) => !known.has(id))].slice(0, MOST_HITS);
}

function containing(search: SearchText): Match {
  return {
    search,
    where: (words) =>
      Prisma.join(
        search.patterns.map((pattern) => Prisma.sql`${words} LIKE ${pattern}`),
        ' AND ',
      ),
    order: (words) => Prisma.sql`(${words} LIKE ${search.prefix}) DESC, length(${words})`,
  };
}

function lookingAlike(search: SearchText): Match {
  return {
    search,
    where: (words) => Prisma.sql`word_similarity(${search.text}, ${words}) >= ${ALIKE}`,
    order: (words) => Prisma.sql`word_similarity(${search.text}, ${words}) DESC, length(${words})`,
  };
}

export const jobsLike: Question<JobHitRow> = (tx, { shopId }, { where, order, search }, limit) => {
  const words = Prisma.sql`lower(j.title)`;
  return tx.$queryRaw<JobHitRow[]>`
    SELECT j.id, j.number, j.title, c.name AS detail
    FROM (
      SELECT j.shop_id, j.id, j.number, j.title, j.customer_id FROM job j
      WHERE j.shop_id = ${shopId}::uuid AND j.archived_at IS NULL
        AND ((${where(words)}) OR j.number = ${search.number})
      ORDER BY (j.number IS NOT DISTINCT FROM ${search.number}) DESC, ${order(words)}, j.number DESC
      LIMIT ${limit}) j
    JOIN customer c ON c.shop_id = j.shop_id AND c.id = j.customer_id
    ORDER BY (j.number IS NOT DISTINCT FROM ${search.number}) DESC, ${order(words)}, j.number DESC`;
};

export const customersLike: Question<HitRow> = (tx, { shopId }, { where, order }, limit) => {
  const words = Prisma.sql`lower(c.name)`;
  return tx.$queryRaw<HitRow[]>`
    SELECT c.id, c.name AS title, coalesce(nullif(c.phone, ''), c.email) AS detail
    FROM customer c
    WHERE c.shop_id = ${shopId}::uuid AND c.archived_at IS NULL AND (${where(words)})
    ORDER BY ${order(words)}, c.id LIMIT ${limit}`;
};

export const vehiclesLike: Question<HitRow> = (tx, { shopId }, { where, order, search }, limit) => {
  const words = Prisma.sql`lower(v.plate)`;
  const plate = Prisma.sql`regexp_replace(lower(v.plate), '[^[:alnum:]]', '', 'g')`;
  // Null where nothing is left to compare: then no plate is like it.
  const samePlate = Prisma.sql`${plate} LIKE ${search.plate === '' ? null : `%${search.plate}%`}`;
  return tx.$queryRaw<HitRow[]>`
    SELECT v.id, v.plate AS title, concat_ws(' ', m.make, m.model, v.year::text) || ' · ' || c.name AS detail
    FROM vehicle v
    JOIN vehicle_model m ON m.shop_id = v.shop_id AND m.id = v.model_id
    JOIN customer c ON c.shop_id = v.shop_id AND c.id = v.customer_id
    WHERE v.shop_id = ${shopId}::uuid AND v.archived_at IS NULL AND v.plate <> ''
      AND ((${where(words)}) OR ${samePlate})
    ORDER BY (${samePlate}) DESC NULLS LAST, ${order(words)}, v.id LIMIT ${limit}`;
};

export const modelsLike: Question<HitRow> = (tx, { shopId }, { where, order }, limit) => {
  const words = Prisma.sql`lower(m.make || ' ' || m.model)`;
  return tx.$queryRaw<HitRow[]>`
    SELECT m.id, m.make || ' ' || m.model AS title, concat_ws(', from ', m.body, m.year_from::text) AS detail
    FROM vehicle_model m
    WHERE m.shop_id = ${shopId}::uuid AND m.archived_at IS NULL AND (${where(words)})
    ORDER BY ${order(words)}, m.id LIMIT ${limit}`;
};

export const partsLike: Question<PartHitRow> = (tx, { shopId }, { where, order }, limit) => {
  const words = Prisma.sql`lower(p.maker || ' ' || p.name || ' ' || p.code)`;
  return tx.$queryRaw<PartHitRow[]>`
    SELECT p.id, p.kind, concat_ws(' ', nullif(p.maker, ''), p.name) AS title, p.code AS detail
    FROM part p
    WHERE p.shop_id = ${shopId}::uuid AND p.archived_at IS NULL AND (${where(words)})
    ORDER BY ${order(words)}, p.id LIMIT ${limit}`;
};
