// Founding, choosing and setting up a shop.
import { may, PERMISSIONS, type Permission } from '@gusset/contracts/access';
import {
  BAY_KINDS,
  defaultShopSettings,
  type FoundShopInput,
  type ShopSettings,
  SKILLS,
  shopSettingsSchema,
} from '@gusset/contracts/shop';
import { v7 as uuidv7 } from 'uuid';
import { record } from '../data/audit.ts';
import { asRequiredJson } from '../data/json.ts';
import { conflictError } from '../data/versioned.ts';
import type { Actor, Deps } from '../deps.ts';
import { notFound } from '../errors.ts';
import type { SignedIn } from '../trpc/context.ts';
import { membershipsOf } from './membership.queries.ts';
import { changeShop, findShop, type ShopRow } from './shop.queries.ts';

export type ShopView = Omit<ShopRow, 'settings'> & { readonly settings: ShopSettings };

/** The shops a person belongs to, oldest first. */
export async function shopsOf({ doors }: Deps, person: SignedIn) {
  const memberships = await doors.asPerson(person.userId, (tx) => membershipsOf(tx, person.userId));
  return memberships.map((membership) => ({
    shopId: membership.shopId,
    name: membership.shop.name,
    role: membership.role,
  }));
}

/** A new shop with its founder as owner. */
export async function foundShop(
  { doors }: Deps,
  person: SignedIn,
  input: FoundShopInput,
  requestId: string,
): Promise<{ shopId: string }> {
  const shopId = uuidv7();
  const settings = defaultShopSettings(input.lengthUnit);
  await doors.inShop(shopId, async (tx) => {
    await tx.shop.create({
      data: {
        id: shopId,
        name: input.name,
        timeZone: input.timeZone,
        currency: input.currency,
        locale: input.locale,
        settings: asRequiredJson(settings),
      },
    });
    const owner = await tx.person.create({
      data: { shopId, name: input.ownerName, email: person.email, skills: [...SKILLS] },
      select: { id: true },
    });
    await tx.membership.create({
      data: { shopId, userId: person.userId, role: 'owner', personId: owner.id },
    });
    // One person with every skill and one bay for all work: the first job can be planned before anybody sets up more.
    await tx.bay.create({ data: { shopId, name: 'Bay 1', kinds: [...BAY_KINDS], sort: 1 } });
    await record(
      tx,
      { shopId, userId: person.userId, name: person.name, requestId },
      { act: 'shop.founded', subject: 'shop', subjectId: shopId, after: { name: input.name } },
    );
  });
  return { shopId };
}

/** The current shop, the person's place in it and what they may do. */
export async function currentShop({ doors }: Deps, actor: Actor) {
  const { shop, membership } = await doors.inShop(actor.shopId, async (tx) => ({
    shop: await findShop(tx, actor.shopId),
    membership: await tx.membership.findUnique({
      where: { shopId_userId: { shopId: actor.shopId, userId: actor.userId } },
      select: { lengthUnit: true },
    }),
  }));
  if (shop === null) throw notFound('shop');
  const permissions = Object.keys(PERMISSIONS).filter(
    (permission): permission is Permission => may(actor.role, permission as Permission), // the keys of the table itself
  );
  return {
    shop: withoutSecrets(toShopView(shop), actor),
    me: { userId: actor.userId, name: actor.name, role: actor.role, personId: actor.personId },
    lengthUnit:
      membership?.lengthUnit === 'in' || membership?.lengthUnit === 'mm' ? membership.lengthUnit : null,
    permissions,
  };
}

/** Own units where they differ from the shop's; null goes back to the shop's. */
export async function chooseOwnUnits(
  { doors }: Deps,
  actor: Actor,
  lengthUnit: 'mm' | 'in' | null,
): Promise<void> {
  await doors.inShop(actor.shopId, (tx) =>
    tx.membership.update({
      where: { shopId_userId: { shopId: actor.shopId, userId: actor.userId } },
      data: { lengthUnit },
    }),
  );
}

export type ChangeShopInput = {
  readonly version: number;
  readonly name: string;
  readonly timeZone: string;
  readonly currency: string;
  readonly locale: string;
  readonly settings: ShopSettings;
};

/** CHANGED_MEANWHILE with both values when someone else saved first. */
export async function changeShopSettings(
  { doors }: Deps,
  actor: Actor,
  input: ChangeShopInput,
): Promise<ShopView> {
  const { version, settings, ...names } = input;
  return doors.inShop(actor.shopId, async (tx) => {
    const before = await findShop(tx, actor.shopId);
    if (before === null) throw notFound('shop');
    if (!(await changeShop(tx, actor.shopId, version, { ...names, settings: asRequiredJson(settings) }))) {
      throw await conflictError(tx, actor, {
        subject: 'shop',
        subjectId: actor.shopId,
        currentVersion: before.version,
        yours: { ...names, ...settings },
        theirs: { ...before, ...toShopView(before).settings },
      });
    }
    const after = await findShop(tx, actor.shopId);
    if (after === null) throw notFound('shop');
    await record(tx, actor, { act: 'shop.changed', subject: 'shop', subjectId: actor.shopId, before, after });
    return toShopView(after);
  });
}

/** The one place where a row becomes a shop; settings that an older version stored are completed with defaults. */
export function toShopView(row: ShopRow): ShopView {
  const stored = typeof row.settings === 'object' && row.settings !== null ? row.settings : {};
  const settings = shopSettingsSchema.parse({ ...defaultShopSettings('mm'), ...stored });
  return { ...row, settings };
}

/** Who sees no money sees no rates. */
function withoutSecrets(shop: ShopView, actor: Actor): ShopView {
  if (may(actor.role, 'money.read')) return shop;
  return {
    ...shop,
    settings: {
      ...shop.settings,
      labourRateMinor: 0,
      labourRateBySkillMinor: {},
      materialMarkupBasisPoints: 0,
      partMarkupBasisPoints: 0,
      marginFloorBasisPoints: 0,
      suppliesCapMinor: 0,
      customerPartFeeMinor: 0,
    },
  };
}
