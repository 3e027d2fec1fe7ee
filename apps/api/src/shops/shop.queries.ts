import type { Prisma, Tx } from '@gusset/database';

export const shopView = {
  id: true,
  name: true,
  timeZone: true,
  currency: true,
  locale: true,
  settings: true,
  version: true,
} satisfies Prisma.ShopSelect;
export type ShopRow = Prisma.ShopGetPayload<{ select: typeof shopView }>;

export function findShop(tx: Tx, shopId: string): Promise<ShopRow | null> {
  return tx.shop.findUnique({ where: { id: shopId }, select: shopView });
}

/** One statement, so that two people cannot both win. */
export async function changeShop(
  tx: Tx,
  shopId: string,
  version: number,
  data: Prisma.ShopUpdateInput,
): Promise<boolean> {
  const { count } = await tx.shop.updateMany({
    where: { id: shopId, version },
    data: { ...data, version: { increment: 1 } },
  });
  return count === 1;
}
