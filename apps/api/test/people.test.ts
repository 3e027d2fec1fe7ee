import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';
import { onServer } from './support/test-database.ts';

const START = new Date('2026-11-24T09:00:00Z');
let now = START;
let api: TestApi;
let owner: TestPerson;

beforeAll(async () => {
  api = await startTestApi({ clock: { now: () => now } });
});
beforeEach(async () => {
  now = START;
  owner = await api.owner();
});
afterAll(() => api.close());

/** The token in the mail that waits in the outbox. */
async function mailedToken(shopId: string): Promise<string> {
  const mail = await api.deps.doors.inShop(shopId, (tx) =>
    tx.mailMessage.findFirst({ where: { shopId, purpose: 'invite' }, orderBy: { createdAt: 'desc' } }),
  );
  const token = /\/invite\/(\S+)/.exec(mail?.text ?? '')?.[1];
  if (token === undefined) throw new Error('the mail holds no link');
  return token;
}

const colleague = (role: 'technician' | 'office' = 'technician') => ({
  key: randomUUID(),
  name: 'Tomas Reed',
  email: 'tomas@example.com',
  role,
});

describe('an invitation', () => {
  it('comes by mail, shows who asks, and makes a member once', async () => {
    const asked = colleague();
    const invitation = await owner.api.people.invite.mutate(asked);
    expect((await owner.api.people.invite.mutate(asked)).id).toBe(invitation.id);
    expect(invitation.expiresAt).toBe('2026-12-01T09:00:00.000Z');
    const token = await mailedToken(owner.shopId);
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    expect(await api.client('').people.invitation.query({ token })).toEqual({
      shopName: 'Quarry Road Sound',
      name: 'Tomas Reed',
      role: 'technician',
      invitedBy: 'Mira Ilves',
    });
    const tomas = await api.signUp('Tomas Reed');
    const client = api.client(tomas.cookies);
    expect(await client.people.acceptInvitation.mutate({ token })).toEqual({ shopId: owner.shopId });
    expect((await client.shop.current.query()).me.role).toBe('technician');
    const other = await api.signUp('Somebody Else');
    const second = api.client(other.cookies).people.acceptInvitation.mutate({ token });
    expect((await shopErrorOf(second)).code).toBe('LINK_ENDED');
    const people = await owner.api.person.list.query({ search: 'tomas' });
    expect(people.rows).toMatchObject([{ email: 'tomas@example.com', role: 'technician' }]);
  });

  it('is kept as a hash only', async () => {
    await owner.api.people.invite.mutate(colleague());
    const token = await mailedToken(owner.shopId);
    const rows = await onServer(api.adminUrl, (client) =>
      client.query('SELECT to_jsonb(t)::text AS row FROM access_token t WHERE shop_id = $1', [owner.shopId]),
    );
    expect(rows.rows).toHaveLength(1);
    expect(rows.rows[0].row).not.toContain(token);
  });

  it('lets in one of two who present it at the same time', async () => {
    await owner.api.people.invite.mutate(colleague());
    const token = await mailedToken(owner.shopId);
    const people = await Promise.all(['A. One', 'B. Two', 'C. Three'].map((name) => api.signUp(name)));
    const tries = await Promise.allSettled(
      people.map(({ cookies }) => api.client(cookies).people.acceptInvitation.mutate({ token })),
    );
    expect(tries.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
  });

  it('ends when it is taken back, and after seven days', async () => {
    const { id } = await owner.api.people.invite.mutate(colleague());
    const token = await mailedToken(owner.shopId);
    await owner.api.people.revokeInvitation.mutate({ id });
    expect((await shopErrorOf(api.client('').people.invitation.query({ token }))).code).toBe('LINK_ENDED');
    expect(await owner.api.people.invitations.query()).toEqual([]);
    await owner.api.people.invite.mutate(colleague());
    const late = await mailedToken(owner.shopId);
    now = new Date('2026-12-01T09:00:01Z');
    expect((await shopErrorOf(api.client('').people.invitation.query({ token: late }))).code).toBe(
      'LINK_ENDED',
    );
  });

  it('belongs to somebody on the list of people where one was named', async () => {
    const person = await owner.api.person.create.mutate({
      key: randomUUID(),
      input: { name: 'Ana Field', email: '', phone: '', skills: ['saw'], hourlyCostMinor: 2_800 },
    });
    await owner.api.people.invite.mutate({ ...colleague('office'), personId: person.id });
    const ana = await api.signUp('Ana Field');
    const token = await mailedToken(owner.shopId);
    await api.client(ana.cookies).people.acceptInvitation.mutate({ token });
    expect((await owner.api.person.read.query({ id: person.id })).role).toBe('office');
    const again = owner.api.people.invite.mutate({ ...colleague(), personId: person.id });
    expect(await shopErrorOf(again)).toMatchObject({ code: 'NOT_ACCEPTED', fields: [{ path: 'personId' }] });
  });

  it('is not used up by somebody who belongs here already', async () => {
    await owner.api.people.invite.mutate(colleague());
    const token = await mailedToken(owner.shopId);
    expect((await shopErrorOf(owner.api.people.acceptInvitation.mutate({ token }))).code).toBe('NAME_TAKEN');
    expect(await owner.api.people.invitations.query()).toHaveLength(1);
  });
});

describe('a member', () => {
  const membershipOf = async (person: TestPerson) => {
    const found = (await owner.api.people.members.query()).find(({ email }) => email === person.email);
    if (found === undefined) throw new Error('not a member');
    return found.membershipId;
  };

  it('is refused with the next request after being removed', async () => {
    const technician = await api.member(owner, 'technician');
    await technician.api.job.list.query({});
    await owner.api.people.remove.mutate({ membershipId: await membershipOf(technician) });
    expect((await shopErrorOf(technician.api.job.list.query({}))).code).toBe('NOT_ALLOWED');
  });

  it('can be asked in again', async () => {
    const technician = await api.member(owner, 'technician');
    await owner.api.people.remove.mutate({ membershipId: await membershipOf(technician) });
    await owner.api.people.invite.mutate(colleague('office'));
    await technician.api.people.acceptInvitation.mutate({ token: await mailedToken(owner.shopId) });
    expect((await technician.api.shop.current.query()).me.role).toBe('office');
  });

  it('gets another role, which counts from the next request on', async () => {
    const technician = await api.member(owner, 'technician');
    const membershipId = await membershipOf(technician);
    await owner.api.people.changeRole.mutate({ membershipId, role: 'estimator' });
    expect((await technician.api.shop.current.query()).me.role).toBe('estimator');
  });

  it('stays an owner while there is no other', async () => {
    const membershipId = await membershipOf(owner);
    const removing = owner.api.people.remove.mutate({ membershipId });
    expect((await shopErrorOf(removing)).code).toBe('LAST_OWNER');
    const stepping = owner.api.people.changeRole.mutate({ membershipId, role: 'office' });
    expect((await shopErrorOf(stepping)).code).toBe('LAST_OWNER');
    expect((await owner.api.shop.current.query()).me.role).toBe('owner');
  });

  it('is left as an owner when two owners remove each other at once', async () => {
    const second = await api.member(owner, 'owner');
    const [first, other] = [await membershipOf(owner), await membershipOf(second)];
    await Promise.allSettled([
      owner.api.people.remove.mutate({ membershipId: other }),
      second.api.people.remove.mutate({ membershipId: first }),
    ]);
    const owners = await api.deps.doors.inShop(owner.shopId, (tx) =>
      tx.membership.count({ where: { shopId: owner.shopId, role: 'owner', endedAt: null } }),
    );
    expect(owners).toBe(1);
  });
});

describe('own sign-ins', () => {
  const signIn = (email: string) =>
    api.app.inject({
      method: 'POST',
      url: '/api/auth/sign-in/email',
      headers: { origin: 'http://localhost:4300', 'user-agent': 'Bench browser' },
      payload: { email, password: 'lantern copper meadow violin' },
    });

  it('are listed, and end with the next request', async () => {
    const answer = await signIn(owner.email);
    const cookies = [answer.headers['set-cookie']].flat().map((line) => String(line).split(';')[0]);
    const elsewhere = api.client(cookies.join('; '));
    await elsewhere.shop.current.query();
    const sessions = await owner.api.account.sessions.query();
    expect(sessions.map(({ isThis }) => isThis).toSorted()).toEqual([false, true]);
    const other = sessions.find(({ isThis }) => !isThis);
    expect(other?.browser).toBe('Bench browser');
    await owner.api.account.endSession.mutate({ id: other?.id ?? '' });
    expect((await shopErrorOf(elsewhere.shop.current.query())).code).toBe('SIGN_IN_FIRST');
  });

  it('end all but this one', async () => {
    await signIn(owner.email);
    await signIn(owner.email);
    expect(await owner.api.account.endOtherSessions.mutate()).toEqual({ count: 2 });
    expect(await owner.api.account.sessions.query()).toHaveLength(1);
  });

  it('of somebody else are not there', async () => {
    const other = await api.owner('Harbour Lane Audio');
    const [theirs] = await other.api.account.sessions.query();
    const ending = owner.api.account.endSession.mutate({ id: theirs?.id ?? '' });
    expect((await shopErrorOf(ending)).code).toBe('NOT_FOUND');
  });
});

describe('leave', () => {
  it('is added once, listed from a day on, and removed', async () => {
    const technician = await api.member(owner, 'technician');
    const [person] = (await owner.api.person.list.query({})).rows;
    const leave = { personId: person?.id ?? '', fromOn: '2026-12-01', toOn: '2026-12-04', note: 'Family' };
    const key = randomUUID();
    const added = await owner.api.leave.add.mutate({ key, leave });
    expect((await owner.api.leave.add.mutate({ key, leave })).id).toBe(added.id);
    expect(await owner.api.leave.list.query({ endsFrom: '2026-12-04' })).toEqual([added]);
    expect(await owner.api.leave.list.query({ endsFrom: '2026-12-05' })).toEqual([]);
    expect(await technician.api.leave.list.query({})).toMatchObject([{ fromOn: '2026-12-01', note: null }]);
    await owner.api.leave.remove.mutate({ id: added.id });
    expect(await owner.api.leave.list.query({})).toEqual([]);
  });

  it('cannot end before it starts, nor belong to another shop’s person', async () => {
    const other = await api.owner('Harbour Lane Audio');
    const [theirs] = (await other.api.person.list.query({})).rows;
    const leave = { personId: theirs?.id ?? '', fromOn: '2026-12-04', toOn: '2026-12-01', note: '' };
    const backwards = owner.api.leave.add.mutate({ key: randomUUID(), leave });
    expect((await shopErrorOf(backwards)).fields[0]?.path).toBe('leave.toOn');
    const foreign = owner.api.leave.add.mutate({
      key: randomUUID(),
      leave: { ...leave, toOn: '2026-12-05' },
    });
    expect((await shopErrorOf(foreign)).fields[0]?.path).toBe('personId');
  });
});
