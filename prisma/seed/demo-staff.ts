// The four people of the demo shop. Each calls the API as themselves, with the rights of their role, so that the record
// says who did what.
import { randomUUID } from 'node:crypto';
import type { Deps } from '@gusset/api/deps';
import { appRouter } from '@gusset/api/router';
import { actorFor } from '@gusset/api/shops/actor';
import type { Role } from '@gusset/contracts/access';
import type { PersonInput } from '@gusset/contracts/records';

export const DEMO_PASSWORD = 'lantern copper meadow violin';
const REQUEST_ID = 'demo';

export type StaffMember = {
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly phone: string;
  readonly skills: PersonInput['skills'];
  readonly hourlyCostMinor: number;
};

export const MIRA: StaffMember = {
  name: 'Mira Ilves',
  email: 'mira@quarry-road.example',
  role: 'owner',
  phone: '555 0101',
  skills: ['any', 'sales', 'elec', 'tune', 'lead'],
  hourlyCostMinor: 4_200,
};
export const DANIEL: StaffMember = {
  name: 'Daniel Osei',
  email: 'daniel@quarry-road.example',
  role: 'estimator',
  phone: '555 0102',
  skills: ['any', 'sales', 'fab', 'saw', 'router', 'lead'],
  hourlyCostMinor: 3_600,
};
export const TOMAS: StaffMember = {
  name: 'Tomas Reyl',
  email: 'tomas@quarry-road.example',
  role: 'technician',
  phone: '555 0103',
  skills: ['any', 'fab', 'saw', 'router', 'finish', 'elec'],
  hourlyCostMinor: 3_000,
};
export const INES: StaffMember = {
  name: 'Ines Calloway',
  email: 'ines@quarry-road.example',
  role: 'office',
  phone: '555 0104',
  skills: ['any', 'sales', 'trim'],
  hourlyCostMinor: 2_800,
};
export const COLLEAGUES = [DANIEL, TOMAS, INES] as const;
export const DEMO_EMAILS: readonly string[] = [MIRA, ...COLLEAGUES].map(({ email }) => email);

export type Caller = ReturnType<typeof appRouter.createCaller>;
export type SignedUp = { readonly userId: string; readonly name: string; readonly email: string };

export async function signUp(deps: Deps, { name, email }: StaffMember): Promise<SignedUp> {
  const { user } = await deps.auth.api.signUpEmail({ body: { name, email, password: DEMO_PASSWORD } });
  return { userId: user.id, name, email };
}

/** The API as this person calls it, without HTTP between. */
export function callerFor(deps: Deps, person: SignedUp, chosenShopId: string | null): Caller {
  const signedIn = { ...person, sessionId: randomUUID() };
  let place: ReturnType<typeof actorFor> | null = null; // nobody's role changes while the demo is made
  return appRouter.createCaller({
    deps,
    requestId: REQUEST_ID,
    address: '127.0.0.1',
    signedIn,
    chosenShopId,
    quoteToken: null,
    actor() {
      place ??= actorFor(deps, signedIn, chosenShopId, REQUEST_ID);
      return place;
    },
    setCookie: () => undefined,
  });
}

/** The customer's page of one quote: nobody is signed in, the secret of the link is the right. */
export function customerCaller(deps: Deps, quoteToken: string): Caller {
  return appRouter.createCaller({
    deps,
    requestId: REQUEST_ID,
    address: '127.0.0.1',
    signedIn: null,
    chosenShopId: null,
    quoteToken,
    actor: async () => null,
    setCookie: () => undefined,
  });
}
