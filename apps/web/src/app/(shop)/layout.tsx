import { cookies } from 'next/headers';
import type { ReactNode } from 'react';
import { readWho, shopFactsOf } from '../../shared/data/server-session.ts';
import { readDisplay } from '../../shared/shell/display.ts';
import { SignedInFrame } from '../../shared/shell/signed-in-frame.tsx';

export default async function ShopLayout({ children }: { children: ReactNode }) {
  const [who, jar] = await Promise.all([readWho(), cookies()]);
  const { userId, name, role } = who.me;
  return (
    <SignedInFrame
      display={readDisplay((cookieName) => jar.get(cookieName)?.value)}
      shop={shopFactsOf(who)}
      person={{ userId, name, role, shopId: who.shop.id }}
    >
      {children}
    </SignedInFrame>
  );
}
