// Reading, saving, issuing and checking a sheet: the same for every kind.
import { revisionLetter, SHEETS, type SheetChange, type SheetKind } from '@gusset/contracts/sheet';
import { record } from '../data/audit.ts';
import { asRequiredJson } from '../data/json.ts';
import { conflictError } from '../data/versioned.ts';
import type { Actor, Deps } from '../deps.ts';
import { enclosuresInUse, findEnclosure } from '../enclosures/enclosure.queries.ts';
import { notFound, refusedByEngine, ShopError } from '../errors.ts';
import { findJob, type JobRow } from '../jobs/job.queries.ts';
import { findIssue, findSheet, type IssueRow, type SheetSpot, saveSheet } from './sheet.queries.ts';
import type { SheetScope, UpstreamResults } from './sheet-binding.ts';
import { bindingOf } from './sheet-bindings.ts';
import {
  boundReads,
  fingerprintOf,
  type OpenSheet,
  type SheetBook,
  sheetBook,
  type UpstreamRef,
} from './sheet-book.ts';

export type IssueMark = {
  readonly id: string;
  readonly revision: string;
  readonly issuedByName: string;
  readonly issuedAt: string;
  readonly checkedByName: string | null;
  readonly checkedAt: string | null;
};

export type SheetView = {
  readonly version: number;
  readonly input: unknown;
  readonly facts: unknown;
  readonly upstream: UpstreamResults;
  readonly draftUpstream: readonly SheetKind[];
  readonly outcome: OpenSheet['outcome'];
  readonly savedAt: string | null;
  readonly issue: (IssueMark & { readonly input: unknown; readonly result: unknown }) | null;
  readonly changes: readonly SheetChange[];
};

/** `enclosureId`: of sound and box, whose; left out = the job's first. */
type At = { readonly jobId: string; readonly enclosureId?: string | undefined };

export function readSheet(deps: Deps, actor: Actor, kind: SheetKind, at: At): Promise<SheetView> {
  return inJob(deps, actor, at.jobId, async (scope) => {
    const spot = await spotIn(scope, kind, at);
    return viewOf(sheetBook(scope), spot);
  });
}

/** The sheet that is meant. NOT_FOUND for an enclosure that is not the job's. */
async function spotIn({ tx, actor }: SheetScope, kind: SheetKind, at: At): Promise<SheetSpot> {
  if (SHEETS[kind].belongsTo === 'job') return { kind, enclosureId: null };
  const ofJob = { shopId: actor.shopId, jobId: at.jobId };
  const found =
    at.enclosureId === undefined
      ? (await enclosuresInUse(tx, ofJob))[0]
      : await findEnclosure(tx, { ...ofJob, id: at.enclosureId });
  if (found === undefined || found === null) throw notFound('enclosure');
  return { kind, enclosureId: found.id };
}

async function viewOf(book: SheetBook, { kind, enclosureId }: SheetSpot): Promise<SheetView> {
  const sheet = await book.open(kind, enclosureId);
  const issue = await book.issueOf(kind, enclosureId);
  return {
    version: sheet.version,
    input: sheet.input,
    facts: sheet.facts,
    upstream: sheet.upstream,
    draftUpstream: sheet.draftUpstream,
    outcome: sheet.outcome,
    savedAt: sheet.savedAt,
    issue:
      issue === undefined
        ? null
        : {
            ...toIssueMark(issue),
            input: bindingOf(kind).definition.readInput(issue.input),
            result: issue.result,
          },
    changes: await book.changesSinceIssue(kind, enclosureId),
  };
}

/** Saves a draft. CHANGED_MEANWHILE with both values where someone else saved first. */
export function saveDraft(
  deps: Deps,
  actor: Actor,
  kind: SheetKind,
  draft: At & { readonly version: number; readonly input: unknown },
): Promise<SheetView> {
  return inJob(deps, actor, draft.jobId, async (scope) => {
    const spot = await spotIn(scope, kind, draft);
    const before = await findSheet(scope.tx, { shopId: actor.shopId, jobId: draft.jobId, ...spot });
    if (!(await saveSheet(scope.tx, actor, { ...draft, ...spot }))) {
      throw await conflictError(scope.tx, actor, {
        subject: `sheet.${kind}`,
        subjectId: draft.jobId,
        currentVersion: before?.version ?? 1,
        yours: asRecord(draft.input),
        theirs: asRecord(before?.input),
      });
    }
    await record(scope.tx, actor, {
      act: 'sheet.saved',
      subject: `sheet.${kind}`,
      subjectId: draft.jobId,
      before: before?.input ?? null,
      after: draft.input,
    });
    await scope.tx.job.update({
      where: { shopId_id: { shopId: actor.shopId, id: draft.jobId } },
      data: { updatedAt: deps.clock.now() },
      select: { id: true },
    });
    return viewOf(sheetBook(scope), spot);
  });
}

