// What a call starts with: who is signed in (if anybody), which shop they chose, where they call from.
import type { IncomingHttpHeaders } from 'node:http';
import { fromNodeHeaders } from 'better-auth/node';
import type { Actor, Deps } from '../deps.ts';
import { QUOTE_COOKIE } from '../quotes/quote-link.ts';
import { actorFor } from '../shops/actor.ts';

export const SHOP_COOKIE = '__Host-gusset-shop';

export type SignedIn = {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly sessionId: string;
};

export type Context = {
  readonly deps: Deps;
  readonly requestId: string;
  readonly address: string;
  readonly signedIn: SignedIn | null;
  readonly chosenShopId: string | null;
  /** The secret of a quote's link, once its page was opened. */
  readonly quoteToken: string | null;
  /** The person in the chosen shop (or the only one); null = belongs to none. Looked up once a request. */
  actor(): Promise<Actor | null>;
  setCookie(name: string, value: string): void;
};

export type CallFacts = {
  readonly headers: IncomingHttpHeaders;
  readonly cookies: Readonly<Record<string, string | undefined>>;
  readonly requestId: string;
  readonly address: string;
  readonly setCookie: Context['setCookie'];
};

export async function createContext(deps: Deps, call: CallFacts): Promise<Context> {
  const session = await deps.auth.api.getSession({ headers: fromNodeHeaders(call.headers) });
  const signedIn =
    session === null
      ? null
      : {
          userId: session.user.id,
          name: session.user.name,
          email: session.user.email,
          sessionId: session.session.id,
        };
  const chosenShopId = call.cookies[SHOP_COOKIE] ?? null;
  let actor: Promise<Actor | null> | null = null;
  return {
    deps,
    requestId: call.requestId,
    address: call.address,
    signedIn,
    chosenShopId,
    quoteToken: call.cookies[QUOTE_COOKIE] ?? null,
    actor() {
      actor ??=
        signedIn === null ? Promise.resolve(null) : actorFor(deps, signedIn, chosenShopId, call.requestId);
      return actor;
    },
    setCookie: call.setCookie,
  };
}
