// Is this a schedule? Judged from the project's own words, moment by moment, with none of the planner's code.
import type { Project, ProjectActivity, ProjectSchedule } from '@gusset/contracts/planning';

export type ScheduleFault = {
  readonly rule:
    | 'missing'
    | 'release'
    | 'deadline'
    | 'length'
    | 'precedence'
    | 'capacity'
    | 'calendar'
    | 'skill'
    | 'worker-twice'
    | 'place';
  readonly activity: string;
  readonly detail: string;
};

type Answer = Pick<ProjectSchedule, 'start' | 'assign' | 'place' | 'segments'>;
type Timed = {
  readonly activity: ProjectActivity;
  readonly start: number;
  readonly end: number;
  readonly worked: readonly (readonly [number, number])[];
};

/** Everything that is wrong with `answer`; empty = it is a schedule. Workers must differ where two are needed. */
export function checkSchedule(project: Project, answer: Answer): ScheduleFault[] {
  const timed = new Map<string, Timed>();
  const faults: ScheduleFault[] = [];
  for (const activity of project.activities) {
    const start = answer.start[activity.id];
    if (start === undefined) {
      faults.push({ rule: 'missing', activity: activity.id, detail: 'has no start' });
      continue;
    }
    const pieces = answer.segments?.[activity.id];
    const worked = pieces ?? (activity.duration > 0 ? [[start, start + activity.duration] as const] : []);
    timed.set(activity.id, { activity, start, end: worked.at(-1)?.[1] ?? start, worked });
  }
  const all = [...timed.values()];
  return [
    ...faults,
    ...all.flatMap((one) => ownFaults(project, one)),
    ...precedenceFaults(project, timed),
    ...capacityFaults(project, all),
    ...all.flatMap((one) => calendarFaults(project, answer, one)),
    ...all.flatMap((one) => skillFaults(project, answer, one)),
    ...workerFaults(answer, all),
    ...placeFaults(project, answer, all),
  ];
}

function ownFaults(project: Project, { activity, start, end, worked }: Timed): ScheduleFault[] {
  const faults: ScheduleFault[] = [];
  const latest = Math.min(
    activity.deadline ?? Number.MAX_SAFE_INTEGER,
    project.horizon ?? Number.MAX_SAFE_INTEGER,
  );
  const length = worked.reduce((sum, [from, to]) => sum + to - from, 0);
  if (start < (activity.release ?? 0)) {
    faults.push({ rule: 'release', activity: activity.id, detail: `starts at ${start}` });
  }
  if (end > latest) faults.push({ rule: 'deadline', activity: activity.id, detail: `ends at ${end}` });
  const wholeOrAllowed = worked.length <= 1 || activity.breakable === true;
  const inOrder = worked.every(([from, to], k) => from < to && from >= (worked[k - 1]?.[1] ?? start));
  if (length !== activity.duration || !wholeOrAllowed || !inOrder) {
    faults.push({
      rule: 'length',
      activity: activity.id,
      detail: `works ${length} in ${worked.length} pieces`,
    });
  }
  return faults;
}

function precedenceFaults(project: Project, timed: ReadonlyMap<string, Timed>): ScheduleFault[] {
  return (project.precedences ?? []).flatMap(({ from, to, type, minLag, maxLag }): ScheduleFault[] => {
    const first = timed.get(from);
    const second = timed.get(to);
    if (first === undefined || second === undefined) return [];
    const left = type === 'SS' || type === 'SF' ? first.start : first.end;
    const right = type === 'FF' || type === 'SF' ? second.end : second.start;
    const lag = right - left;
    if (lag >= (minLag ?? 0) && lag <= (maxLag ?? lag)) return [];
    return [{ rule: 'precedence', activity: to, detail: `${type ?? 'FS'} lag ${lag} after ${from}` }];
  });
}

function capacityFaults(project: Project, all: readonly Timed[]): ScheduleFault[] {
  const moments = [...new Set(all.map(({ start }) => start))];
  return (project.resources ?? []).flatMap(({ id, capacity }) =>
    moments.flatMap((moment): ScheduleFault[] => {
      const there = all.filter(({ start, end }) => start <= moment && moment < end);
      const used = there.reduce((sum, { activity }) => sum + (activity.demand?.[id] ?? 0), 0);
      if (used <= capacity) return [];
      return [{ rule: 'capacity', activity: id, detail: `${used} of ${capacity} used at ${moment}` }];
    }),
  );
}

