// Server components only: the record that an address names, or "no such sheet".

import { idSchema } from '@gusset/contracts/common';
import { notFound } from 'next/navigation';
import { serverApi } from '../data/server-api.ts';
import { shownError } from '../data/shop-error.ts';

type Api = Awaited<ReturnType<typeof serverApi>>;

export async function readRecord<Row>(
  params: Promise<{ readonly id: string }>,
  read: (api: Api, id: string) => Promise<Row>,
): Promise<Row> {
  const id = idSchema.safeParse((await params).id);
  if (!id.success) notFound();
  try {
    return await read(await serverApi(), id.data);
  } catch (error) {
    const { code } = shownError(error);
    if (code === 'NOT_FOUND' || code === 'NOT_ALLOWED') notFound();
    throw error;
  }
}
