'use client';

import { QueryClientProvider } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { createApiClient, TRPCProvider } from './api-client.ts';
import { createQueryClient } from './query-client.ts';

/** Server state for everything under it. One client a browser tab; on the server one a request. */
export function DataProvider({ children }: { readonly children: ReactNode }) {
  const [queryClient] = useState(createQueryClient);
  const [apiClient] = useState(createApiClient);
  return (
    <QueryClientProvider client={queryClient}>
      <TRPCProvider trpcClient={apiClient} queryClient={queryClient}>
        {children}
      </TRPCProvider>
    </QueryClientProvider>
  );
}
