import type { Metadata, Viewport } from 'next';
import { cookies, headers } from 'next/headers';
import type { ReactNode } from 'react';
import '@fontsource-variable/archivo/wdth.css';
import '@fontsource/ibm-plex-mono/400.css';
import '@fontsource/ibm-plex-mono/500.css';
import '../shared/style/tokens.css';
import '../shared/style/base.css';
import '../shared/style/print.css';
import { readDisplay } from '../shared/shell/display.ts';

export const metadata: Metadata = {
  title: { default: 'Gusset', template: '%s · Gusset' },
  description: 'Job sheets for a custom mobile-audio shop.',
  formatDetection: { telephone: false, date: false, address: false, email: false },
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  viewportFit: 'cover',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#e3e8e6' },
    { media: '(prefers-color-scheme: dark)', color: '#12171a' },
  ],
};

/** Reads cookies and headers, so every page is drawn per request: its scripts carry that request's nonce. */
export default async function RootLayout({ children }: { children: ReactNode }) {
  const [jar, incoming] = await Promise.all([cookies(), headers()]);
  const display = readDisplay((name) => jar.get(name)?.value);
  const nonce = incoming.get('x-nonce');
  return (
    <html
      lang="en"
      data-theme={display.theme === 'device' ? undefined : display.theme}
      data-bench={display.bench ? 'on' : undefined}
    >
      <head>{nonce ? <meta property="csp-nonce" nonce={nonce} content={nonce} /> : null}</head>
      <body>{children}</body>
    </html>
  );
}
