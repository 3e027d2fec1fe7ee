import type { Metadata } from 'next';
import { cookies } from 'next/headers';
import { SAMPLE_SHEETS } from '../../features/style/sample-shop.ts';
import { SheetSample } from '../../features/style/sheet-sample.tsx';
import { StyleFrame } from '../../features/style/style-frame.tsx';
import { SheetIndex } from '../../shared/sheet/sheet-index.tsx';
import { readDisplay } from '../../shared/shell/display.ts';

export const metadata: Metadata = { title: 'Style: a sheet', robots: { index: false } };

export default async function StyleSheetPage() {
  const jar = await cookies();
  return (
    <StyleFrame
      part="sheet"
      display={readDisplay((name) => jar.get(name)?.value)}
      index={
        <SheetIndex title="2417" subtitle="Brisk hatch · R. Okafor" sheets={SAMPLE_SHEETS} current="box" />
      }
    >
      <SheetSample />
    </StyleFrame>
  );
}
