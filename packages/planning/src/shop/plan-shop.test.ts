import { shopPlanInputSchema, shopPlanSchema } from '@gusset/contracts/planning';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quarryRoad } from '../../bench/quarry-road.ts';
import { planShop } from './plan-shop.ts';
import { after, away, job, jobOf, NOW, planned, shop, soloShop, task, taskOf } from './small-shop.ts';

describe('planShop', () => {
  it('works in shop hours and splits a breakable task at the break and at closing time', () => {
    // 08:00-12:00 and 12:30-17:00: 10 h = 4 + 4.5 h on Tuesday, 1.5 h on Wednesday
    const plan = planned(soloShop([job(2409, [task('cut', 600)])]));
    expect(taskOf(plan, '2409/cut')?.segments).toEqual([
      { startsAt: '2026-11-24T08:00:00Z', endsAt: '2026-11-24T12:00:00Z' },
      { startsAt: '2026-11-24T12:30:00Z', endsAt: '2026-11-24T17:00:00Z' },
      { startsAt: '2026-11-25T08:00:00Z', endsAt: '2026-11-25T09:30:00Z' },
    ]);
    expect(plan.dayLists.map(({ on, items }) => [on, items.length])).toEqual([
      ['2026-11-24', 2],
      ['2026-11-25', 1],
    ]);
  });

  it('does not begin an unbreakable task that would run into the break', () => {
    const plan = planned(soloShop([job(2409, [task('saw', 180), task('glue', 90, { breakable: false })])]));
    // 3 h from 08:00 leave one hour before the break: the glue-up of 1.5 h waits for 12:30, unless it goes first
    const glue = taskOf(plan, '2409/glue');
    expect(glue?.segments).toHaveLength(1);
  });

  it('lets glue set through night and weekend without anybody', () => {
    // Friday 27 November: glue ends 10:00, 24 h later is Saturday 10:00, the shop opens Monday 08:00
    const tasks = [task('glue', 120), task('test', 60, { prerequisites: [after('glue', 24 * 60)] })];
    const plan = planned({ ...soloShop([job(2411, tasks)]), now: '2026-11-27T08:00:00Z' });
    expect(taskOf(plan, '2411/test')?.startsAt).toBe('2026-11-30T08:00:00Z');
    expect(plan.settingIntervals).toMatchObject([
      { startsAt: '2026-11-27T10:00:00Z', endsAt: '2026-11-28T10:00:00Z', reason: 'glue' },
    ]);
    expect(taskOf(plan, '2411/test')?.boundBy).toMatchObject({ kind: 'hours', taskId: '2411/glue' });
  });

  it('stretches waits of glue in a cold shop, but not those for a customer', () => {
    const customer = { ...after('glue', 60), reason: 'customer' } as const;
    const tasks = [
      task('glue', 60),
      task('test', 60, { prerequisites: [after('glue', 60)] }),
      task('call', 60, { prerequisites: [customer] }),
    ];
    const input = shop([job(1, tasks)]);
    const plan = planned({ ...input, settings: { ...input.settings, waitFactor: 2 } });
    expect(taskOf(plan, '1/test')?.startsAt).toBe('2026-11-24T11:00:00Z');
    expect(taskOf(plan, '1/call')?.startsAt).toBe('2026-11-24T10:00:00Z');
  });

  it('counts 24 h of setting as 24 h across the change of clocks, and opening time as wall time', () => {
    // clocks in Lisbon go forward on Sunday 28 March 2027 at 01:00; Saturday is open here
    const input = shop([
      job(1, [task('glue', 60), task('test', 60, { prerequisites: [after('glue', 24 * 60)] })]),
    ]);
    const open = [{ from: '08:00', until: '12:00' }];
    const weeklyHours = { ...input.calendar.weeklyHours, saturday: open, sunday: open };
    const plan = planned({
      ...input,
      now: '2027-03-27T08:00:00Z',
      calendar: { ...input.calendar, weeklyHours },
    });
    // ends Saturday 09:00 UTC; 24 h later is Sunday 09:00 UTC = 10:00 on the wall
    expect(taskOf(plan, '1/test')?.startsAt).toBe('2027-03-28T09:00:00Z');
    const sunday = planned({
      ...input,
      now: '2027-03-28T00:00:00Z',
      calendar: { ...input.calendar, weeklyHours },
    });
    expect(taskOf(sunday, '1/glue')?.startsAt).toBe('2027-03-28T07:00:00Z');
  });

  it('holds a task for its part, and names the part with its date', () => {
    const part = {
      lineKey: 'p1',
      description: '80 A fuse holder',
      expectedOn: '2026-11-27',
      receivedOn: null,
      neededByTaskKeys: ['run'],
    };
    const plan = planned(soloShop([job(2409, [task('run', 60)], { partDates: [part] })]));
    expect(taskOf(plan, '2409/run')?.startsAt).toBe('2026-11-27T13:00:00Z');
    expect(jobOf(plan, 'j2409')?.because).toMatchObject({
      code: 'part-due',
      description: '80 A fuse holder',
      expectedOn: '2026-11-27',
    });
    const inHand = { ...part, receivedOn: '2026-11-23' };
    const ready = planned(soloShop([job(2409, [task('run', 60)], { partDates: [inHand] })]));
    expect(taskOf(ready, '2409/run')?.startsAt).toBe(NOW);
  });

  it('reckons an overdue part for the next delivery and a dateless one for the usual days, and says so', () => {
    const line = { description: 'Charcoal carpet', receivedOn: null, neededByTaskKeys: ['a'] };
    const partDates = [
      { ...line, lineKey: 'late', expectedOn: '2026-11-20' },
      { ...line, lineKey: 'open', expectedOn: null },
    ];
    const plan = planned(shop([job(1, [task('a', 60)], { partDates })]));
    expect(plan.findings).toMatchObject([
      { code: 'part-overdue', lineKey: 'late', expectedOn: '2026-11-20' },
      { code: 'part-without-date', lineKey: 'open', reckonedOn: '2026-12-01' },
    ]);
    expect(taskOf(plan, '1/a')?.startsAt).toBe('2026-12-01T13:00:00Z');
  });

  it('names the person and the job that has them', () => {
    const jobs = [job(2411, [task('cut', 240)], { rank: 1 }), job(2414, [task('cut', 60)], { rank: 2 })];
    const plan = planned(soloShop(jobs), { schedules: 1 });
    expect(jobOf(plan, 'j2414')?.because).toMatchObject({
      code: 'person-busy',
      personName: 'Ilves',
      onJobNumber: 2411,
      until: '2026-11-24T12:00:00Z',
    });
    expect(jobOf(plan, 'j2414')?.criticalChain.map(({ jobId }) => jobId)).toEqual(['j2411', 'j2414']);
  });

  it('names leave where somebody is away', () => {
    const plan = planned(soloShop([job(1, [task('cut', 60)])], [away('2026-11-24', '2026-11-25')]));
    expect(taskOf(plan, '1/cut')?.startsAt).toBe('2026-11-26T08:00:00Z');
    expect(jobOf(plan, 'j1')?.because).toMatchObject({ code: 'person-away', personName: 'Ilves' });
  });

  it('keeps one job at a time in a vehicle bay, but lets two people work on one vehicle', () => {
    const at = { bayKind: 'vehicle', vehicleOnSite: true, skill: 'any' } as const;
    const jobs = [
      job(1, [task('power', 60, at), task('signal', 60, at)], { rank: 1 }),
      job(2, [task('power', 60, at)], { rank: 2 }),
    ];
    const one = { ...shop(jobs), bays: [{ id: 'bay-1', name: 'Bay 1', kinds: ['vehicle' as const] }] };
    const plan = planned(one, { schedules: 1 });
    expect(taskOf(plan, '1/power')?.startsAt).toBe(NOW);
    expect(taskOf(plan, '1/signal')?.startsAt).toBe(NOW);
    expect(taskOf(plan, '2/power')).toMatchObject({
      startsAt: '2026-11-24T09:15:00Z', // 15 min to move the vehicles
      boundBy: { kind: 'bay', what: 'Bay 1' },
    });
    expect(jobOf(plan, 'j2')?.because).toMatchObject({ code: 'bay-taken', onJobNumber: 1 });
    expect(jobOf(plan, 'j1')?.vehicleVisits).toEqual([{ startsAt: NOW, endsAt: '2026-11-24T09:00:00Z' }]);
  });

  it('keeps the finishing bay taken while a coat dries in it, also one finished before now', () => {
    const coat = { bayKind: 'finishing', skill: 'finishing' } as const;
    const done = task('coat', 60, {
      ...coat,
      state: 'done',
      startedAt: '2026-11-24T06:00:00Z',
      finishedAt: '2026-11-24T07:00:00Z',
      pinnedBayId: 'finishing',
      pinnedPersonId: 'bello',
    });
    const jobs = [
      job(1, [done, task('fit', 60, { prerequisites: [after('coat', 300, 180)] })], { rank: 1 }),
      job(2, [task('coat', 60, coat)], { rank: 2 }),
    ];
    const plan = planned(shop(jobs));
    expect(taskOf(plan, '2/coat')).toMatchObject({
      startsAt: '2026-11-24T10:00:00Z',
      boundBy: { kind: 'bay', taskId: '1/coat' },
    });
    expect(plan.settingIntervals).toMatchObject([
      {
        startsAt: '2026-11-24T07:00:00Z',
        endsAt: '2026-11-24T12:00:00Z',
        bayId: 'finishing',
        bayUntil: '2026-11-24T10:00:00Z',
      },
    ]);
  });

  it('goes on with running work first, where it is and with whoever is at it', () => {
    const running = task('wire', 90, {
      skill: 'electrical',
      state: 'running',
      startedAt: '2026-11-23T15:00:00Z',
      pinnedPersonId: 'bello', // has no such skill, but is at it
      prerequisites: [after('cut')],
    });
    const plan = planned(shop([job(1, [task('cut', 60), running]), job(2, [task('cut', 60)], { rank: -5 })]));
    expect(taskOf(plan, '1/wire')).toMatchObject({
      startsAt: '2026-11-23T15:00:00Z',
      endsAt: '2026-11-24T09:30:00Z',
      personId: 'bello',
      boundBy: null,
    });
    expect(plan.findings).toMatchObject([{ code: 'started-out-of-order', beforeTaskId: '1/cut' }]);
  });

  it('gives a sign-off to a second person where there is one', () => {
    const signOff = { ...after('tune'), byAnotherPerson: true };
    const tasks = [
      task('tune', 60, { skill: 'any', pinnedPersonId: 'nowak' }),
      task('check', 60, { skill: 'tuning', prerequisites: [signOff] }),
    ];
    expect(taskOf(planned(shop([job(1, tasks)])), '1/check')?.personId).toBe('sato');
    const done = { state: 'done', startedAt: null, finishedAt: '2026-11-24T07:00:00Z' } as const;
    const afterDone = tasks.map((one) => (one.key === 'tune' ? { ...one, ...done } : one));
    expect(taskOf(planned(shop([job(1, afterDone)])), '1/check')?.personId).toBe('sato');
    const lead = tasks.map((one) => (one.key === 'check' ? { ...one, skill: 'lead' } : one));
    expect(planned(shop([job(1, lead)])).findings).toMatchObject([
      { code: 'no-second-person', taskId: '1/check' },
    ]);
  });

  it('promises the day on which the buffer in shop hours is used up', () => {
    // 8 h of work end Tuesday 16:30; 4 h more of shop time end Wednesday 11:30
    const plan = planned(soloShop([job(1, [task('a', 480)], { promisedOn: '2026-11-23' })]));
    expect(jobOf(plan, 'j1')).toMatchObject({
      finishesAt: '2026-11-24T16:30:00Z',
      promiseOn: '2026-11-25',
      lateDays: 1,
      because: { code: 'work', minutes: 480 },
    });
    expect(plan.findings).toMatchObject([{ code: 'promise-missed', lateDays: 1 }]);
  });

  it('plans a job with nothing left as finished when its last task was', () => {
    const done = task('a', 0, { state: 'done', finishedAt: '2026-11-20T15:00:00Z' });
    expect(jobOf(planned(shop([job(1, [done])])), 'j1')).toMatchObject({
      finishesAt: '2026-11-20T15:00:00Z',
      promiseOn: '2026-11-20',
      because: { code: 'nothing-left' },
    });
  });

  it('breaks off unbreakable work that fits no stretch of the day, and says so', () => {
    const plan = planned(soloShop([job(1, [task('pour', 300, { breakable: false })])]));
    expect(plan.findings).toMatchObject([{ code: 'longer-than-a-stretch', longestStretchMinutes: 270 }]);
  });

  it('waits out a long leave instead of giving up', () => {
    const plan = planned(soloShop([job(1, [task('a', 60)])], [away('2026-11-01', '2027-11-01')]));
    expect(taskOf(plan, '1/a')?.startsAt).toBe('2027-11-02T08:00:00Z');
  });

  it('plans a whole shop so that an independent checker accepts it, in the shape of the contract', () => {
    const input = quarryRoad(12);
    expect(shopPlanInputSchema.parse(input)).toEqual(input);
    const plan = planned(input);
    expect(shopPlanSchema.parse(plan)).toEqual(plan);
    expect(plan.tasks).toHaveLength(input.jobs.flatMap(({ tasks }) => tasks).length);
    expect(planShop(input)).toEqual(plan);
  }, 20_000);

  it('plans random shops so that an independent checker accepts them', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5 }),
        fc.nat(10_000),
        fc.integer({ min: 1, max: 3 }),
        (jobs, seed, factor) => {
          const input = quarryRoad(jobs, seed);
          planned({ ...input, settings: { ...input.settings, waitFactor: factor } }, { schedules: 3 });
        },
      ),
      { numRuns: 12 },
    );
  }, 60_000);
});
