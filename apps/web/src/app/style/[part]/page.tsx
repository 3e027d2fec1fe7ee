import type { Metadata } from 'next';
import { cookies } from 'next/headers';
import { notFound } from 'next/navigation';
import { FieldsSample } from '../../../features/style/fields-sample.tsx';
import { ListsSample } from '../../../features/style/lists-sample.tsx';
import { MarksSample } from '../../../features/style/marks-sample.tsx';
import { StyleFrame } from '../../../features/style/style-frame.tsx';
import { readDisplay } from '../../../shared/shell/display.ts';

export const metadata: Metadata = { title: 'Style page', robots: { index: false } };

const PARTS = { fields: <FieldsSample />, lists: <ListsSample />, marks: <MarksSample /> } as const;

const isPart = (name: string): name is keyof typeof PARTS => Object.hasOwn(PARTS, name);

export default async function StylePartPage({ params }: { params: Promise<{ part: string }> }) {
  const [{ part }, jar] = await Promise.all([params, cookies()]);
  if (!isPart(part)) notFound();
  return (
    <StyleFrame part={part} display={readDisplay((name) => jar.get(name)?.value)}>
      {PARTS[part]}
    </StyleFrame>
  );
}
