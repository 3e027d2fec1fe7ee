'use client';

import { authClient } from '../../shared/data/auth-client.ts';
import { DataProvider } from '../../shared/data/data-provider.tsx';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { AccountForm } from './account-form.tsx';
import { FoundShopForm } from './found-shop-form.tsx';

/** Two steps: who you are, then the shop. Someone who is signed in already starts with the shop. */
export function SetUp() {
  const { data, isPending, refetch } = authClient.useSession();
  if (isPending) return <Skeleton lines={4} what="Looking whether you are signed in" />;
  return data === null ? (
    <AccountForm title="Make your account" verb="Go on to the shop" onDone={() => refetch()} />
  ) : (
    <DataProvider>
      <FoundShopForm ownerName={data.user.name} />
    </DataProvider>
  );
}
