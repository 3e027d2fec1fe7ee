import ICAL from 'ical.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jobWith } from './support/bay-jobs.ts';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;
/** Friday before Berlin sets its clocks on, 29 March 2026. */
const at = { now: new Date('2026-03-27T07:00:00Z') };

beforeAll(async () => {
  api = await startTestApi({ clock: { now: () => at.now } });
  owner = await api.owner();
  await jobWith(api, owner, {
    number: 301,
    rank: 0,
    tasks: [
      { key: 'cut', title: 'Cut panels', minutes: 120 },
      { key: 'coat', title: 'Coat', minutes: 60, earliestOn: '2026-03-30' },
    ],
  });
});
afterAll(() => api.close());

const read = (url: string) => api.app.inject({ method: 'GET', url: new URL(url).pathname });

function eventsOf(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text));
  const zone = calendar.getFirstSubcomponent('vtimezone');
  if (zone === null) throw new Error('the feed names a zone without saying when its clocks change');
  const timezone = new ICAL.Timezone(zone);
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const start = component.getFirstPropertyValue('dtstart');
    if (!(start instanceof ICAL.Time)) throw new Error('an event without a start');
    return {
      uid: component.getFirstPropertyValue('uid'),
      sequence: Number(component.getFirstPropertyValue('sequence')),
      summary: String(component.getFirstPropertyValue('summary')),
      tzid: component.getFirstProperty('dtstart')?.getFirstParameter('tzid'),
      wall: start.toString(),
      offsetSeconds: timezone.utcOffset(start),
    };
  });
}

describe('a calendar feed', () => {
  it('holds the person’s days on the shop’s clock, through a change of clocks', async () => {
    const { url } = await owner.api.calendar.make.mutate();
    const answer = await read(url);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toContain('text/calendar');
    const events = eventsOf(answer.body);
    expect(events.map(({ summary }) => summary)).toEqual(['Cut panels · job 301', 'Coat · job 301']);
    expect(events.map(({ tzid }) => tzid)).toEqual(['Europe/Berlin', 'Europe/Berlin']);
    expect(events.map(({ wall }) => wall)).toEqual(['2026-03-27T08:00:00', '2026-03-30T08:00:00']);
    // Eight on the wall is seven in UTC in winter and six in summer, as the feed's own VTIMEZONE says.
    expect(events.map(({ offsetSeconds }) => offsetSeconds)).toEqual([3_600, 7_200]);
    expect(answer.body).not.toMatch(/Okafor|EUR|€|\bTEL\b/);
  });

  it('keeps UIDs, and raises SEQUENCE only where something moved', async () => {
    const { url } = await owner.api.calendar.make.mutate();
    const before = eventsOf((await read(url)).body);
    at.now = new Date(at.now.getTime() + 60_000);
    await api.deps.doors.inShop(owner.shopId, (tx) =>
      tx.jobTask.updateMany({
        where: { key: 'coat' },
        data: { earliestOn: new Date('2026-03-31T00:00:00Z') },
      }),
    );
    const after = eventsOf((await read(url)).body);
    expect(after.map(({ uid }) => uid)).toEqual(before.map(({ uid }) => uid));
    const rise = after.map(({ sequence }, i) => sequence - (before[i]?.sequence ?? 0));
    expect(rise[1]).toBeGreaterThan(0);
    expect(after[1]?.wall).toBe('2026-03-31T08:00:00');
  });

  it('opens for one address only, and for none once it is taken back', async () => {
    const first = await owner.api.calendar.make.mutate();
    const second = await owner.api.calendar.make.mutate();
    expect((await read(first.url)).statusCode).toBe(404);
    expect((await read(second.url)).statusCode).toBe(200);
    await owner.api.calendar.revoke.mutate();
    expect((await read(second.url)).statusCode).toBe(404);
    expect((await read('http://localhost/api/calendar/gcf_unknown.ics')).statusCode).toBe(404);
    expect((await owner.api.calendar.mine.query()).madeAt).toBeNull();
  });

  it('keeps nothing that opens it', async () => {
    const { url } = await owner.api.calendar.make.mutate();
    const token = url.split('/').at(-1)?.replace('.ics', '') ?? '';
    const rows = await api.deps.doors.inShop(owner.shopId, (tx) =>
      tx.accessToken.findMany({ where: { purpose: 'calendar' } }),
    );
    expect(JSON.stringify(rows)).not.toContain(token);
    expect(rows.length).toBeGreaterThan(0);
  });

  it('ends with the membership, and needs somebody at the bench', async () => {
    const member = await api.member(owner, 'technician');
    expect((await shopErrorOf(member.api.calendar.make.mutate())).code).toBe('NOT_ACCEPTED');
    const { url } = await owner.api.calendar.make.mutate();
    await api.deps.doors.inShop(owner.shopId, (tx) =>
      tx.accessToken.updateMany({ where: { purpose: 'calendar' }, data: { createdBy: 'somebody who left' } }),
    );
    expect((await read(url)).statusCode).toBe(404);
  });
});
