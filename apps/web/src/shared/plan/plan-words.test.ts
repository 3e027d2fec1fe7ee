import type { ChangedPromise } from '@gusset/contracts/planning';
import { describe, expect, it } from 'vitest';
import { boundWords, lateWords, moveWords, reasonWords, whenWords } from './plan-words.ts';

const frame = { zone: 'Europe/Berlin', locale: 'en-GB', today: '2026-11-24' };
const until = '2026-11-24T12:00:00Z';

describe('words of the plan', () => {
  it('gives today’s times without the day, on the shop’s clock', () => {
    expect(whenWords(until, frame)).toBe('13:00');
    expect(whenWords('2026-11-25T23:30:00Z', frame)).toBe('Thu 26 Nov, 0:30');
  });
  it('names the part, the person and the job that hold a task', () => {
    const bound = { what: '80 A fuse holder', id: 'line', taskId: null, jobId: null, until, lostMinutes: 60 };
    expect(boundWords({ ...bound, kind: 'part' }, frame, null)).toBe(
      'waits for part: 80 A fuse holder, due 13:00',
    );
    expect(boundWords({ ...bound, kind: 'person', what: 'Sato' }, frame, null)).toBe(
      'waits for Sato, away until 13:00',
    );
    expect(boundWords({ ...bound, kind: 'bay', what: 'Bay 2', taskId: 't' }, frame, 2409)).toBe(
      'waits for Bay 2, taken (job 2409) until 13:00',
    );
  });
  it('says why a job is not ready earlier', () => {
    const held = { heldTaskId: 't', heldTitle: 'Mount amplifier', lostMinutes: 60, until };
    expect(
      reasonWords(
        { ...held, code: 'part-due', lineKey: 'l', description: 'Fuse holder', expectedOn: null },
        frame,
      ),
    ).toContain('nobody knows when it comes');
    expect(reasonWords({ ...held, code: 'person-away', personId: 'p', personName: 'Sato' }, frame)).toBe(
      'Mount amplifier waits for Sato, who is away until 13:00.',
    );
    expect(
      reasonWords({ ...held, code: 'person-away', personId: 'p', personName: 'Sato' }, frame, 2409),
    ).toMatch(/^Mount amplifier \(job 2409\) waits/);
  });
  it('counts moved days in both directions', () => {
    const change: ChangedPromise = {
      jobId: 'j',
      number: 2411,
      from: '2026-11-26',
      to: '2026-11-30',
      fromFinishesAt: null,
      toFinishesAt: null,
      movedDays: 4,
      because: { code: 'nothing-left' },
    };
    expect(moveWords(change, frame)).toBe('Thu 26 Nov to Mon 30 Nov, 4 days later');
    expect(moveWords({ ...change, from: '2026-11-30', to: '2026-11-29', movedDays: -1 }, frame)).toContain(
      '1 day earlier',
    );
  });
  it('calls only a missed promise late', () => {
    expect([lateWords(null), lateWords(0), lateWords(1)]).toEqual([null, null, '1 day late']);
  });
});
