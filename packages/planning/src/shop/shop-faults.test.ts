import type { PlanTask } from '@gusset/contracts/planning';
import { describe, expect, it } from 'vitest';
import { after, job, refused, shop, task } from './small-shop.ts';

describe('planShop refuses', () => {
  const one = (changes: Partial<PlanTask>, minutes = 60) =>
    shop([job(2409, [task('cut', minutes, changes)])]);

  it('a zone that nobody knows', () => {
    const input = shop([]);
    expect(refused({ ...input, calendar: { ...input.calendar, timeZone: 'Mars/Olympus' } })).toMatchObject({
      field: 'calendar.timeZone',
      got: 'Mars/Olympus',
    });
  });

  it('a circle of prerequisites, by the titles of its tasks', () => {
    const tasks = [
      task('cut', 60, { prerequisites: [after('glue')] }),
      task('glue', 60, { prerequisites: [after('cut')] }),
    ];
    expect(refused(shop([job(2409, tasks)])).got).toMatch(/^(cut > glue > cut|glue > cut > glue)$/);
  });

  it('a skill that nobody has', () => {
    expect(refused(one({ skill: 'upholstery' }))).toMatchObject({
      field: 'jobs[0].tasks[0].skill',
      got: 'upholstery',
    });
  });

  it('a bay kind that the shop lacks', () => {
    expect(refused({ ...one({ bayKind: 'finishing' }), bays: [] })).toMatchObject({
      field: 'jobs[0].tasks[0].bayKind',
    });
  });

  it('no work at all, and more than 1000 h', () => {
    expect(refused(one({}, 0)).field).toBe('jobs[0].tasks[0].remainingMinutes');
    expect(refused(one({}, 60_001)).field).toBe('jobs[0].tasks[0].remainingMinutes');
  });

  it('somebody who cannot do it, unknown tasks and parts for unknown tasks', () => {
    expect(refused(one({ pinnedPersonId: 'sato' })).got).toBe('Sato');
    expect(refused(one({ prerequisites: [after('nothing')] })).got).toBe('nothing');
    const part = {
      lineKey: 'p',
      description: 'x',
      expectedOn: null,
      receivedOn: null,
      neededByTaskKeys: ['gone'],
    };
    expect(refused(shop([job(1, [task('a', 60)], { partDates: [part] })])).got).toBe('gone');
  });

  it('a shop that never opens', () => {
    const input = one({});
    const closed = {
      monday: [],
      tuesday: [],
      wednesday: [],
      thursday: [],
      friday: [],
      saturday: [],
      sunday: [],
    };
    expect(refused({ ...input, calendar: { ...input.calendar, weeklyHours: closed } }).got).toBe('cut');
  });
});
