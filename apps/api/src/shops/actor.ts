import { ROLES, type Role } from '@gusset/contracts/access';
import type { Actor, Deps } from '../deps.ts';
import type { SignedIn } from '../trpc/context.ts';
import { membershipsOf } from './membership.queries.ts';

/** The person's place in the shop they chose, or in their first shop; null where they belong to none. */
export async function actorFor(
  { doors }: Deps,
  person: SignedIn,
  chosenShopId: string | null,
  requestId: string,
): Promise<Actor | null> {
  const memberships = await doors.asPerson(person.userId, (tx) => membershipsOf(tx, person.userId));
  const membership = memberships.find(({ shopId }) => shopId === chosenShopId) ?? memberships[0];
  if (membership === undefined) return null;
  return {
    shopId: membership.shopId,
    userId: person.userId,
    name: person.name,
    role: toRole(membership.role),
    personId: membership.personId,
    requestId,
  };
}

/** A role that the program does not know gets the least rights. */
export function toRole(text: string): Role {
  return ROLES.find((role) => role === text) ?? 'technician';
}
