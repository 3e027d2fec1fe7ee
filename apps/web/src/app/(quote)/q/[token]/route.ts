import { QUOTE_COOKIE, quoteCookie } from '../../../../features/customer-quote/quote-cookie.ts';
import { refusalPage } from '../../../../features/customer-quote/refusal-page.ts';
import { serverApi } from '../../../../shared/data/server-api.ts';
import { shownError } from '../../../../shared/data/shop-error.ts';
import { paths } from '../../../../shared/paths.ts';

const QUIET = { 'cache-control': 'no-store', 'referrer-policy': 'no-referrer', 'x-robots-tag': 'noindex' };

/**
 * Takes the secret out of the address: into a cookie, and on to a clean page, so that it stays out of histories, logs
 * and referrers. Asks and changes nothing, since mail scanners open links too.
 */
export async function GET(_request: Request, { params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  const status = await statusOf(token);
  if (status !== 303) {
    return new Response(refusalPage(status), {
      status,
      headers: { ...QUIET, 'content-type': 'text/html; charset=utf-8' },
    });
  }
  return new Response(null, {
    status,
    headers: {
      ...QUIET,
      location: paths.customerQuote(),
      'set-cookie': quoteCookie(QUOTE_COOKIE, token),
    },
  });
}

async function statusOf(token: string): Promise<303 | 404 | 429 | 503> {
  try {
    const { known } = await (await serverApi()).customerQuote.known.query({ token });
    return known ? 303 : 404;
  } catch (error) {
    const { code } = shownError(error);
    if (code === 'TOO_MANY') return 429;
    return code === 'NO_ANSWER' || code === 'UNEXPECTED' || code === 'BUSY' ? 503 : 404;
  }
}
