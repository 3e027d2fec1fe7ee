// Asking a colleague in: a link by mail that works once, for seven days.
import { ROLE_MEANING, type Role } from '@gusset/contracts/access';
import type { Tx } from '@gusset/database';
import { v7 as uuidv7 } from 'uuid';
import { record } from '../data/audit.ts';
import { once } from '../data/idempotency.ts';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound, ShopError } from '../errors.ts';
import { askForMail } from '../mail/mail-messages.ts';
import type { SignedIn } from '../trpc/context.ts';
import {
  detailOf,
  type InvitationDetail,
  type InvitationRow,
  openInvitations,
  presentedInvitation,
  revoke,
  useUp,
} from './invitation.queries.ts';
import { hashOfSecret, newSecret } from './secret.ts';

const VALID_DAYS = 7;
const DAY_MS = 24 * 60 * 60 * 1000;

export type InviteInput = {
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly personId: string | null;
};

export type InvitationView = {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly invitedBy: string;
  readonly expiresAt: string;
};

/** The link leaves by mail only; nobody in the shop sees it. */
export function invite(deps: Deps, actor: Actor, key: string, input: InviteInput): Promise<InvitationView> {
  const { doors, clock, env } = deps;
  return doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, { act: 'invite', input }, async () => {
      await requirePersonWithoutSignIn(tx, actor, input.personId);
      const shop = await tx.shop.findUnique({ where: { id: actor.shopId }, select: { name: true } });
      if (shop === null) throw notFound('shop');
      const { token, tokenHash } = newSecret();
      const id = uuidv7();
      const detail: InvitationDetail = { ...input, invitedBy: actor.name };
      const expiresAt = new Date(clock.now().getTime() + VALID_DAYS * DAY_MS);
      await tx.accessToken.create({
        data: {
          shopId: actor.shopId,
          id,
          tokenHash,
          purpose: 'invite',
          subjectId: input.personId ?? id,
          detail,
          createdBy: actor.userId,
          expiresAt,
        },
      });
      await askForMail(deps, tx, actor, {
        purpose: 'invite',
        subjectId: id,
        to: input.email,
        subject: `${actor.name} invites you to ${shop.name}`,
        text: invitationText({
          actor,
          input,
          shopName: shop.name,
          link: `${env.PUBLIC_URL}/invite/${token}`,
        }),
      });
      await record(tx, actor, { act: 'person.invited', subject: 'invitation', subjectId: id, after: input });
      return toView({ id, detail, expiresAt });
    }),
  );
}

function invitationText(options: {
  readonly actor: Actor;
  readonly input: InviteInput;
  readonly shopName: string;
  readonly link: string;
}): string {
  const { actor, input, shopName, link } = options;
  return [
    `Hello ${input.name},`,
    '',
    `${actor.name} would like you to work with ${shopName} in Gusset, as ${input.role}:`,
    `${ROLE_MEANING[input.role]}.`,
    '',
    'Open this link, sign in or make an account, and you are in:',
    link,
    '',
    `The link works once and for ${VALID_DAYS} days. If you did not expect it, leave it: nothing happens then.`,
  ].join('\n');
}

export function invitations({ doors, clock }: Deps, actor: Actor): Promise<InvitationView[]> {
  return doors.inShop(actor.shopId, async (tx) =>
    (await openInvitations(tx, actor, clock.now())).map((row) => toView({ ...row, detail: detailOf(row) })),
  );
}

/** The link ends at once. */
export function revokeInvitation({ doors, clock }: Deps, actor: Actor, id: string): Promise<void> {
  return doors.inShop(actor.shopId, async (tx) => {
    if (!(await revoke(tx, actor, id, clock.now()))) throw notFound('open invitation');
    await record(tx, actor, { act: 'invitation.revoked', subject: 'invitation', subjectId: id });
  });
}

export type InvitationPage = {
  readonly shopName: string;
  readonly name: string;
  readonly role: Role;
  readonly invitedBy: string;
};

/** What the invited person is shown before they accept. LINK_ENDED for a secret that opens nothing. */
export async function showInvitation(deps: Deps, token: string): Promise<InvitationPage> {
  const row = await invitationOf(deps, token);
  const { name, role, invitedBy } = detailOf(row);
  const shop = await deps.doors.inShop(row.shopId, (tx) =>
    tx.shop.findUnique({ where: { id: row.shopId }, select: { name: true } }),
  );
  if (shop === null) throw linkEnded();
  return { shopName: shop.name, name, role, invitedBy };
}

/** Makes the signed-in person a member and uses the secret up. */
export async function acceptInvitation(
  deps: Deps,
  person: SignedIn,
  token: string,
  requestId: string,
): Promise<{ shopId: string }> {
  const row = await invitationOf(deps, token);
  const { shopId } = row;
  const detail = detailOf(row);
  return deps.doors.inShop(shopId, async (tx) => {
    const where = { shopId_userId: { shopId, userId: person.userId } };
    const held = await tx.membership.findUnique({ where, select: { endedAt: true } });
    if (held !== null && held.endedAt === null) {
      throw new ShopError('NAME_TAKEN', 'You belong to this shop already. Nothing was changed.');
    }
    if (!(await useUp(tx, row, deps.clock.now()))) throw linkEnded();
    const personId = detail.personId ?? (await addPerson(tx, shopId, detail));
    const place = { role: detail.role, personId, endedAt: null };
    await tx.membership.upsert({
      where,
      create: { shopId, userId: person.userId, ...place },
      update: { ...place, version: { increment: 1 } },
    });
    const recorder = { shopId, userId: person.userId, name: person.name, requestId };
    await record(tx, recorder, {
      act: 'invitation.accepted',
      subject: 'invitation',
      subjectId: row.id,
      after: { role: detail.role, email: person.email },
    });
    return { shopId };
  });
}

async function addPerson(tx: Tx, shopId: string, { name, email }: InvitationDetail): Promise<string> {
  const { id } = await tx.person.create({
    data: { shopId, name, email, skills: ['any'] },
    select: { id: true },
  });
  return id;
}

async function requirePersonWithoutSignIn(tx: Tx, actor: Actor, personId: string | null): Promise<void> {
  if (personId === null) return;
  const person = await tx.person.findFirst({
    where: { shopId: actor.shopId, id: personId, archivedAt: null },
    select: { memberships: { where: { endedAt: null }, select: { id: true }, take: 1 } },
  });
  if (person === null) throw notAccepted('personId', 'Choose somebody on the shop’s list of people.');
  if (person.memberships.length > 0) throw notAccepted('personId', 'This person can sign in already.');
}

async function invitationOf({ doors, clock }: Deps, token: string): Promise<InvitationRow> {
  const tokenHash = hashOfSecret(token);
  const row = await doors.withSecret(tokenHash, (tx) => presentedInvitation(tx, tokenHash, clock.now()));
  if (row === null) throw linkEnded();
  return row;
}

function linkEnded(): ShopError {
  return new ShopError(
    'LINK_ENDED',
    'This invitation was used, taken back or has run out. Ask for a new one.',
  );
}

function toView(invitation: {
  readonly id: string;
  readonly detail: InvitationDetail;
  readonly expiresAt: Date;
}): InvitationView {
  const { id, detail, expiresAt } = invitation;
  const { name, email, role, invitedBy } = detail;
  return { id, name, email, role, invitedBy, expiresAt: expiresAt.toISOString() };
}
