// The index of a job's sheets: each with its mark (empty, hatched draft, solid issue) and what changed upstream.
import { may } from '@gusset/contracts/access';
import { revisionLetter, SHEETS, type SheetChange, type SheetKind } from '@gusset/contracts/sheet';
import { canonicalJson } from '@gusset/sheets';
import { enclosuresInUse } from '../enclosures/enclosure.queries.ts';
import { findSheets, issueKey } from './sheet.queries.ts';
import type { SheetScope } from './sheet-binding.ts';
import { BOUND_KINDS, bindingOf } from './sheet-bindings.ts';
import { sheetBook } from './sheet-book.ts';

export type IndexEntry = {
  readonly kind: SheetKind;
  readonly number: string;
  readonly title: string;
  /** `empty` = not begun, `draft` = entered or changed since its issue, `issued` = stands as issued. */
  readonly mark: 'empty' | 'draft' | 'issued';
  readonly revision: string | null;
  readonly issuedAt: string | null;
  /** What differs between what it was issued from and what stands now: the red delta opens this list. */
  readonly changes: readonly SheetChange[];
};

export async function sheetIndexOf(scope: SheetScope): Promise<IndexEntry[]> {
  const { tx, actor, job } = scope;
  const book = sheetBook(scope);
  const drafts = new Map(
    (await findSheets(tx, { shopId: actor.shopId, jobId: job.id })).map((sheet) => [
      issueKey(sheet.kind, sheet.enclosureId),
      sheet,
    ]),
  );
  const issues = await book.latest();
  const [first] = await enclosuresInUse(tx, { shopId: actor.shopId, jobId: job.id });
  const entries: IndexEntry[] = [];
  for (const kind of BOUND_KINDS.filter((bound) => may(actor.role, SHEETS[bound].readPermission))) {
    const key = issueKey(kind, SHEETS[kind].belongsTo === 'enclosure' ? (first?.id ?? null) : null);
    const draft = drafts.get(key);
    const issue = issues.get(key);
    const { readInput } = bindingOf(kind).definition;
    const unchanged =
      issue !== undefined &&
      (draft === undefined ||
        canonicalJson(readInput(draft.input)) === canonicalJson(readInput(issue.input)));
    entries.push({
      kind,
      number: SHEETS[kind].number,
      title: SHEETS[kind].title,
      mark: unchanged ? 'issued' : draft === undefined ? 'empty' : 'draft',
      revision: issue === undefined ? null : revisionLetter(issue.revision),
      issuedAt: issue?.issuedAt.toISOString() ?? null,
      changes: await book.changesSinceIssue(kind),
    });
  }
  return entries;
}
