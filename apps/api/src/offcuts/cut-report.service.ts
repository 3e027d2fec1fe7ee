// "It has been cut": only this moves stock, and undoing it moves everything back.
import type { CuttingInput, CuttingResult } from '@gusset/contracts/cutting-sheet';
import type { CutReportView } from '@gusset/contracts/offcuts';
import type { Tx } from '@gusset/database';
import { z } from 'zod';
import { record } from '../data/audit.ts';
import { nextNumber } from '../data/counter.ts';
import { once } from '../data/idempotency.ts';
import { asRequiredJson } from '../data/json.ts';
import type { Actor, Deps } from '../deps.ts';
import { notFound, ShopError } from '../errors.ts';
import { findParts } from '../records/kinds/part.queries.ts';
import { inJob } from '../sheets/sheet.service.ts';
import { bindingOf } from '../sheets/sheet-bindings.ts';
import { sheetBook } from '../sheets/sheet-book.ts';
import { type CutReportRow, findOffcuts, findReports, putOffcut } from './offcut.queries.ts';
import { toRacked } from './offcut.service.ts';

const takenSchema = z.array(z.strictObject({ partId: z.string(), count: z.number().int().nonnegative() }));
type Taken = z.infer<typeof takenSchema>;
type Used = { readonly id: string; readonly partId: string };

export function cutReportsOf(deps: Deps, actor: Actor, jobId: string): Promise<CutReportView[]> {
  return inJob(deps, actor, jobId, async ({ tx }) => views(tx, actor, jobId));
}

/**
 * The newest issue of the cutting sheet has been cut. NOT_ACCEPTED where none is issued, where it was reported before, or
 * where an offcut that it was laid out on is no longer in the rack.
 */
export function reportCut(
  deps: Deps,
  actor: Actor,
  { key, jobId, issueId }: { readonly key: string; readonly jobId: string; readonly issueId: string },
): Promise<CutReportView[]> {
  return inJob(deps, actor, jobId, (scope) =>
    once(scope.tx, actor, key, { jobId, issueId }, async () => {
      const { tx } = scope;
      const issue = (await sheetBook(scope).latest()).get('cutting');
      if (issue === undefined || issue.id !== issueId) {
        throw new ShopError(
          'NOT_ACCEPTED',
          'The cutting sheet has been issued anew. Look at it again before you report it cut.',
        );
      }
      const standing = await tx.cutReport.count({ where: { shopId: actor.shopId, issueId, undoneAt: null } });
      if (standing > 0) throw new ShopError('NOT_ACCEPTED', 'This revision has been reported cut already.');
      // What is frozen with an issue comes from the cutting sheet's own definition, as at `anySheet`.
      const [input, frozen]: readonly unknown[] = [
        bindingOf('cutting').definition.readInput(issue.input),
        issue.result,
      ];
      const result = frozen as CuttingResult;
      const taken = await takeSheets(tx, actor, result);
      const { id } = await tx.cutReport.create({
        data: {
          shopId: actor.shopId,
          jobId,
          issueId,
          taken: asRequiredJson(taken),
          reportedBy: actor.userId,
          reportedByName: actor.name,
          reportedAt: deps.clock.now(),
        },
        select: { id: true },
      });
      await useOffcuts(tx, actor, id, usedOffcuts(input as CuttingInput, result));
      await rackLeftovers(tx, actor, id, result);
      await record(tx, actor, {
        act: 'cutting.cut',
        subject: 'sheet.cutting',
        subjectId: jobId,
        after: { issueId, taken },
      });
      return views(tx, actor, jobId);
    }),
  );
}

/** NOT_ACCEPTED where something that it left has been used in another job since. */
export function undoCut(
  deps: Deps,
  actor: Actor,
  { jobId, reportId }: { readonly jobId: string; readonly reportId: string },
): Promise<CutReportView[]> {
  return inJob(deps, actor, jobId, async ({ tx }) => {
    const report = (await findReports(tx, actor, jobId)).find(({ id }) => id === reportId);
    if (report === undefined) throw notFound('report');
    const gone = report.left.filter(({ usedInId }) => usedInId !== null).map(({ number }) => number);
    if (gone.length > 0) {
      throw new ShopError(
        'NOT_ACCEPTED',
        `Offcut ${gone.join(', ')} of this cut has been used since. Undo that cut first.`,
      );
    }
    const where = { shopId: actor.shopId };
    await tx.offcut.deleteMany({ where: { ...where, cutInId: reportId } });
    await tx.offcut.updateMany({
      where: { ...where, usedInId: reportId },
      data: { usedInId: null, version: { increment: 1 } },
    });
    for (const { partId, count } of takenSchema.parse(report.taken)) {
      await tx.part.updateMany({
        where: { ...where, id: partId },
        data: { stockQuantity: { increment: count } },
      });
    }
    await tx.cutReport.updateMany({
      where: { ...where, id: reportId, undoneAt: null },
      data: { undoneAt: deps.clock.now(), undoneByName: actor.name },
    });
    await record(tx, actor, {
      act: 'cutting.cut-undone',
      subject: 'sheet.cutting',
      subjectId: jobId,
      before: { reportId },
    });
    return views(tx, actor, jobId);
  });
}

