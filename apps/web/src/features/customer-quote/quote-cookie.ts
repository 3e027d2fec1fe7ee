// The cookie that holds the secret of one quote after the address was cleaned of it.

/** `__Host-`: set over HTTPS (or localhost), for this host and no other. */
export const QUOTE_COOKIE = '__Host-gusset-quote';

/** As long as the longest link lives; the server decides whether it still opens. */
const KEPT_SECONDS = 180 * 24 * 60 * 60;

export function quoteCookie(name: string, token: string): string {
  return `${name}=${token}; Path=/; Max-Age=${KEPT_SECONDS}; Secure; HttpOnly; SameSite=Lax`;
}
