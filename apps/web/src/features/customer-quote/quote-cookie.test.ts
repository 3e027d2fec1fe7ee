import { describe, expect, it } from 'vitest';
import { QUOTE_COOKIE, quoteCookie } from './quote-cookie.ts';
import { refusalPage } from './refusal-page.ts';

describe('the way in', () => {
  it('keeps the secret from scripts, other hosts and plain HTTP', () => {
    const cookie = quoteCookie(QUOTE_COOKIE, 'gqt_x');
    expect(cookie).toMatch(/^__Host-gusset-quote=gqt_x; Path=\/;/);
    expect(cookie).not.toContain('Domain');
    for (const part of ['Secure', 'HttpOnly', 'SameSite=Lax']) expect(cookie).toContain(part);
  });

  it('says in words what to do where a link opens nothing', () => {
    expect(refusalPage(404)).toContain('Ask the shop');
    expect(refusalPage(429)).toContain('ten minutes');
    expect(refusalPage(503)).toContain('again');
  });
});
