// Server components only: who is asking, or where they have to go first.

import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { paths } from '../paths.ts';
import { LENGTH_UNITS } from '../shell/display.ts';
import type { ShopFacts } from '../shell/shop-facts.ts';
import type { ApiOutputs } from './api-types.ts';
import { serverApi } from './server-api.ts';
import { shownError } from './shop-error.ts';

export type Who = ApiOutputs['shop']['current'];

/** The person and shop of this request. Sends to sign-in or to the first set-up where there is none. */
export async function readWho(): Promise<Who> {
  const api = await serverApi();
  try {
    return await api.shop.current.query();
  } catch (error) {
    const { code } = shownError(error);
    if (code === 'SIGN_IN_FIRST') redirect(paths.signIn((await headers()).get('x-gusset-path') ?? undefined));
    if (code === 'NOT_ALLOWED') redirect(paths.setUp());
    throw error;
  }
}

/** What decides how things are shown, from the shop's settings and the person's own unit. */
export function shopFactsOf({ shop, lengthUnit }: Who): ShopFacts {
  return {
    name: shop.name,
    locale: shop.locale,
    currency: shop.currency,
    lengthUnit: LENGTH_UNITS.find((unit) => unit === lengthUnit) ?? shop.settings.lengthUnit,
    inchDenominator: shop.settings.inchDenominator,
    timeZone: shop.timeZone,
  };
}
