import { randomUUID } from 'node:crypto';
import type { Deps } from '@gusset/api/deps';
import { foundShop } from '@gusset/api/shops/shop.service';

export type DemoShop = { readonly shopId: string; readonly email: string; readonly password: string };

const DEMO_EMAIL = 'mira@quarry-road.example';
const DEMO_PASSWORD = 'lantern copper meadow violin';

/** Founds Quarry Road Sound with its owner. Runs through the same services as the screens do. */
export async function seedDemoShop(deps: Deps): Promise<DemoShop> {
  const signedUp = await deps.auth.api.signUpEmail({
    body: { name: 'Mira Ilves', email: DEMO_EMAIL, password: DEMO_PASSWORD },
  });
  const person = { userId: signedUp.user.id, name: 'Mira Ilves', email: DEMO_EMAIL, sessionId: randomUUID() };
  const { shopId } = await foundShop(
    deps,
    person,
    {
      name: 'Quarry Road Sound',
      ownerName: 'Mira Ilves',
      timeZone: 'Europe/Berlin',
      currency: 'EUR',
      locale: 'en-GB',
      lengthUnit: 'mm',
    },
    'demo',
  );
  return { shopId, email: DEMO_EMAIL, password: DEMO_PASSWORD };
}
