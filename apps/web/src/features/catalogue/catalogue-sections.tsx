'use client';

import { PART_KINDS } from '@gusset/contracts/records';
import { capital, KIND_WORDS, kindSlug } from '../../shared/catalogue-kinds.ts';
import { paths } from '../../shared/paths.ts';
import { SectionLinks } from '../../shared/record/section-links.tsx';
import { useMay } from '../../shared/shell/person.tsx';

/** All kinds of part, and who sends them. */
export function CatalogueSections({ here }: { readonly here: string }) {
  const seesSuppliers = useMay('supplier.read');
  return (
    <SectionLinks
      label="Kinds of part"
      here={here}
      sections={[
        ...PART_KINDS.map((kind) => ({
          id: kind,
          label: capital(KIND_WORDS[kind].many),
          href: paths.catalogue(kindSlug(kind)),
        })),
        ...(seesSuppliers ? [{ id: 'suppliers', label: 'Suppliers', href: paths.suppliers() }] : []),
      ]}
    />
  );
}
