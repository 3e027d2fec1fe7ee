// What held each task: worked out from the finished plan, by asking when the task could have begun without each thing.
import type { BoundBy, ShopPlanInput } from '@gusset/contracts/planning';
import { brokenEnd, stretchStart, type UnitCalendar } from '../core/unit-calendar.ts';
import { GRID_MINUTES, gridUnits } from './shop-clock.ts';
import type { OpenTask, ShopProject } from './shop-project.ts';

/** An open task where it stands in the plan, grid moments. */
export type Stand = {
  readonly open: OpenTask;
  readonly start: number;
  readonly end: number;
  readonly personId: string;
  readonly bayId: string | null;
  /** Until when its work takes up the bay. */
  readonly bayUntil: number;
};

/** A bay taken up by something that is not an open task: done work that still dries there. */
export type DryingStand = {
  readonly taskId: string;
  readonly jobId: string;
  readonly bayId: string;
  readonly until: number;
};

type Held = {
  readonly kind: BoundBy['kind'];
  readonly what: string;
  readonly id: string | null;
  readonly taskId: string | null;
  readonly jobId: string | null;
  readonly until: number;
};

/** Of two things that end together, the one that a person would name. */
const NAMED_FIRST: readonly BoundBy['kind'][] = ['part', 'wait', 'prerequisite', 'earliest-start'];

export function bindings(
  input: ShopPlanInput,
  shop: ShopProject,
  stands: readonly Stand[],
  drying: readonly DryingStand[],
): ReadonlyMap<string, BoundBy> {
  const endOf = new Map(stands.map(({ open, end }) => [open.task.id, end]));
  const bound = new Map<string, BoundBy>();
  for (const stand of stands) {
    if (stand.open.task.state === 'running') continue;
    const held = heldBy(input, shop, stands, drying, endOf, stand);
    if (held === null) continue;
    bound.set(stand.open.task.id, {
      ...held.held,
      until: shop.clock.isoAt(Math.max(held.held.until, 0)),
      lostMinutes: Math.max(0, held.lost) * GRID_MINUTES,
    });
  }
  return bound;
}

function heldBy(
  input: ShopPlanInput,
  shop: ShopProject,
  stands: readonly Stand[],
  drying: readonly DryingStand[],
  endOf: ReadonlyMap<string, number>,
  stand: Stand,
): { readonly held: Held; readonly lost: number } | null {
  const { start, open } = stand;
  const hours = shop.hours.get(stand.personId);
  if (start <= 0 || hours === undefined) return null;
  const needs = needsOf(open, endOf).toSorted(
    (a, b) => b.until - a.until || NAMED_FIRST.indexOf(a.kind) - NAMED_FIRST.indexOf(b.kind),
  );
  const [last, ...others] = needs;
  const ready = Math.max(0, last?.until ?? 0);
  const free = firstFit(hours.working, open, ready);
  if (start > free) {
    const taken = takenBy(input, stands, drying, stand, ready);
    if (taken !== null) return { held: taken, lost: start - free };
  }
  const atWork = firstFit(hours.withoutLeave, open, ready);
  if (atWork < free) {
    const person = input.people.find(({ id }) => id === stand.personId);
    const held = {
      kind: 'person',
      what: person?.name ?? '',
      id: stand.personId,
      taskId: null,
      jobId: null,
    } as const;
    return { held: { ...held, until: start }, lost: start - atWork };
  }
  const readyElse = Math.max(0, others[0]?.until ?? 0, workBefore(last, endOf));
  const lost = start - firstFit(hours.working, open, readyElse);
  const closed = free - ready;
  const behind = { taskId: last?.taskId ?? null, jobId: last?.jobId ?? null };
  const byHours = {
    held: { kind: 'hours', what: '', id: null, ...behind, until: start },
    lost: closed,
  } as const;
  if (last === undefined) return byHours;
  const misfit = hours.working.nextOpen[ready] === ready && closed > 0; // open, but not for long enough
  if (last.kind === 'prerequisite') return misfit ? byHours : { held: last, lost: 0 };
  return misfit || closed > lost - closed ? { ...byHours } : { held: last, lost };
}

/** The moment from which the wait alone counts. */
function workBefore(need: Held | undefined, endOf: ReadonlyMap<string, number>): number {
  return need?.kind === 'wait' ? (endOf.get(need.taskId ?? '') ?? 0) : 0;
}

function needsOf(open: OpenTask, endOf: ReadonlyMap<string, number>): Held[] {
  const waits = open.waits.map(({ before, lag, freesAt }): Held => {
    const until = freesAt ?? (endOf.get(before.id) ?? 0) + lag;
    const kind = lag > 0 ? 'wait' : 'prerequisite';
    return { kind, what: before.title, id: null, taskId: before.id, jobId: open.job.id, until };
  });
  const parts = open.parts.map(
    ({ part, unit }): Held => ({
      kind: 'part',
      what: part.description,
      id: part.lineKey,
      taskId: null,
      jobId: open.job.id,
      until: unit,
    }),
  );
  const wish: Held[] =
    open.earliest === null
      ? []
      : [
          {
            kind: 'earliest-start',
            what: open.task.title,
            id: null,
            taskId: null,
            jobId: null,
            until: open.earliest,
          },
        ];
  return [...waits, ...parts, ...wish].filter(({ until }) => until > 0);
}

/** First start from `from` on in these hours, as though nobody else wanted the person. */
function firstFit(calendar: UnitCalendar, { units, breakable }: OpenTask, from: number): number {
  const start = stretchStart(calendar, from, breakable ? 1 : units);
  return breakable && brokenEnd(calendar, start, units) > calendar.horizon ? calendar.horizon : start;
}

/** Whoever had the person or the bay last before the start; the bay where both come free together. */
function takenBy(
  input: ShopPlanInput,
  stands: readonly Stand[],
  drying: readonly DryingStand[],
  stand: Stand,
  ready: number,
): Held | null {
  const person = input.people.find(({ id }) => id === stand.personId);
  const bay = input.bays.find(({ id }) => id === stand.bayId);
  const ownJob = stand.open.job.id;
  const isVehicleBay = bay?.kinds.includes('vehicle') === true;
  const move = isVehicleBay ? gridUnits(input.settings.vehicleMoveMinutes) : 0;
  let last: Held | null = null;
  let lastFree = ready;
  const consider = (kind: 'person' | 'bay', by: TakenBy, until: number, free: number): void => {
    if (free <= lastFree || free > stand.start) return;
    const holder = kind === 'bay' ? bay : person;
    last = { kind, what: holder?.name ?? '', id: holder?.id ?? null, ...by, until };
    lastFree = free;
  };
  const inBay = (by: TakenBy, until: number): void => {
    const own = by.jobId === ownJob;
    if (!own || !isVehicleBay) consider('bay', by, until, own ? until : until + move);
  };
  for (const other of stands) {
    if (other === stand || stand.bayId === null || other.bayId !== stand.bayId) continue;
    const by = { taskId: other.open.task.id, jobId: other.open.job.id };
    inBay(by, by.jobId === ownJob ? other.end : other.bayUntil);
  }
  for (const { taskId, jobId, bayId, until } of drying) {
    if (bayId === stand.bayId && jobId !== ownJob) inBay({ taskId, jobId }, until);
  }
  for (const other of stands) {
    if (other === stand || other.personId !== stand.personId) continue;
    consider('person', { taskId: other.open.task.id, jobId: other.open.job.id }, other.end, other.end);
  }
  return last;
}

type TakenBy = { readonly taskId: string; readonly jobId: string };
