import type { Project } from '@gusset/contracts/planning';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkSchedule } from './check-schedule.ts';
import { type ProjectAnswer, solveProject } from './solve-project.ts';

function solved(project: Project, schedules = 400, seed = 1): ProjectAnswer {
  const answer = solveProject(project, { seed, schedules });
  if (isRefusal(answer)) throw new Error(`${answer.refusal.field}: ${answer.refusal.why}`);
  return answer;
}

function refused(project: Project) {
  const answer = solveProject(project, { seed: 1, schedules: 10 });
  if (!isRefusal(answer)) throw new Error('was answered');
  return answer.refusal;
}

/**
 * Shortest makespan by trying every start of every activity up to `longest`, and every hand of workers; null where
 * nothing passes the checker. Shares no code with the planner.
 */
function shortestByTrying(project: Project, longest: number): number | null {
  let best: number | null = null;
  const start: Record<string, number> = {};
  const hands = (at: number, assign: Record<string, { worker: string; skill: string }[]>): boolean => {
    const activity = project.activities[at];
    if (activity === undefined) return checkSchedule(project, { start, assign }).length === 0;
    const slots = Object.entries(activity.skills ?? {}).flatMap(([skill, count]) =>
      Array<string>(count).fill(skill),
    );
    const fill = (slot: number, given: { worker: string; skill: string }[]): boolean => {
      const skill = slots[slot];
      if (skill === undefined) {
        return hands(at + 1, given.length === 0 ? assign : { ...assign, [activity.id]: given });
      }
      return (project.workers ?? []).some(
        (worker) => worker.skills.includes(skill) && fill(slot + 1, [...given, { worker: worker.id, skill }]),
      );
    };
    return fill(0, []);
  };
  const tryFrom = (at: number, makespan: number): void => {
    if (best !== null && makespan >= best) return;
    const activity = project.activities[at];
    if (activity === undefined) {
      if (hands(0, {})) best = makespan;
      return;
    }
    for (let moment = 0; moment + activity.duration <= longest; moment++) {
      start[activity.id] = moment;
      tryFrom(at + 1, Math.max(makespan, moment + activity.duration));
    }
  };
  tryFrom(0, 0);
  return best;
}

const typeArbitrary = fc.constantFrom('FS', 'SS', 'FF', 'SF');

/** Four activities at most, forward precedences of every type, one resource with or without a calendar. */
const smallProject: fc.Arbitrary<Project> = fc
  .record({
    durations: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 2, maxLength: 4 }),
    demands: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 4, maxLength: 4 }),
    arcs: fc.array(
      fc.record({
        from: fc.nat(2),
        step: fc.integer({ min: 1, max: 3 }),
        type: typeArbitrary,
        minLag: fc.integer({ min: 0, max: 2 }),
        slack: fc.option(fc.integer({ min: 0, max: 2 }), { nil: undefined }),
      }),
      { maxLength: 3 },
    ),
    calendar: fc.constantFrom(undefined, [
      [0, 3],
      [4, 40],
    ] as [number, number][]),
  })
  .map(({ durations, demands, arcs, calendar }) => ({
    id: 'small',
    resources: [{ id: 'r', capacity: 2, ...(calendar === undefined ? {} : { calendar }) }],
    activities: durations.map((duration, i) => ({ id: `a${i}`, duration, demand: { r: demands[i] ?? 0 } })),
    precedences: arcs
      .filter(({ from, step }) => from + step < durations.length)
      .map(({ from, step, type, minLag, slack }) => ({
        from: `a${from}`,
        to: `a${from + step}`,
        type,
        minLag,
        ...(slack === undefined ? {} : { maxLag: minLag + slack }),
      })),
  }));

