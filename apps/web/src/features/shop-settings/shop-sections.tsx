'use client';

import { paths } from '../../shared/paths.ts';
import { SectionLinks } from '../../shared/record/section-links.tsx';
import { usePerson } from '../../shared/shell/person.tsx';
import { maySeeSection, SHOP_SECTIONS } from './section-list.ts';

/** All pages of the shop's own settings. */
export function ShopSections({ here }: { readonly here: string }) {
  const { role } = usePerson();
  return (
    <SectionLinks
      label="Shop settings"
      here={here}
      sections={SHOP_SECTIONS.filter(({ id }) => maySeeSection(role, id)).map(({ id, label }) => ({
        id,
        label,
        href: paths.shop(id),
      }))}
    />
  );
}
