// Which pages are our own: the address that people are told, and the one that the front door was asked by (a phone in
// the shop may use the machine's number instead of its name). A page elsewhere cannot choose either.

type Headers = Readonly<Record<string, string | string[] | undefined>>;

/** Origins whose pages may change something, for one request. */
export function ownOrigins(headers: Headers, publicUrl: string, behindFrontDoor: boolean): readonly string[] {
  const told = new URL(publicUrl).origin;
  const host = behindFrontDoor ? headers['x-forwarded-host'] : headers.host;
  const protocol = behindFrontDoor ? headers['x-forwarded-proto'] : 'http';
  if (typeof host !== 'string' || (protocol !== 'http' && protocol !== 'https')) return [told];
  const asked = originOf(`${protocol}://${host}`);
  return asked === null || asked === told ? [told] : [told, asked];
}

/** Changes are taken from our own origins only; tools without a browser send neither header. */
export function comesFromOwnPage(headers: Headers, origins: readonly string[]): boolean {
  const { origin } = headers;
  if (typeof origin === 'string') return origins.includes(origin);
  const site = headers['sec-fetch-site'];
  return site === undefined || site === 'same-origin' || site === 'none';
}

function originOf(url: string): string | null {
  return URL.canParse(url) ? new URL(url).origin : null;
}
