import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { PartScreen } from '../../../../../features/catalogue/part-screen.tsx';
import { partKindOf } from '../../../../../shared/catalogue-kinds.ts';

export const metadata: Metadata = { title: 'New part' };

export default async function NewPartPage({ params }: { params: Promise<{ kind: string }> }) {
  const kind = partKindOf((await params).kind);
  if (kind === null) notFound();
  return <PartScreen kind={kind} part={null} />;
}
