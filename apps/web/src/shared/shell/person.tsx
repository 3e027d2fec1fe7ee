'use client';

import { may, type Permission, type Role } from '@gusset/contracts/access';
import { createContext, type ReactNode, use } from 'react';

/** Who is signed in, in which shop, as what. */
export type Person = {
  readonly userId: string;
  readonly shopId: string;
  readonly name: string;
  readonly role: Role;
};

const PersonContext = createContext<Person | null>(null);

export function PersonProvider({
  person,
  children,
}: {
  readonly person: Person;
  readonly children: ReactNode;
}) {
  return <PersonContext value={person}>{children}</PersonContext>;
}

export function usePerson(): Person {
  const person = use(PersonContext);
  if (!person) throw new Error('usePerson needs a PersonProvider above it.');
  return person;
}

/** Whether this person's role has a permission. The API asks again; this only hides what would be refused. */
export function useMay(permission: Permission): boolean {
  return may(usePerson().role, permission);
}
