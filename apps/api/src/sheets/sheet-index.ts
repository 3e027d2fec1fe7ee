// The index of a job's sheets: each with its mark (empty, hatched draft, solid issue) and its delta.
import { may } from '@gusset/contracts/access';
import { revisionLetter, SHEETS, type SheetKind } from '@gusset/contracts/sheet';
import type { Tx } from '@gusset/database';
import { canonicalJson } from '@gusset/sheets';
import { findSheets, latestIssues } from './sheet.queries.ts';
import { BOUND_KINDS } from './sheet-bindings.ts';

export type IndexEntry = {
  readonly kind: SheetKind;
  readonly number: string;
  readonly title: string;
  /** `empty` = not begun, `draft` = entered or changed since its issue, `issued` = stands as issued. */
  readonly mark: 'empty' | 'draft' | 'issued';
  readonly revision: string | null;
  readonly issuedAt: string | null;
  /** A sheet that it reads was issued anew since. */
  readonly delta: boolean;
};

export async function sheetIndexOf(
  tx: Tx,
  actor: { readonly shopId: string; readonly role: Parameters<typeof may>[0] },
  jobId: string,
): Promise<IndexEntry[]> {
  const ofJob = { shopId: actor.shopId, jobId };
  const drafts = new Map((await findSheets(tx, ofJob)).map((sheet) => [sheet.kind, sheet]));
  const issues = await latestIssues(tx, ofJob);
  return BOUND_KINDS.filter((kind) => may(actor.role, SHEETS[kind].readPermission)).map((kind) => {
    const draft = drafts.get(kind);
    const issue = issues.get(kind);
    const unchanged =
      issue !== undefined &&
      (draft === undefined || canonicalJson(draft.input) === canonicalJson(issue.input));
    return {
      kind,
      number: SHEETS[kind].number,
      title: SHEETS[kind].title,
      mark: unchanged ? 'issued' : draft === undefined ? 'empty' : 'draft',
      revision: issue === undefined ? null : revisionLetter(issue.revision),
      issuedAt: issue?.issuedAt.toISOString() ?? null,
      delta: issue !== undefined && readsSomethingNewer(issue.upstream, issues),
    };
  });
}

function readsSomethingNewer(
  upstream: unknown,
  issues: ReadonlyMap<string, { readonly fingerprint: string }>,
): boolean {
  if (!Array.isArray(upstream)) return false;
  return upstream.some((ref) => {
    const now = issues.get(String(ref?.kind));
    return now !== undefined && now.fingerprint !== ref?.fingerprint;
  });
}
