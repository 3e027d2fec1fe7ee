'use client';

import { useState } from 'react';
import { Button } from '../controls/button.tsx';
import { shownError } from '../data/shop-error.ts';
import { useMessages } from '../overlays/messages.tsx';

export type ArchiveButtonProps<Saved> = {
  /** "R. Okafor" */
  readonly name: string;
  readonly isArchived: boolean;
  readonly archive: (archived: boolean) => Promise<Saved>;
  readonly onDone: (saved: Saved) => void;
};

/** Acts at once and offers the way back; nothing is deleted. */
export function ArchiveButton<Saved>({ name, isArchived, archive, onDone }: ArchiveButtonProps<Saved>) {
  const say = useMessages();
  const [isPending, setIsPending] = useState(false);
  const put = async (archived: boolean): Promise<void> => {
    setIsPending(true);
    try {
      const saved = await archive(archived);
      say(archived ? `${name} put in the archive.` : `${name} is back on the list.`, {
        undo: () => void put(!archived),
      });
      onDone(saved);
    } catch (failure) {
      say(shownError(failure).message, { tone: 'trouble' });
    } finally {
      setIsPending(false);
    }
  };
  return (
    <Button onPress={() => void put(!isArchived)} isPending={isPending}>
      {isArchived ? 'Take out of the archive' : 'Archive'}
    </Button>
  );
}
