'use client';

import { useMay } from '../../../shared/shell/person.tsx';
import type { SoundSheet } from '../use-sound-sheet.ts';
import { DriverSearch } from './driver-search.tsx';
import { searchDefaults, takenDesign } from './sheet-design.ts';

export type CatalogueSearchProps = { readonly sheet: SoundSheet };

/** The search with what sheet 03 knows; a design that is taken fills the sheet's fields. */
export function CatalogueSearch({ sheet }: CatalogueSearchProps) {
  const { input, data, changeNow, mayEdit } = sheet;
  const maySearch = useMay('catalogue.read');
  if (!maySearch) return null;
  return (
    <DriverSearch
      defaults={searchDefaults(input, data.facts)}
      {...(mayEdit ? { onTake: (design) => changeNow(takenDesign(design, input)) } : {})}
    />
  );
}
