'use client';

import type { ReactNode } from 'react';
import { DataProvider } from '../data/data-provider.tsx';
import { useLiveUpdates } from '../data/live-updates.ts';
import { useUnsent } from '../data/use-unsent.ts';
import { paths } from '../paths.ts';
import { AppFrame } from './app-frame.tsx';
import type { Display } from './display.ts';
import { type Person, PersonProvider } from './person.tsx';
import type { ShopFacts } from './shop-facts.ts';
import { useRecordSearch } from './use-record-search.ts';

export type SignedInFrameProps = {
  readonly display: Display;
  readonly shop: ShopFacts;
  readonly person: Person;
  readonly children: ReactNode;
};

/** The frame of every page behind the sign-in. */
export function SignedInFrame({ person, ...rest }: SignedInFrameProps) {
  return (
    <PersonProvider person={person}>
      <DataProvider>
        <FrameWithData person={person} {...rest} />
      </DataProvider>
    </PersonProvider>
  );
}

function FrameWithData({ display, shop, person, children }: SignedInFrameProps) {
  useLiveUpdates();
  const unsent = useUnsent(person);
  const search = useRecordSearch();
  const signOut = async (): Promise<void> => {
    const { authClient } = await import('../data/auth-client.ts');
    await authClient.signOut();
    // A full load: nothing of this person stays in the memory of a shared tablet.
    window.location.assign(paths.signIn());
  };
  return (
    <AppFrame
      display={display}
      shop={shop}
      personName={person.name}
      search={search}
      unsent={unsent}
      onSignOut={() => void signOut()}
    >
      {children}
    </AppFrame>
  );
}
