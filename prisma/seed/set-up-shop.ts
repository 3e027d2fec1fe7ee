// Shop settings, people with their sign-ins, and bays.
import type { Deps } from '@gusset/api/deps';
import type { ShopSettings } from '@gusset/contracts/shop';
import type { DemoCalendar } from './demo-calendar.ts';
import {
  type Caller,
  COLLEAGUES,
  callerFor,
  INES,
  MIRA,
  type StaffMember,
  signUp,
  TOMAS,
} from './demo-staff.ts';
import { formKey } from './form-key.ts';
import { secretInMail } from './secret-in-mail.ts';

export type DemoStaff = {
  readonly shopId: string;
  readonly mira: Caller;
  readonly daniel: Caller;
  readonly tomas: Caller;
  readonly ines: Caller;
  /** Person ids by name. */
  readonly personIds: ReadonlyMap<string, string>;
};

export async function setUpShop(deps: Deps, calendar: DemoCalendar): Promise<DemoStaff> {
  const founder = await signUp(deps, MIRA);
  const { shopId } = await callerFor(deps, founder, null).shop.found({
    name: 'Quarry Road Sound',
    ownerName: MIRA.name,
    timeZone: calendar.zone,
    currency: 'EUR',
    locale: 'en-GB',
    lengthUnit: 'mm',
  });
  const mira = callerFor(deps, founder, shopId);
  await writeSettings(mira, calendar);
  const personIds = new Map([[MIRA.name, await completeOwner(mira)]]);
  const callers = new Map<string, Caller>();
  for (const colleague of COLLEAGUES) {
    const personId = await hire(mira, colleague);
    personIds.set(colleague.name, personId);
    callers.set(colleague.role, await giveSignIn({ deps, mira, shopId, personId, colleague }));
  }
  await makeBays(mira);
  const callerOf = (role: string) => {
    const caller = callers.get(role);
    if (caller === undefined) throw new Error(`the demo has no ${role}`);
    return caller;
  };
  return {
    shopId,
    mira,
    daniel: callerOf('estimator'),
    tomas: callerOf('technician'),
    ines: callerOf('office'),
    personIds,
  };
}

async function writeSettings(mira: Caller, calendar: DemoCalendar): Promise<void> {
  const { shop } = await mira.shop.current();
  const settings: ShopSettings = {
    ...shop.settings,
    letterhead: {
      address: 'Quarry Road 14\nUnit 3, the old tram depot',
      phone: '555 0100',
      email: 'hello@quarry-road.example',
      taxNumber: 'Tax no. 00/000/00000',
    },
    closedDays: calendar.closedDays.map(({ on, note }) => ({ on, note })),
    labourRateBySkillMinor: { tune: 9_000, elec: 8_000 },
    taxCodes: [
      { code: 'STD', name: 'Standard rate', rateBasisPoints: 1_900 },
      { code: 'NONE', name: 'Not taxed', rateBasisPoints: 0 },
    ],
    customerPartFeeMinor: 4_500,
    workshopTemperatureC: 18,
  };
  const { name, timeZone, currency, locale, version } = shop;
  await mira.shop.change({ version, name, timeZone, currency, locale, settings });
}

/** Founding made the owner's own entry; it gets phone, skills and cost. */
async function completeOwner(mira: Caller): Promise<string> {
  const { rows } = await mira.person.list({ search: MIRA.name });
  const [owner] = rows;
  if (owner === undefined) throw new Error('the shop was founded without its owner');
  await mira.person.change({ id: owner.id, version: owner.version, input: personInput(MIRA) });
  return owner.id;
}

async function hire(mira: Caller, colleague: StaffMember): Promise<string> {
  const key = formKey(`person ${colleague.name}`);
  return (await mira.person.create({ key, input: personInput(colleague) })).id;
}

function personInput({ name, email, phone, skills, hourlyCostMinor }: StaffMember) {
  return { name, email, phone, skills, hourlyCostMinor };
}

/** Through the same invitation that a colleague gets by mail. */
async function giveSignIn(options: {
  readonly deps: Deps;
  readonly mira: Caller;
  readonly shopId: string;
  readonly personId: string;
  readonly colleague: StaffMember;
}): Promise<Caller> {
  const { deps, mira, shopId, personId, colleague } = options;
  const { name, email, role } = colleague;
  await mira.people.invite({ key: formKey(`invite ${name}`), name, email, role, personId });
  const token = await secretInMail(deps, { shopId, to: email, path: 'invite' });
  const person = await signUp(deps, colleague);
  await callerFor(deps, person, null).people.acceptInvitation({ token });
  return callerFor(deps, person, shopId);
}

async function makeBays(mira: Caller): Promise<void> {
  const { rows } = await mira.bay.list({});
  const [first] = rows;
  if (first !== undefined) {
    await mira.bay.change({
      id: first.id,
      version: first.version,
      input: { name: 'Bay 1, lift', kinds: ['vehicle'] },
    });
  }
  await mira.bay.create({ key: formKey('bay 2'), input: { name: 'Bay 2', kinds: ['vehicle'] } });
  await mira.bay.create({
    key: formKey('bay 3'),
    input: { name: 'Workshop', kinds: ['bench', 'finishing'] },
  });
}

/** Tomas is away from Wednesday of next week, Ines on its Monday. */
export async function planLeave({ ines, personIds }: DemoStaff, calendar: DemoCalendar): Promise<void> {
  const away = async (name: string, fromOn: string, toOn: string, note: string) => {
    const personId = personIds.get(name);
    if (personId === undefined) throw new Error(`the demo has no ${name}`);
    await ines.leave.add({
      key: formKey(`leave ${name} ${fromOn}`),
      leave: { personId, fromOn, toOn, note },
    });
  };
  await away(TOMAS.name, calendar.nextWeek(3), calendar.nextWeek(5), 'Family visit');
  await away(INES.name, calendar.nextWeek(1), calendar.nextWeek(1), 'First-aid course');
}
