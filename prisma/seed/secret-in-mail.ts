import type { Deps } from '@gusset/api/deps';

/** The secret of the newest link of this kind (`…/invite/<secret>`) that was written to an address. */
export async function secretInMail(
  { doors }: Deps,
  { shopId, to, path }: { readonly shopId: string; readonly to: string; readonly path: string },
): Promise<string> {
  const mail = await doors.inShop(shopId, (tx) =>
    tx.mailMessage.findFirst({
      where: { shopId, toAddress: to, text: { contains: `/${path}/` } },
      select: { text: true },
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    }),
  );
  const secret = mail?.text.match(new RegExp(`/${path}/([\\w-]+)`))?.[1];
  if (secret === undefined) throw new Error(`the demo found no ${path} link in a mail to ${to}`);
  return secret;
}
