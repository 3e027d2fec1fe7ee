// The forward plan as screens read it, what-if questions, and the promise to the customer.
import type { ChangedPromise, ShopCalendar, ShopPlan } from '@gusset/contracts/planning';
import { withLeave, withPartDate } from '@gusset/planning';
import { isRefusal } from '@gusset/units';
import { record } from '../data/audit.ts';
import { fromShopDate, toShopDate } from '../data/dates.ts';
import { conflictError } from '../data/versioned.ts';
import type { Actor, Deps } from '../deps.ts';
import { notFound, refusedByEngine } from '../errors.ts';
import { changeJobRow, findJob } from '../jobs/job.queries.ts';
import { type ForwardPlan, forwardPlan } from './forward-plan.ts';
import { type LapsedPin, lapsedPins } from './plan-input.ts';
import { workedMinutesBetween } from './worked-minutes.ts';

export type PlanView = {
  readonly plan: ShopPlan;
  readonly moved: readonly ChangedPromise[];
  readonly because: string;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly bays: readonly { readonly id: string; readonly name: string }[];
  readonly jobs: readonly {
    readonly id: string;
    readonly number: number;
    readonly title: string;
    readonly customer: string;
    readonly vehicle: string;
    readonly isApproved: boolean;
    /** Today: it stays in the lanes as done until the day ends. */
    readonly isHandedOver: boolean;
    readonly wishedOn: string | null;
    /** For the promise. */
    readonly version: number;
  }[];
  readonly tasks: readonly {
    readonly id: string;
    readonly skill: string;
    readonly minutes: number;
    /** Of a running task shop minutes since it was begun; null before. */
    readonly workedMinutes: number | null;
    readonly version: number;
    readonly startedAt: string | null;
    readonly finishedAt: string | null;
  }[];
  /** Parts that are expected and not in hand. */
  readonly parts: readonly {
    readonly jobId: string;
    readonly lineKey: string;
    readonly description: string;
    readonly expectedOn: string | null;
  }[];
  /** Sponsors' loans that go back. */
  readonly loans: readonly {
    readonly jobId: string;
    readonly description: string;
    readonly returnDueOn: string;
  }[];
  /** Pins that the plan could not keep. */
  readonly lapsedPins: readonly LapsedPin[];
  readonly calendar: ShopCalendar;
  /** Who asks, as one of the people; null = somebody who does not work at the bench. */
  readonly myPersonId: string | null;
};

/** Who does what where and when; made anew when anything has changed. */
export function currentPlan(deps: Deps, actor: Actor): Promise<PlanView> {
  return deps.doors.inShop(actor.shopId, async (tx) =>
    toPlanView(await forwardPlan(deps, tx, actor, 'the plan was opened'), actor),
  );
}

export function toPlanView(
  { shop, plan, moved, because, rows, input }: Omit<ForwardPlan, 'revisions'>,
  actor: Pick<Actor, 'personId'>,
): PlanView {
  const soFar = ({ startedAt }: { readonly startedAt: Date | null }) =>
    startedAt === null ? null : workedMinutesBetween(startedAt, new Date(input.now), shop);
  return {
    plan,
    moved,
    because,
    people: rows.people.map(({ id, name }) => ({ id, name })),
    bays: rows.bays.map(({ id, name }) => ({ id, name })),
    jobs: rows.jobs.map((job) => ({
      id: job.id,
      number: job.number,
      title: job.title,
      customer: job.customer.name,
      vehicle: job.vehicle === null ? '' : `${job.vehicle.model.make} ${job.vehicle.model.model}`,
      isApproved: job.approvedAt !== null,
      isHandedOver: job.handedOverAt !== null,
      wishedOn: toShopDate(job.wishedOn),
      version: job.version,
    })),
    tasks: rows.jobs.flatMap((job) =>
      job.tasks.map((task) => ({
        id: task.id,
        skill: task.skill,
        minutes: task.minutes,
        workedMinutes: task.workedMinutes ?? soFar(task),
        version: task.version,
        startedAt: task.startedAt?.toISOString() ?? null,
        finishedAt: task.finishedAt?.toISOString() ?? null,
      })),
    ),
    parts: rows.jobs.flatMap((job) =>
      job.deliveries
        .filter((delivery) => delivery.receivedAt === null)
        .map(({ lineKey, description, expectedOn }) => ({
          jobId: job.id,
          lineKey,
          description,
          expectedOn: toShopDate(expectedOn),
        })),
    ),
    loans: rows.jobs.flatMap((job) =>
      job.deliveries.flatMap(({ description, returnDueOn }) => {
        const day = toShopDate(returnDueOn);
        return day === null ? [] : [{ jobId: job.id, description, returnDueOn: day }];
      }),
    ),
    lapsedPins: lapsedPins(rows),
    calendar: input.calendar,
    myPersonId: actor.personId,
  };
}

export type WhatIf =
  | { readonly kind: 'leave'; readonly personId: string; readonly fromOn: string; readonly toOn: string }
  | { readonly kind: 'part'; readonly jobId: string; readonly lineKey: string; readonly expectedOn: string };

export type WhatIfAnswer = {
  readonly moved: readonly ChangedPromise[];
  /** The same change with all jobs free to be reordered: what reshuffling would save. */
  readonly movedIfReplanned: readonly ChangedPromise[];
};

/** Whose promise moves, and by which task and resource, without changing anything. */
export function whatIf(deps: Deps, actor: Actor, question: WhatIf): Promise<WhatIfAnswer> {
  return deps.doors.inShop(actor.shopId, async (tx) => {
    const { input, plan } = await forwardPlan(deps, tx, actor, 'a what-if was asked');
    const changed =
      question.kind === 'leave'
        ? withLeave(input, question.personId, {
            fromOn: question.fromOn,
            toOn: question.toOn,
            fromTime: null,
            untilTime: null,
            note: 'what if',
          })
        : withPartDate(input, question.jobId, question.lineKey, question.expectedOn);
    if (isRefusal(changed)) throw refusedByEngine([changed.refusal]);
    const answer = await deps.compute.run('plan-what-if', { changed, plan });
    if (isRefusal(answer)) throw refusedByEngine([answer.refusal]);
    return answer;
  });
}

export type PromiseInput = {
  readonly jobId: string;
  readonly version: number;
  readonly promisedOn: string | null;
};

/** What the customer is told. CHANGED_MEANWHILE with both values when someone else was first. */
export function promiseJob(deps: Deps, actor: Actor, input: PromiseInput): Promise<PlanView> {
  return deps.doors.inShop(actor.shopId, async (tx) => {
    const before = await findJob(tx, actor, input.jobId);
    if (before === null) throw notFound('job');
    if (
      !(await changeJobRow(tx, actor, input.jobId, input.version, {
        promisedOn: fromShopDate(input.promisedOn),
      }))
    ) {
      throw await conflictError(tx, actor, {
        subject: 'job',
        subjectId: input.jobId,
        currentVersion: before.version,
        yours: { promisedOn: input.promisedOn },
        theirs: { promisedOn: toShopDate(before.promisedOn) },
      });
    }
    await record(tx, actor, {
      act: 'job.promised',
      subject: 'job',
      subjectId: input.jobId,
      before: { promisedOn: toShopDate(before.promisedOn) },
      after: { promisedOn: input.promisedOn },
    });
    return toPlanView(await forwardPlan(deps, tx, actor, `job ${before.number} was promised`), actor);
  });
}
