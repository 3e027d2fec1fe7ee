'use client';

import { useRouter } from 'next/navigation';
import type { ReactNode } from 'react';
import { RouterProvider } from 'react-aria-components';
import { MessagesProvider } from '../overlays/messages.tsx';
import { AppNav, type AppNavProps } from './app-nav.tsx';
import type { Display } from './display.ts';
import { DisplayProvider } from './display-provider.tsx';
import { OfflineNotice } from './online.tsx';
import type { ShopFacts } from './shop-facts.ts';
import { ShortcutProvider } from './shortcuts.tsx';

export type AppFrameProps = Omit<AppNavProps, 'shopName'> & {
  readonly display: Display;
  readonly shop: ShopFacts;
  readonly unsent?: number;
  readonly children: ReactNode;
};

/** Everything round a signed-in page: strip, offline notice, messages, keys. */
export function AppFrame({ display, shop, unsent = 0, children, ...nav }: AppFrameProps) {
  const router = useRouter();
  return (
    <RouterProvider navigate={(href) => router.push(href)}>
      <DisplayProvider initial={display} shop={shop}>
        <ShortcutProvider>
          <MessagesProvider>
            <a className="skip-link" href="#main">
              Skip to the sheet
            </a>
            <AppNav shopName={shop.name} {...nav} />
            <OfflineNotice unsent={unsent} />
            {children}
          </MessagesProvider>
        </ShortcutProvider>
      </DisplayProvider>
    </RouterProvider>
  );
}