/** Out of stock comes what is there; the rest was bought for the job and never went in. */
async function takeSheets(tx: Tx, actor: Actor, { sheetsUsed }: CuttingResult): Promise<Taken> {
  const taken: Taken = [];
  for (const { partId, count } of sheetsUsed) {
    const part = await tx.part.findUnique({
      where: { shopId_id: { shopId: actor.shopId, id: partId } },
      select: { stockQuantity: true },
    });
    const out = Math.min(count, Math.floor(Math.max(0, part?.stockQuantity ?? 0)));
    if (out === 0) continue;
    await tx.part.updateMany({
      where: { shopId: actor.shopId, id: partId },
      data: { stockQuantity: { decrement: out } },
    });
    taken.push({ partId, count: out });
  }
  return taken;
}

/** Offcuts from the rack that the layout really lies on, and the board each has to be of. */
function usedOffcuts({ offcuts }: CuttingInput, { boards }: CuttingResult): readonly Used[] {
  const stockIds = new Set(boards.flatMap(({ layout }) => layout.sheets.map(({ stockId }) => stockId)));
  return offcuts.flatMap(({ key, offcutId, boardId }) =>
    offcutId !== null && boardId !== null && stockIds.has(`offcut:${key}`)
      ? [{ id: offcutId, partId: boardId }]
      : [],
  );
}

async function useOffcuts(tx: Tx, actor: Actor, reportId: string, used: readonly Used[]): Promise<void> {
  if (used.length === 0) return;
  const { count } = await tx.offcut.updateMany({
    where: { shopId: actor.shopId, OR: [...used], usedInId: null, thrownAwayAt: null },
    data: { usedInId: reportId, version: { increment: 1 } },
  });
  if (count === used.length) return;
  const racked = await findOffcuts(
    tx,
    actor,
    used.map(({ id }) => id),
  );
  const missing = racked.filter((row) => row.usedInId !== reportId).map(({ number }) => number);
  throw new ShopError(
    'NOT_ACCEPTED',
    `Offcut ${missing.join(', ') || 'chosen here'} is no longer in the rack. Choose another on the sheet and issue it again.`,
  );
}

async function rackLeftovers(
  tx: Tx,
  actor: Actor,
  reportId: string,
  { boards }: CuttingResult,
): Promise<void> {
  for (const board of boards) {
    for (const { isOffcut, offcuts } of board.layout.sheets) {
      for (const { lengthMm, widthMm } of offcuts) {
        // A rack offcut lies with its grain along x already; of a whole sheet it may run across.
        const isCrossed = !isOffcut && board.grain === 'width';
        await putOffcut(tx, actor, {
          partId: board.boardId,
          number: await nextNumber(tx, actor.shopId, 'offcut'),
          lengthMm: isCrossed ? widthMm : lengthMm,
          widthMm: isCrossed ? lengthMm : widthMm,
          thicknessMm: board.thicknessMm,
          cutInId: reportId,
        });
      }
    }
  }
}

async function views(tx: Tx, actor: Actor, jobId: string): Promise<CutReportView[]> {
  const reports = await findReports(tx, actor, jobId);
  const taken = reports.map(({ taken: kept }) => takenSchema.parse(kept));
  const ids = [...new Set(taken.flat().map(({ partId }) => partId))];
  const parts = ids.length === 0 ? [] : await findParts(tx, actor, ids);
  const nameOf = new Map(
    parts.map(({ id, maker, name }) => [id, [maker, name].filter((word) => word !== '').join(' ')]),
  );
  return reports.map((report, index) =>
    toView(
      report,
      (taken[index] ?? []).map(({ partId, count }) => ({ partId, count, name: nameOf.get(partId) ?? '' })),
    ),
  );
}

function toView(report: CutReportRow, taken: CutReportView['taken']): CutReportView {
  return {
    id: report.id,
    issueId: report.issueId,
    reportedByName: report.reportedByName,
    reportedAt: report.reportedAt.toISOString(),
    taken,
    left: report.left.map(toRacked),
    usedNumbers: report.used.map(({ number }) => number),
  };
}
