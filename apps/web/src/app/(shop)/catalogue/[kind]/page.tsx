import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { PartListScreen } from '../../../../features/catalogue/part-list-screen.tsx';
import { partKindOf } from '../../../../shared/catalogue-kinds.ts';

export const metadata: Metadata = { title: 'Parts' };

export default async function PartsPage({ params }: { params: Promise<{ kind: string }> }) {
  const kind = partKindOf((await params).kind);
  if (kind === null) notFound();
  return <PartListScreen key={kind} kind={kind} />;
}
