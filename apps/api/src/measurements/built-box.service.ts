import type { BuiltBoxFit, CompareBuiltBoxInput } from '@gusset/contracts/measurement';
import { isRefusal } from '@gusset/units';
import type { Actor, Deps } from '../deps.ts';
import { notFound, refusedByEngine } from '../errors.ts';
import { inJob } from '../sheets/sheet.service.ts';
import { type DrawnBox, drawnBox } from './drawn-box.ts';
import { findSweeps } from './sweep.queries.ts';

/** What the built box is, beside what was drawn. */
export type BuiltBox = BuiltBoxFit & Pick<DrawnBox, 'from'>;

/** SHEET_INCOMPLETE where there is no drawing yet; REFUSED_BY_ENGINE where the sweep can't tell. */
export async function compareBuiltBox(
  deps: Deps,
  actor: Actor,
  { jobId, sweepId, blockedId }: CompareBuiltBoxInput,
): Promise<BuiltBox> {
  const { drawn, sweeps } = await inJob(deps, actor, jobId, async (scope) => {
    const wanted = blockedId === null ? [sweepId] : [sweepId, blockedId];
    const sweeps = await findSweeps(scope.tx, actor, { owner: 'job', id: jobId }, wanted);
    return { sweeps, drawn: await drawnBox(scope) };
  });
  const columnsOf = (id: string) => {
    const sweep = sweeps.find((each) => each.id === id);
    if (sweep === undefined) throw notFound('sweep');
    return sweep.columns;
  };
  const answer = await deps.compute.run('fit-built-box', {
    drawn: drawn.system,
    sweep: columnsOf(sweepId),
    blocked: blockedId === null ? null : columnsOf(blockedId),
  });
  if (isRefusal(answer)) throw refusedByEngine([answer.refusal]);
  return { ...answer, from: drawn.from };
}
