import type { Tx } from '@gusset/database';
import type { Actor } from '../../deps.ts';
import { notFound } from '../../errors.ts';
import type { CsvShop } from './csv-kind.ts';
import { nameBook } from './name-book.ts';

/** More names than any shop keeps; the lists are read whole because a row may name any of them. */
const MOST_NAMES = 20_000;

export async function csvShop(tx: Tx, { shopId }: Pick<Actor, 'shopId'>): Promise<CsvShop> {
  const ask = { where: { shopId, archivedAt: null }, orderBy: { id: 'asc' }, take: MOST_NAMES } as const;
  const shop = await tx.shop.findUnique({ where: { id: shopId }, select: { currency: true } });
  if (shop === null) throw notFound('shop');
  const customers = await tx.customer.findMany({ ...ask, select: { id: true, name: true } });
  const suppliers = await tx.supplier.findMany({ ...ask, select: { id: true, name: true } });
  const models = await tx.vehicleModel.findMany({
    ...ask,
    select: { id: true, make: true, model: true, body: true, yearFrom: true },
  });
  return {
    currency: shop.currency,
    customers: nameBook('customer', customers),
    suppliers: nameBook('supplier', suppliers),
    models: nameBook(
      'vehicle model',
      models.map(({ id, make, model, body, yearFrom }) => ({
        id,
        name: [make, model, body, yearFrom].filter((part) => part !== null).join(' '),
      })),
    ),
  };
}
