// The same people, in the same bays, in the same order: a plan that bad news can only push later, never reshuffle.
import type { PlannedTask, Project, ProjectActivity, ShopPlan } from '@gusset/contracts/planning';

type Turn = { readonly activity: ProjectActivity; readonly startsAt: string };
type Tie = { readonly from: string; readonly to: string; readonly minLag: number };

/** Ties each task to the person, the bay and the turn that it had in an earlier plan. */
export function inOrderOf(project: Project, earlier: ShopPlan): Project {
  const had = new Map(
    earlier.tasks.filter(({ state }) => state !== 'done').map((task) => [task.taskId, task] as const),
  );
  const activities = project.activities.map((activity) => {
    const before = had.get(activity.id);
    return before === undefined ? activity : asBefore(project, activity, before);
  });
  const turns = activities.flatMap((activity): Turn[] => {
    const before = had.get(activity.id);
    return before === undefined ? [] : [{ activity, startsAt: turnOf(before) }];
  });
  turns.sort((a, b) => a.startsAt.localeCompare(b.startsAt) || a.activity.id.localeCompare(b.activity.id));
  return {
    ...project,
    activities,
    precedences: [...(project.precedences ?? []), ...personTies(turns), ...placeTies(project, turns)],
  };
}

function asBefore(project: Project, activity: ProjectActivity, before: PlannedTask): ProjectActivity {
  const skill = Object.keys(activity.skills ?? {})[0];
  const person = project.workers?.find(({ id }) => id === before.personId);
  const place = project.places?.find(({ id }) => id === before.bayId);
  const able = person !== undefined && skill !== undefined && person.skills.includes(skill);
  const { placeKind, ...rest } = activity;
  return {
    ...(place === undefined || placeKind === undefined ? activity : { ...rest, place: place.id }),
    ...(able && activity.worker === undefined ? { worker: person.id } : {}),
  };
}

/** A running task has its turn where its work goes on, not where it once began. */
function turnOf(task: PlannedTask): string {
  return task.segments[0]?.startsAt ?? task.startsAt ?? task.endsAt;
}

function personTies(turns: readonly Turn[]): Tie[] {
  const last = new Map<string, string>();
  return turns.flatMap(({ activity }): Tie[] => {
    if (activity.worker === undefined) return [];
    const from = last.get(activity.worker);
    last.set(activity.worker, activity.id);
    return from === undefined ? [] : [{ from, to: activity.id, minLag: 0 }];
  });
}

/** Tasks of one job may share a vehicle bay, so each must be tied to all later ones of others, not to the next only. */
function placeTies(project: Project, turns: readonly Turn[]): Tie[] {
  return turns.flatMap(({ activity: first }, k) =>
    turns.slice(k + 1).flatMap(({ activity: second }): Tie[] => {
      if (first.place === undefined || first.place !== second.place) return [];
      const place = project.places?.find(({ id }) => id === first.place);
      const own = first.group === second.group;
      if (own && place?.shared === true) return [];
      const lag = own ? 0 : (first.keepsPlace ?? 0) + (place?.changeover ?? 0);
      return [{ from: first.id, to: second.id, minLag: lag }];
    }),
  );
}
