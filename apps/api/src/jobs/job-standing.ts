// Where a job stands follows from what has happened. The latest milestone wins; nobody sets it by hand.
import type { Standing } from '@gusset/contracts/job';
import type { Tx } from '@gusset/database';
import type { Actor } from '../deps.ts';

export type Milestones = {
  readonly surveyedAt: Date | null;
  readonly pricedAt: Date | null;
  readonly quotedAt: Date | null;
  readonly approvedAt: Date | null;
  readonly inBayAt: Date | null;
  readonly handedOverAt: Date | null;
  readonly declinedAt: Date | null;
};

/** A declined quote ends the job unless a later one was sent or approved. */
export function standingOf(job: Milestones): Standing {
  if (job.handedOverAt !== null) return 'handed-over';
  if (job.inBayAt !== null) return 'in-bay';
  if (job.approvedAt !== null) return 'approved';
  const declinedLast = job.declinedAt !== null && (job.quotedAt === null || job.quotedAt <= job.declinedAt);
  if (declinedLast) return 'declined';
  if (job.quotedAt !== null) return 'quoted';
  if (job.pricedAt !== null) return 'priced';
  return job.surveyedAt === null ? 'enquiry' : 'surveyed';
}

/** Notes milestones and works the standing out anew, in the transaction in which they happened. */
export async function noteMilestones(
  tx: Tx,
  actor: Pick<Actor, 'shopId'>,
  jobId: string,
  happened: Partial<Milestones>,
): Promise<Standing> {
  const where = { shopId_id: { shopId: actor.shopId, id: jobId } };
  const job = await tx.job.update({
    where,
    data: happened,
    select: {
      surveyedAt: true,
      pricedAt: true,
      quotedAt: true,
      approvedAt: true,
      inBayAt: true,
      handedOverAt: true,
      declinedAt: true,
    },
  });
  const standing = standingOf(job);
  await tx.job.update({ where, data: { standing }, select: { id: true } });
  return standing;
}
