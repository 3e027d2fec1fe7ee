import type { PlannedTask, SettingInterval } from '@gusset/contracts/planning';
import { describe, expect, it } from 'vitest';
import { type CurrentPlan, dayLanes, progressWords } from './bay-lanes.ts';

const JOB = 'job-1';
const frame = { zone: 'Europe/Berlin', locale: 'en-GB', today: '2026-11-24' };

const glueing: PlannedTask = {
  taskId: 'glue',
  jobId: JOB,
  key: 'glue',
  title: 'Glue panels',
  state: 'done',
  startsAt: '2026-11-24T08:00:00Z',
  endsAt: '2026-11-24T09:30:00Z',
  segments: [],
  personId: 'tomas',
  bayId: 'bench',
  boundBy: null,
};

const setting: SettingInterval = {
  kind: 'setting',
  jobId: JOB,
  afterTaskId: 'glue',
  beforeTaskId: 'sand',
  title: 'Glue panels',
  reason: 'glue',
  startsAt: '2026-11-24T09:30:00Z',
  endsAt: '2026-11-24T13:30:00Z',
  bayId: null,
  bayUntil: null,
};

function viewOf(tasks: readonly PlannedTask[], settings: readonly SettingInterval[]): CurrentPlan {
  return {
    plan: {
      plannedAt: '2026-11-24T13:00:00Z',
      timeZone: frame.zone,
      jobs: [],
      tasks: [...tasks],
      settingIntervals: [...settings],
      dayLists: [],
      findings: [],
      schedulesTried: 1,
    },
    moved: [],
    because: '',
    people: [{ id: 'tomas', name: 'Tomas Reyl' }],
    bays: [{ id: 'bench', name: 'Workshop' }],
    jobs: [
      {
        id: JOB,
        number: 2410,
        title: 'One ten',
        customer: 'B. Harms',
        vehicle: 'Halden Brisk',
        isApproved: true,
        isHandedOver: false,
        wishedOn: null,
        version: 1,
      },
    ],
    tasks: [
      {
        id: 'glue',
        skill: 'fab',
        minutes: 120,
        workedMinutes: 90,
        version: 1,
        startedAt: glueing.startsAt,
        finishedAt: glueing.endsAt,
      },
    ],
    parts: [],
    loans: [],
    lapsedPins: [],
    calendar: {
      timeZone: frame.zone,
      weeklyHours: {
        monday: [],
        tuesday: [{ from: '08:00', until: '17:00' }],
        wednesday: [],
        thursday: [],
        friday: [],
        saturday: [],
        sunday: [],
      },
      closedOn: [],
    },
    myPersonId: null,
  };
}

describe('the lanes of a day', () => {
  it('let glue set in the bay where the piece stands, though the bay is free for others', () => {
    const lanes = dayLanes(viewOf([glueing], [setting]), frame.today, frame);
    expect(lanes.map(({ name }) => name)).toEqual(['Workshop']);
    expect(lanes[0]?.tasks).toMatchObject([
      { key: 'glue', state: 'done', note: '2410 · Tomas Reyl · done in 1 h 30' },
      { state: 'setting', fromMinute: 630, toMinute: 870, note: '2410 · nobody needed until 14:30' },
    ]);
  });

  it('set aside what was glued in no bay', () => {
    const lanes = dayLanes(viewOf([{ ...glueing, bayId: null }], [setting]), frame.today, frame);
    expect(lanes.map(({ name, tasks }) => [name, tasks.length])).toEqual([
      ['Workshop', 0],
      ['No bay', 2],
    ]);
  });

  it('leave out the wait for a customer: nothing stands in a bay for it', () => {
    const lanes = dayLanes(viewOf([glueing], [{ ...setting, reason: 'customer' }]), frame.today, frame);
    expect(lanes.flatMap(({ tasks }) => tasks.map(({ state }) => state))).toEqual(['done']);
  });

  it('count a running task in the shop hours that were worked', () => {
    expect(progressWords({ ...glueing, state: 'running' }, viewOf([], []))).toBe('1 h 30 of 2 h');
    expect(progressWords({ ...glueing, state: 'planned' }, viewOf([], []))).toBe('');
  });
});
