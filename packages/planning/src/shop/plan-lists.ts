// The plan written out: tasks, waits and each person's days, as instants.
import type {
  BoundBy,
  DayList,
  PlannedTask,
  SettingInterval,
  ShopPlanInput,
  WorkSegment,
} from '@gusset/contracts/planning';
import { workedStretches } from '../core/unit-calendar.ts';
import type { Stand } from './binding.ts';
import { GRID_MINUTES, gridUnits, instantMs } from './shop-clock.ts';
import { type ShopProject, waitFactorFor } from './shop-project.ts';

/** Worked stretches of an open task, grid moments. */
function stretchesOf(shop: ShopProject, { start, end, personId }: Stand): [number, number][] {
  return workedStretches(shop.hours.get(personId)?.working ?? null, start, end);
}

function segmentsOf(shop: ShopProject, stand: Stand): WorkSegment[] {
  return stretchesOf(shop, stand).map(([from, to]) => ({
    startsAt: shop.clock.isoAt(from),
    endsAt: shop.clock.isoAt(to),
  }));
}

export function plannedTasks(
  input: ShopPlanInput,
  shop: ShopProject,
  stands: readonly Stand[],
  bound: ReadonlyMap<string, BoundBy>,
): PlannedTask[] {
  const done = input.jobs.flatMap((job) =>
    job.tasks.flatMap((task): PlannedTask[] => {
      if (task.state !== 'done' || task.finishedAt === null) return [];
      const { id, key, title, startedAt, finishedAt, pinnedPersonId, pinnedBayId } = task;
      return [
        {
          taskId: id,
          jobId: job.id,
          key,
          title,
          state: 'done',
          startsAt: startedAt,
          endsAt: finishedAt,
          segments: [],
          personId: pinnedPersonId,
          bayId: pinnedBayId,
          boundBy: null,
        },
      ];
    }),
  );
  const open = stands.map((stand): PlannedTask => {
    const { task, job } = stand.open;
    const segments = segmentsOf(shop, stand);
    return {
      taskId: task.id,
      jobId: job.id,
      key: task.key,
      title: task.title,
      state: task.state,
      startsAt: task.startedAt ?? shop.clock.isoAt(stand.start),
      endsAt: shop.clock.isoAt(stand.end),
      segments,
      personId: stand.personId,
      bayId: stand.bayId,
      boundBy: bound.get(task.id) ?? null,
    };
  });
  const startMs = (task: PlannedTask) => instantMs(task.startsAt ?? task.endsAt);
  return [...done, ...open]
    .map((task) => ({ task, at: startMs(task) }))
    .sort((a, b) => a.at - b.at || a.task.taskId.localeCompare(b.task.taskId))
    .map(({ task }) => task);
}

/** Waits that aren't over yet, with the bay they take up. */
export function settingIntervals(
  input: ShopPlanInput,
  shop: ShopProject,
  stands: readonly Stand[],
): SettingInterval[] {
  const standOf = new Map(stands.map((stand) => [stand.open.task.id, stand]));
  const { clock } = shop;
  return stands.flatMap(({ open }) =>
    open.waits.flatMap(({ prerequisite, before, lag }): SettingInterval[] => {
      const stand = standOf.get(before.id);
      const fromMs = stand === undefined ? instantMs(before.finishedAt ?? input.now) : clock.msAt(stand.end);
      const until = clock.unitAtOrAfter(fromMs + lag * GRID_MINUTES * 60_000);
      if (lag === 0 || until <= 0) return [];
      const kept = gridUnits(prerequisite.keepsBayMinutes * waitFactorFor(prerequisite, input));
      const bayUntil = clock.unitAtOrAfter(fromMs + kept * GRID_MINUTES * 60_000);
      const bayId = stand === undefined ? before.pinnedBayId : stand.bayId;
      const inBay = kept > 0 && bayUntil > 0 && bayId !== null;
      return [
        {
          kind: 'setting',
          jobId: open.job.id,
          afterTaskId: before.id,
          beforeTaskId: open.task.id,
          title: before.title,
          reason: prerequisite.reason,
          startsAt: stand === undefined ? (before.finishedAt ?? input.now) : clock.isoAt(stand.end),
          endsAt: clock.isoAt(until),
          bayId: inBay ? bayId : null,
          bayUntil: inBay ? clock.isoAt(bayUntil) : null,
        },
      ];
    }),
  );
}

/** By date, then person, then start. */
export function dayLists(shop: ShopProject, stands: readonly Stand[]): DayList[] {
  const lists = new Map<string, { personId: string; on: string; items: DayList['items'] }>();
  for (const stand of stands) {
    for (const [from, to] of stretchesOf(shop, stand)) {
      const segment = { startsAt: shop.clock.isoAt(from), endsAt: shop.clock.isoAt(to) };
      const on = shop.clock.dateOf(shop.clock.msAt(from));
      const key = `${on} ${stand.personId}`;
      const list = lists.get(key) ?? { personId: stand.personId, on, items: [] };
      lists.set(key, list);
      list.items.push({
        taskId: stand.open.task.id,
        jobId: stand.open.job.id,
        bayId: stand.bayId,
        ...segment,
      });
    }
  }
  const sorted = [...lists.entries()].sort(([a], [b]) => a.localeCompare(b)).map(([, list]) => list);
  for (const { items } of sorted) items.sort((a, b) => a.startsAt.localeCompare(b.startsAt));
  return sorted;
}
