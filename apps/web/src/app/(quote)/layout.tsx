import type { Metadata } from 'next';
import type { ReactNode } from 'react';

/** For one customer's eyes: found by no search, and the address is told to nobody. */
export const metadata: Metadata = {
  robots: { index: false, follow: false },
  referrer: 'no-referrer',
};

export default function QuoteLayout({ children }: { children: ReactNode }) {
  return children;
}