function calendarFaults(project: Project, answer: Answer, { activity, worked }: Timed): ScheduleFault[] {
  const workers = (answer.assign?.[activity.id] ?? []).map(({ worker }) => worker);
  const holders = [
    ...(project.resources ?? []).filter(({ id }) => (activity.demand?.[id] ?? 0) > 0),
    ...(project.workers ?? []).filter(({ id }) => workers.includes(id)),
  ];
  const open = (unit: number) =>
    holders.every(
      ({ calendar }) => calendar === undefined || calendar.some(([from, to]) => from <= unit && unit < to),
    );
  const faults: ScheduleFault[] = [];
  for (const [k, [from, to]] of worked.entries()) {
    for (let unit = from; unit < to; unit++) {
      if (!open(unit))
        faults.push({ rule: 'calendar', activity: activity.id, detail: `works at ${unit}, closed` });
    }
    // a pause while everything it uses is open is no pause but idleness
    for (let unit = to; unit < (worked[k + 1]?.[0] ?? to); unit++) {
      if (open(unit))
        faults.push({ rule: 'calendar', activity: activity.id, detail: `rests at ${unit}, open` });
    }
  }
  return faults;
}

function skillFaults(project: Project, answer: Answer, { activity }: Timed): ScheduleFault[] {
  if (activity.duration === 0) return [];
  const given = answer.assign?.[activity.id] ?? [];
  const faults: ScheduleFault[] = [];
  const fault = (detail: string) => faults.push({ rule: 'skill', activity: activity.id, detail });
  const wanted = activity.skills ?? {};
  for (const [skill, count] of Object.entries(wanted)) {
    const got = given.filter((one) => one.skill === skill).length;
    if (got !== count) fault(`${got} of ${count} with ${skill}`);
  }
  if (given.some(({ skill }) => (wanted[skill] ?? 0) === 0)) fault('somebody who is not needed');
  if (new Set(given.map(({ worker }) => worker)).size !== given.length) fault('one worker twice at a time');
  for (const { worker, skill } of given) {
    const known = project.workers?.find(({ id }) => id === worker);
    if (known?.skills.includes(skill) !== true) fault(`${worker} has no ${skill}`);
    if (activity.worker !== undefined && worker !== activity.worker)
      fault(`${worker} instead of ${activity.worker}`);
  }
  return faults;
}

function workerFaults(answer: Answer, all: readonly Timed[]): ScheduleFault[] {
  const shifts = all.flatMap(({ activity, start, end }) =>
    (answer.assign?.[activity.id] ?? []).map(({ worker }) => ({ id: activity.id, worker, start, end })),
  );
  return shifts.flatMap((one, k): ScheduleFault[] => {
    const other = shifts
      .slice(k + 1)
      .find(
        (two) => two.worker === one.worker && two.id !== one.id && two.start < one.end && one.start < two.end,
      );
    if (other === undefined) return [];
    return [{ rule: 'worker-twice', activity: one.id, detail: `${one.worker} is at ${other.id} too` }];
  });
}

function placeFaults(project: Project, answer: Answer, all: readonly Timed[]): ScheduleFault[] {
  const stays = all.flatMap(({ activity, start, end }) => {
    const place = (project.places ?? []).find(({ id }) => id === answer.place?.[activity.id]);
    const kept = end + (activity.keepsPlace ?? 0);
    const group = activity.group ?? `alone:${activity.id}`;
    return place === undefined || start === end ? [] : [{ activity, place, start, end, kept, group }];
  });
  const faults = all.flatMap(({ activity, start, end }): ScheduleFault[] => {
    const { place: wanted, placeKind } = activity;
    if ((wanted === undefined && placeKind === undefined) || start === end) return [];
    const stay = stays.find((one) => one.activity === activity);
    const right =
      wanted === undefined ? stay?.place.kinds.includes(placeKind ?? '') : stay?.place.id === wanted;
    return right === true
      ? []
      : [{ rule: 'place', activity: activity.id, detail: 'is not where it must be' }];
  });
  const meetings = stays.flatMap((one, k) =>
    stays.slice(k + 1).flatMap((two): ScheduleFault[] => {
      if (one.place.id !== two.place.id) return [];
      const own = one.group === two.group;
      if (own && one.place.shared === true) return [];
      const gap = own ? 0 : (one.place.changeover ?? 0);
      const first = own ? one.end : one.kept;
      const second = own ? two.end : two.kept;
      if (one.start >= second + gap || two.start >= first + gap) return [];
      return [
        { rule: 'place', activity: one.activity.id, detail: `meets ${two.activity.id} in ${one.place.id}` },
      ];
    }),
  );
  return [...faults, ...meetings];
}
