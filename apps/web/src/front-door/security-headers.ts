// The headers every page carries. The nonce travels to Next in the request's own copy of the policy:
// Next reads it there and puts it on each script and style it writes.

export type PagePolicy = {
  readonly nonce: string;
  /** Over HTTPS the browser is told to fetch everything over HTTPS too. */
  readonly secure: boolean;
};

/** Content-Security-Policy for one page. Inline scripts run only with this page's nonce. */
export function contentSecurityPolicy({ nonce, secure }: PagePolicy): string {
  const directives = [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic' 'wasm-unsafe-eval'`,
    `style-src 'self' 'nonce-${nonce}'`,
    // Positions of virtual rows and popovers are style attributes; they can't run code.
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self' blob:",
    "manifest-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ];
  return [...directives, ...(secure ? ['upgrade-insecure-requests'] : [])].join('; ');
}

/** Headers that don't change from page to page. */
export const STANDING_HEADERS: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'strict-origin-when-cross-origin',
  'permissions-policy': 'camera=(self), microphone=(self), geolocation=(), payment=(), usb=()',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

/** Two years, for a certificate that browsers trust; never for a local one, which may be thrown away. */
export const STRICT_TRANSPORT = 'max-age=63072000; includeSubDomains';
