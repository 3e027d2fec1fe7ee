import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import type { PartRow } from '../../../../../features/catalogue/part-calls.ts';
import { PartScreen } from '../../../../../features/catalogue/part-screen.tsx';
import { partKindOf } from '../../../../../shared/catalogue-kinds.ts';
import { readRecord } from '../../../../../shared/record/read-record.ts';

export const metadata: Metadata = { title: 'Part' };

export default async function PartPage({ params }: { params: Promise<{ kind: string; id: string }> }) {
  const kind = partKindOf((await params).kind);
  if (kind === null) notFound();
  const part = await readRecord<PartRow>(params, async (api, id) => api.part[kind].read.query({ id }));
  return <PartScreen kind={kind} part={part} />;
}