/** Freezes the saved draft and its result under the next revision; the same fingerprint gives no new revision. */
export function issueSheet(
  deps: Deps,
  actor: Actor,
  kind: SheetKind,
  { version, ...at }: At & { readonly version: number },
): Promise<SheetView> {
  const { jobId } = at;
  return inJob(deps, actor, jobId, async (scope) => {
    const book = sheetBook(scope);
    const spot = await spotIn(scope, kind, at);
    const sheet = await book.open(kind, spot.enclosureId);
    if (sheet.version !== version) {
      throw new ShopError(
        'CHANGED_MEANWHILE',
        'The sheet was changed in between. Look at it again before issuing it.',
      );
    }
    const result = readyResult(sheet);
    const refs = await upstreamRefs(book, spot);
    const fingerprint = fingerprintOf(kind, sheet, refs);
    const last = await book.issueOf(kind, spot.enclosureId);
    if (last?.fingerprint === fingerprint) return viewOf(book, spot);
    const revision = (last?.revision ?? 0) + 1;
    const row = await scope.tx.sheetIssue.create({
      data: {
        shopId: actor.shopId,
        jobId,
        ...spot,
        revision,
        input: asRequiredJson(sheet.input),
        facts: asRequiredJson(sheet.facts),
        upstream: asRequiredJson(refs),
        result: asRequiredJson(result),
        fingerprint,
        issuedBy: actor.userId,
        issuedByName: actor.name,
        issuedAt: deps.clock.now(),
      },
      select: { id: true },
    });
    await bindingOf(kind).onIssued(scope, { input: sheet.input, result });
    await record(scope.tx, actor, {
      act: 'sheet.issued',
      subject: `sheet.${kind}`,
      subjectId: jobId,
      after: { issueId: row.id, revision: revisionLetter(revision), fingerprint },
    });
    return viewOf(sheetBook(scope), spot);
  });
}

/** A second person looks it over and puts their name in the title block. */
export function checkIssue(
  deps: Deps,
  actor: Actor,
  kind: SheetKind,
  input: At & { readonly issueId: string },
): Promise<SheetView> {
  return inJob(deps, actor, input.jobId, async (scope) => {
    const issue = await findIssue(scope.tx, actor, input.issueId);
    if (issue === null || issue.jobId !== input.jobId || issue.kind !== kind) throw notFound('issue');
    if (issue.issuedBy === actor.userId) {
      throw new ShopError(
        'NOT_ALLOWED',
        'A sheet is checked by someone other than the person who issued it.',
      );
    }
    await scope.tx.sheetIssue.updateMany({
      where: { shopId: actor.shopId, id: issue.id, checkedAt: null },
      data: { checkedByName: actor.name, checkedAt: deps.clock.now() },
    });
    await record(scope.tx, actor, {
      act: 'sheet.checked',
      subject: `sheet.${kind}`,
      subjectId: input.jobId,
      after: { issueId: issue.id },
    });
    return viewOf(sheetBook(scope), { kind, enclosureId: issue.enclosureId });
  });
}

/** Opens a transaction on one job of the shop; NOT_FOUND where it is not theirs. */
export function inJob<T>(
  deps: Deps,
  actor: Actor,
  jobId: string,
  work: (scope: SheetScope) => Promise<T>,
): Promise<T> {
  return deps.doors.inShop(actor.shopId, async (tx) => {
    const job: JobRow | null = await findJob(tx, actor, jobId);
    if (job === null) throw notFound('job');
    return work({ deps, tx, actor, job });
  });
}

function readyResult(sheet: OpenSheet): unknown {
  const { outcome } = sheet;
  if (outcome.state === 'ready') return outcome.result;
  if (outcome.state === 'refused') throw refusedByEngine(outcome.refusals);
  const fields = outcome.missing.map((missing) => ({
    path: missing.field,
    message: `Still missing: ${missing.what}.`,
  }));
  throw new ShopError('SHEET_INCOMPLETE', fields[0]?.message ?? 'The sheet is not complete.', { fields });
}

async function upstreamRefs(book: SheetBook, { kind, enclosureId }: SheetSpot): Promise<UpstreamRef[]> {
  const optional = bindingOf(kind).definition.optionalReads;
  const refs: UpstreamRef[] = [];
  for (const read of boundReads(kind)) {
    const issue = await book.issueOf(read, enclosureId);
    if (issue !== undefined) {
      const { id: issueId, revision, fingerprint } = issue;
      refs.push({ kind: read, issueId, revision, fingerprint });
      continue;
    }
    if (optional.includes(read)) continue;
    const { number, title } = SHEETS[read];
    throw new ShopError('UPSTREAM_NOT_ISSUED', `Issue ${number} ${title} first: this sheet reads it.`, {
      fields: [{ path: read, message: `${number} ${title} is still a draft.` }],
    });
  }
  return refs;
}

export function toIssueMark(issue: IssueRow): IssueMark {
  return {
    id: issue.id,
    revision: revisionLetter(issue.revision),
    issuedByName: issue.issuedByName,
    issuedAt: issue.issuedAt.toISOString(),
    checkedByName: issue.checkedByName,
    checkedAt: issue.checkedAt?.toISOString() ?? null,
  };
}

function asRecord(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? { ...value } : {};
}
