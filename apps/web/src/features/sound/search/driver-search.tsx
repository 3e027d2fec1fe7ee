'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '../../../shared/controls/button.tsx';
import type { SearchDefaults } from './search-entry.ts';
import type { FoundDesign } from './search-words.ts';

const SearchDialog = dynamic(() => import('./search-dialog.tsx').then((module) => module.SearchDialog), {
  ssr: false,
});

export type DriverSearchProps = {
  readonly defaults: SearchDefaults;
  /** The design that the sheet is to go on with. Left out where the person may only look. */
  readonly onTake?: (design: FoundDesign) => void;
};

/** The way from sheet 03 into the catalogue: which drivers, how many, in which box. */
export function DriverSearch({ defaults, onTake }: DriverSearchProps) {
  const [isOpen, setOpen] = useState(false);
  const [wasOpened, setOpened] = useState(false);
  return (
    <>
      <Button
        onPress={() => {
          setOpened(true);
          setOpen(true);
        }}
      >
        Search the catalogue
      </Button>
      {/* Stays after it was closed, so that question and answer are still there when it is opened again. */}
      {wasOpened ? (
        <SearchDialog defaults={defaults} isOpen={isOpen} onClose={() => setOpen(false)} onTake={onTake} />
      ) : null}
    </>
  );
}