/** Three activities that need one or two of three workers with skills. */
const smallTeam: fc.Arbitrary<Project> = fc
  .record({
    durations: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 3, maxLength: 3 }),
    needs: fc.array(
      fc.constantFrom<Record<string, number>>({ wood: 1 }, { wiring: 1 }, { wood: 1, wiring: 1 }),
      {
        minLength: 3,
        maxLength: 3,
      },
    ),
    third: fc.constantFrom<string[]>(['wood'], ['wiring'], ['wood', 'wiring']),
    follows: fc.boolean(),
  })
  .map(({ durations, needs, third, follows }) => ({
    id: 'team',
    workers: [
      { id: 'bello', skills: ['wood', 'wiring'] },
      {
        id: 'ilves',
        skills: third,
        calendar: [
          [0, 2],
          [3, 40],
        ] as [number, number][],
      },
      { id: 'sato', skills: ['wiring'], calendar: [[1, 40]] as [number, number][] },
    ],
    activities: durations.map((duration, i) => ({ id: `a${i}`, duration, skills: needs[i] ?? {} })),
    precedences: follows ? [{ from: 'a0', to: 'a2', minLag: 1 }] : [],
  }));

describe('solveProject', () => {
  it('makes schedules that an independent checker accepts, and never beats the shortest by trying', () => {
    fc.assert(
      fc.property(smallProject, (project) => {
        const answer = solveProject(project, { seed: 1, schedules: 300 });
        const shortest = shortestByTrying(project, 11);
        if (isRefusal(answer)) return shortest === null;
        if (answer.makespan === null) return true; // greatest lags: not found is said, not hidden
        expect(checkSchedule(project, answer)).toEqual([]);
        return answer.lowerBound <= answer.makespan && (shortest === null || answer.makespan >= shortest);
      }),
      { numRuns: 60, seed: 11 },
    );
  }, 30_000);

  it('finds the shortest schedule of small projects without greatest lags', () => {
    fc.assert(
      fc.property(smallProject, (project) => {
        const plain = {
          ...project,
          precedences: (project.precedences ?? []).map(({ from, to, type, minLag }) => ({
            from,
            to,
            ...(type === undefined ? {} : { type }),
            ...(minLag === undefined ? {} : { minLag }),
          })),
        };
        const shortest = shortestByTrying(plain, 11);
        return shortest === null || solved(plain, 300).makespan === shortest;
      }),
      { numRuns: 40, seed: 5 },
    );
  }, 30_000);

  it('finds the shortest schedule of small teams with skills and calendars', () => {
    fc.assert(
      fc.property(smallTeam, (project) => {
        const answer = solved(project, 300);
        expect(checkSchedule(project, answer)).toEqual([]);
        return answer.makespan === shortestByTrying(project, 11);
      }),
      { numRuns: 40, seed: 3 },
    );
  }, 30_000);

  it('gives the same schedule for the same seed', () => {
    fc.assert(
      fc.property(smallProject, fc.nat(), (project, seed) => {
        expect(solveProject(project, { seed, schedules: 50 })).toEqual(
          solveProject(project, { seed, schedules: 50 }),
        );
      }),
      { numRuns: 20 },
    );
  });

  it('keeps a greatest lag by starting the first activity later', () => {
    // c takes the only unit until 6; b must start within 1 after a's end, so a waits
    const project: Project = {
      id: 'lag',
      resources: [
        { id: 'r', capacity: 1 },
        { id: 's', capacity: 1 },
      ],
      activities: [
        { id: 'a', duration: 2, demand: { s: 1 } },
        { id: 'b', duration: 2, demand: { r: 1 } },
        { id: 'c', duration: 6, demand: { r: 1 }, deadline: 6 },
      ],
      precedences: [{ from: 'a', to: 'b', minLag: 0, maxLag: 1 }],
    };
    const answer = solved(project);
    expect(checkSchedule(project, answer)).toEqual([]);
    expect(answer).toMatchObject({ makespan: 8, start: { b: 6, c: 0 } });
    expect(answer.start.a).toBeGreaterThanOrEqual(3);
  });

  it('breaks off at closing time and goes on at opening where it may', () => {
    const project: Project = {
      id: 'night',
      workers: [
        {
          id: 'ilves',
          skills: ['wood'],
          calendar: [
            [0, 4],
            [10, 20],
          ],
        },
      ],
      activities: [{ id: 'a', duration: 6, skills: { wood: 1 }, breakable: true }],
    };
    const answer = solved(project);
    expect(answer).toMatchObject({
      makespan: 12,
      segments: {
        a: [
          [0, 4],
          [10, 12],
        ],
      },
      proven: true,
    });
    expect(checkSchedule(project, answer)).toEqual([]);
    const whole = { ...project, activities: [{ id: 'a', duration: 6, skills: { wood: 1 } }] };
    expect(solved(whole).start).toEqual({ a: 10 });
  });

  it('keeps one group at a time in a place, with the changeover between', () => {
    const project: Project = {
      id: 'bay',
      places: [{ id: 'bay 1', kinds: ['vehicle'], shared: true, changeover: 2 }],
      activities: [
        { id: 'a', duration: 3, placeKind: 'vehicle', group: 'merle' },
        { id: 'b', duration: 4, placeKind: 'vehicle', group: 'merle' },
        { id: 'c', duration: 1, placeKind: 'vehicle', group: 'orrin' },
      ],
    };
    const answer = solved(project);
    expect(checkSchedule(project, answer)).toEqual([]);
    expect(answer.makespan).toBe(7); // 4 together, 2 to change over, 1
  });

  it('puts the work with the earlier wish first where lateness counts', () => {
    const project: Project = {
      id: 'late',
      aim: 'lateness',
      resources: [{ id: 'r', capacity: 1 }],
      activities: [
        { id: 'a', duration: 5, demand: { r: 1 }, due: 20 },
        { id: 'b', duration: 2, demand: { r: 1 }, due: 2, weight: 3 },
      ],
    };
    expect(solved(project)).toMatchObject({ start: { b: 0, a: 2 }, lateness: 0, proven: true });
  });

  it('says which activities found no room where there is no schedule', () => {
    const answer = solved({
      id: 'tight',
      horizon: 4,
      resources: [{ id: 'r', capacity: 1 }],
      activities: [
        { id: 'a', duration: 3, demand: { r: 1 } },
        { id: 'b', duration: 3, demand: { r: 1 } },
      ],
    });
    expect(answer).toMatchObject({ makespan: null, start: {}, proven: true });
    expect(answer.unplaced).toHaveLength(1);
  });

  it('answers a project without activities', () => {
    expect(solved({ id: 0, activities: [] })).toMatchObject({ makespan: 0, lowerBound: 0, proven: true });
  });

  it('names the activities of a circle', () => {
    const activities = ['a', 'b', 'c'].map((id) => ({ id, duration: 1 }));
    const precedences = [
      { from: 'a', to: 'b' },
      { from: 'b', to: 'c' },
      { from: 'c', to: 'b' },
    ];
    expect(refused({ id: 'x', activities, precedences })).toMatchObject({
      field: 'precedences',
      got: 'b > c > b',
    });
  });

  it('refuses what cannot be: unknown names, too much demand, no such skill, opposed lags', () => {
    const activities = [
      { id: 'a', duration: 1, skills: { wood: 2 } },
      { id: 'b', duration: 2 },
    ];
    expect(refused({ id: 1, activities }).field).toBe('activities[0].skills');
    expect(refused({ id: 1, activities: [{ id: 'a', duration: 1, demand: { saw: 1 } }] }).got).toBe('saw');
    expect(
      refused({
        id: 1,
        resources: [{ id: 'saw', capacity: 1 }],
        activities: [{ id: 'a', duration: 1, demand: { saw: 2 } }],
      }).field,
    ).toBe('activities[0].demand.saw');
    expect(
      refused({
        id: 1,
        activities: [
          { id: 'a', duration: 1 },
          { id: 'b', duration: 2 },
        ],
        precedences: [
          { from: 'a', to: 'b', minLag: 5 },
          { from: 'a', to: 'b', type: 'SS', maxLag: 3 },
        ],
      }).field,
    ).toBe('precedences');
  });
});
