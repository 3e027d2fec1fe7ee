'use client';

import { paths } from '../../shared/paths.ts';
import { SectionLinks } from '../../shared/record/section-links.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { SHOP_SECTIONS } from './section-list.ts';

/** All pages of the shop's own settings. */
export function ShopSections({ here }: { readonly here: string }) {
  const seesMoney = useMay('money.read');
  const seesRecord = useMay('record.read');
  return (
    <SectionLinks
      label="Shop settings"
      here={here}
      sections={SHOP_SECTIONS.filter(
        ({ needs }) => needs === null || (needs === 'money.read' ? seesMoney : seesRecord),
      ).map(({ id, label }) => ({ id, label, href: paths.shop(id) }))}
    />
  );
}
