// What the schema cannot see in a project: names that nobody has, asking for more than there is, disordered calendars.
import type { Project, ProjectActivity } from '@gusset/contracts/planning';
import { type Refusal, refuse } from '@gusset/units';
import type { UnitIntervals } from './unit-calendar.ts';

/** Skills needed, one entry a worker; none for an activity without length, which needs nobody. */
export function slotsOf({ duration, skills }: ProjectActivity): string[] {
  if (duration === 0) return [];
  return Object.entries(skills ?? {}).flatMap(([skill, count]) => Array<string>(count).fill(skill));
}

/** Places where the activity may be, by index; null where it needs none. */
export function placesFor(project: Project, activity: ProjectActivity): readonly number[] | null {
  const { place, placeKind } = activity;
  if (place === undefined && placeKind === undefined) return null;
  return (project.places ?? []).flatMap(({ id, kinds }, i) =>
    (place === undefined ? placeKind !== undefined && kinds.includes(placeKind) : id === place) ? [i] : [],
  );
}

/** The first thing wrong with a project, or null. */
export function firstFault(project: Project): Refusal | null {
  for (const field of ['resources', 'workers', 'places', 'activities'] as const) {
    const wrong = repeatedId(field, project[field] ?? []) ?? disorderedCalendar(field, project[field] ?? []);
    if (wrong !== null) return wrong;
  }
  for (const [i, activity] of project.activities.entries()) {
    const wrong = activityFault(project, activity, `activities[${i}]`);
    if (wrong !== null) return wrong;
  }
  const known = new Set(project.activities.map(({ id }) => id));
  for (const [i, { from, to, minLag, maxLag }] of (project.precedences ?? []).entries()) {
    for (const [end, id] of [
      ['from', from],
      ['to', to],
    ] as const) {
      if (!known.has(id)) return unknownId(`precedences[${i}].${end}`, 'activity', id);
    }
    if (maxLag !== undefined && maxLag < (minLag ?? 0)) {
      return refuse(`precedences[${i}].maxLag`, {
        allowed: `at least the least lag, ${minLag ?? 0}`,
        got: maxLag,
        why: 'the greatest lag is below the least',
      });
    }
  }
  return null;
}

function activityFault(project: Project, activity: ProjectActivity, field: string): Refusal | null {
  for (const [id, amount] of Object.entries(activity.demand ?? {})) {
    const resource = (project.resources ?? []).find((one) => one.id === id);
    if (resource === undefined) return unknownId(`${field}.demand`, 'resource', id);
    if (amount > resource.capacity) {
      return refuse(`${field}.demand.${id}`, {
        allowed: `at most the capacity, ${resource.capacity}`,
        got: amount,
        why: `${activity.id} asks for more of ${id} than there is`,
      });
    }
  }
  return staffFault(project, activity, field) ?? placeFault(project, activity, field);
}

function staffFault(project: Project, activity: ProjectActivity, field: string): Refusal | null {
  const workers = project.workers ?? [];
  if (activity.worker !== undefined && !workers.some(({ id }) => id === activity.worker)) {
    return unknownId(`${field}.worker`, 'worker', activity.worker);
  }
  for (const other of activity.notByWorkerOf ?? []) {
    if (!project.activities.some(({ id }) => id === other)) {
      return unknownId(`${field}.notByWorkerOf`, 'activity', other);
    }
  }
  const slots = slotsOf(activity);
  if (activity.breakable === true && slots.length > 1) {
    return refuse(`${field}.breakable`, {
      allowed: 'false where more than one worker is needed',
      got: 'true',
      why: 'two people do not break off and go on together by themselves',
    });
  }
  const able = workers.filter(({ id }) => activity.worker === undefined || id === activity.worker);
  const manned = mannedSlots(slots, able);
  if (manned === slots.length) return null;
  return refuse(`${field}.skills`, {
    allowed: 'skills that the workers have between them, each worker counted once',
    got: slots.join(', '),
    why: `only ${manned} of the ${slots.length} workers that ${activity.id} needs can be found`,
  });
}

/** Most slots that different workers can fill (augmenting paths). */
function mannedSlots(
  slots: readonly string[],
  workers: readonly { readonly skills: readonly string[] }[],
): number {
  const slotOf = new Map<number, number>();
  const place = (slot: number, tried: Set<number>): boolean =>
    workers.some((worker, w) => {
      if (tried.has(w) || !worker.skills.includes(slots[slot] ?? '')) return false;
      tried.add(w);
      const held = slotOf.get(w);
      if (held !== undefined && !place(held, tried)) return false;
      slotOf.set(w, slot);
      return true;
    });
  return slots.reduce((count, _, slot) => count + (place(slot, new Set()) ? 1 : 0), 0);
}

function placeFault(project: Project, activity: ProjectActivity, field: string): Refusal | null {
  if (placesFor(project, activity)?.length !== 0) return null;
  return refuse(activity.place === undefined ? `${field}.placeKind` : `${field}.place`, {
    allowed: `one of: ${(project.places ?? []).map(({ id, kinds }) => `${id} (${kinds.join(', ')})`).join('; ')}`,
    got: activity.place ?? activity.placeKind ?? null,
    why: `there is no such place for ${activity.id}`,
  });
}

function repeatedId(field: string, items: readonly { readonly id: string }[]): Refusal | null {
  const seen = new Set<string>();
  for (const [i, { id }] of items.entries()) {
    if (seen.has(id)) {
      return refuse(`${field}[${i}].id`, {
        allowed: 'each id once',
        got: id,
        why: `${id} stands twice in ${field}`,
      });
    }
    seen.add(id);
  }
  return null;
}

function disorderedCalendar(
  field: string,
  items: readonly { readonly id: string; readonly calendar?: UnitIntervals | undefined }[],
): Refusal | null {
  for (const [i, { id, calendar }] of items.entries()) {
    const at = (calendar ?? []).findIndex(
      ([from, to], k) => from >= to || from < (calendar?.[k - 1]?.[1] ?? 0),
    );
    if (at >= 0) {
      return refuse(`${field}[${i}].calendar[${at}]`, {
        allowed: 'intervals [from, to) in rising order, apart from each other, from below to',
        got: calendar?.[at]?.join(', ') ?? null,
        why: `the calendar of ${id} is out of order there`,
      });
    }
  }
  return null;
}

function unknownId(field: string, kind: string, id: string): Refusal {
  return refuse(field, {
    allowed: `the id of an ${kind} of this project`,
    got: id,
    why: `nothing has this id`,
  });
}
