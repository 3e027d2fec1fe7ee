'use client';

import { useEffect } from 'react';

/** Tells the shop once that the page was looked at; opening the link alone says nothing, scanners do that too. */
export function SeenBeacon() {
  useEffect(() => {
    // Whether it arrives changes nothing for the customer, so a failure is left alone.
    void fetch('/api/trpc/customerQuote.seen', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{}',
      keepalive: true,
    }).catch(() => undefined);
  }, []);
  return null;
}
