import type { Project } from '@gusset/contracts/planning';
import { describe, expect, it } from 'vitest';
import { checkSchedule } from './check-schedule.ts';

const project: Project = {
  id: 'check',
  horizon: 20,
  resources: [
    {
      id: 'saw',
      capacity: 1,
      calendar: [
        [0, 10],
        [12, 20],
      ],
    },
  ],
  workers: [
    { id: 'ilves', skills: ['wood'] },
    { id: 'sato', skills: ['wiring'] },
  ],
  places: [{ id: 'bay', kinds: ['vehicle'], changeover: 1 }],
  activities: [
    { id: 'a', duration: 3, demand: { saw: 1 }, release: 1 },
    { id: 'b', duration: 2, demand: { saw: 1 }, deadline: 9 },
    { id: 'c', duration: 2, skills: { wood: 1 }, placeKind: 'vehicle' },
    { id: 'd', duration: 2, skills: { wood: 1 }, placeKind: 'vehicle' },
  ],
  precedences: [{ from: 'a', to: 'b', type: 'FS', minLag: 1, maxLag: 4 }],
};
const right = {
  start: { a: 1, b: 5, c: 0, d: 3 },
  assign: { c: [{ worker: 'ilves', skill: 'wood' }], d: [{ worker: 'ilves', skill: 'wood' }] },
  place: { c: 'bay', d: 'bay' },
};
type Answer = Parameters<typeof checkSchedule>[1];
const rules = (answer: Answer) => checkSchedule(project, answer).map(({ rule }) => rule);
const startingAt = (moments: Record<string, number>) =>
  rules({ ...right, start: { ...right.start, ...moments } });

describe('checkSchedule', () => {
  it('accepts a schedule', () => {
    expect(rules(right)).toEqual([]);
  });

  it('finds each fault by its rule', () => {
    expect(startingAt({ a: 0 })).toEqual(['release']);
    expect(startingAt({ b: 8 })).toEqual(['deadline']);
    expect(startingAt({ b: 4 })).toEqual(['precedence']);
    expect(startingAt({ a: 0, b: 9 })).toContain('precedence');
    expect(startingAt({ a: 4 })).toContain('capacity');
    expect(startingAt({ a: 9 })).toContain('calendar');
    expect(startingAt({ d: 1 })).toEqual(['worker-twice', 'place']);
    expect(startingAt({ d: 2 })).toEqual(['place']); // one unit to change over
    expect(rules({ ...right, assign: { ...right.assign, d: [{ worker: 'sato', skill: 'wood' }] } })).toEqual([
      'skill',
    ]);
    expect(rules({ ...right, assign: { c: right.assign.c } })).toEqual(['skill']);
    expect(rules({ ...right, place: { c: 'bay' } })).toEqual(['place']);
    expect(
      rules({
        ...right,
        segments: {
          a: [
            [1, 3],
            [3, 4],
          ],
        },
      }),
    ).toContain('length');
    const { a, b, c } = right.start;
    expect(rules({ ...right, start: { a, b, c } })).toContain('missing');
  });
});
