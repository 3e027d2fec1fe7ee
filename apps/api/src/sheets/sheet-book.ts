// Opens the sheets of one job: drafts computed live, issued results where they exist, and what changed since.
import { createHash } from 'node:crypto';
import { SHEETS, type SheetChange, type SheetKind } from '@gusset/contracts/sheet';
import { canonicalJson, changedFigures, type SheetOutcome } from '@gusset/sheets';
import { z } from 'zod';
import { enclosuresInUse } from '../enclosures/enclosure.queries.ts';
import {
  findIssues,
  findSheet,
  type IssueRow,
  issueKey,
  latestIssues,
  type SheetSpot,
} from './sheet.queries.ts';
import type { SheetScope, UpstreamResults } from './sheet-binding.ts';
import { BOUND_KINDS, bindingOf } from './sheet-bindings.ts';

export const upstreamRefsSchema = z.array(
  z.object({ kind: z.string(), issueId: z.string(), revision: z.number(), fingerprint: z.string() }),
);
export type UpstreamRef = z.infer<typeof upstreamRefsSchema>[number];

export type OpenSheet = {
  readonly kind: SheetKind;
  /** Of sound and box, whose they are. */
  readonly enclosureId: string | null;
  /** 0 = not begun. */
  readonly version: number;
  readonly input: unknown;
  readonly facts: unknown;
  readonly upstream: UpstreamResults;
  /** Which upstream results are drafts, so that the screen can say so. */
  readonly draftUpstream: readonly SheetKind[];
  readonly outcome: SheetOutcome<unknown>;
  readonly savedAt: string | null;
};

/** One job's sheets; remembers what it opened, so that a sheet read by several is computed once. */
export function sheetBook(scope: SheetScope) {
  const opened = new Map<string, Promise<OpenSheet>>();
  let issues: Promise<ReadonlyMap<string, IssueRow>> | null = null;
  let enclosures: ReturnType<typeof enclosuresInUse> | null = null;
  const ofJob = { shopId: scope.actor.shopId, jobId: scope.job.id };

  function latest(): Promise<ReadonlyMap<string, IssueRow>> {
    issues ??= latestIssues(scope.tx, ofJob);
    return issues;
  }

  /** Which sheet is meant: where no enclosure is named, the job's first. */
  async function spotOf(kind: SheetKind, enclosureId: string | null): Promise<SheetSpot> {
    if (SHEETS[kind].belongsTo === 'job') return { kind, enclosureId: null };
    if (enclosureId !== null) return { kind, enclosureId };
    enclosures ??= enclosuresInUse(scope.tx, ofJob);
    const [first] = await enclosures;
    if (first === undefined) throw new Error(`job ${scope.job.id} has no enclosure in use`);
    return { kind, enclosureId: first.id };
  }

  async function open(kind: SheetKind, enclosureId: string | null = null): Promise<OpenSheet> {
    const spot = await spotOf(kind, enclosureId);
    const key = issueKey(kind, spot.enclosureId);
    const known = opened.get(key);
    if (known !== undefined) return known;
    const opening = openAnew(spot);
    opened.set(key, opening);
    return opening;
  }

  /** Its newest issue. */
  async function issueOf(kind: SheetKind, enclosureId: string | null): Promise<IssueRow | undefined> {
    const spot = await spotOf(kind, enclosureId);
    return (await latest()).get(issueKey(kind, spot.enclosureId));
  }

  async function openAnew({ kind, enclosureId }: SheetSpot): Promise<OpenSheet> {
    const { definition, loadFacts } = bindingOf(kind);
    const row = await findSheet(scope.tx, { ...ofJob, kind, enclosureId });
    const input: unknown = row === null ? definition.emptyInput() : definition.readInput(row.input);
    const { results, drafts } = await upstreamOf({ kind, enclosureId });
    const facts = await loadFacts({ ...scope, enclosureId }, input, results);
    return {
      kind,
      enclosureId,
      version: row?.version ?? 0,
      input,
      facts,
      upstream: results,
      draftUpstream: drafts,
      outcome: definition.compute(input, facts, results),
      savedAt: row?.updatedAt.toISOString() ?? null,
    };
  }

  /** Issued results where there are any; else what the draft says now. */
  async function upstreamOf({
    kind,
    enclosureId,
  }: SheetSpot): Promise<{ results: UpstreamResults; drafts: SheetKind[] }> {
    const results: Partial<Record<SheetKind, unknown>> = {};
    const drafts: SheetKind[] = [];
    for (const read of boundReads(kind)) {
      const { shared } = bindingOf(read).definition;
      const issue = await issueOf(read, enclosureId);
      if (issue !== undefined) {
        results[read] = shared.result(issue.result);
        continue;
      }
      const { outcome } = await open(read, enclosureId);
      results[read] = outcome.state === 'ready' ? shared.result(outcome.result) : null;
      drafts.push(read);
    }
    return { results, drafts };
  }

  /** What differs between the last issue of a sheet and what it would be issued from now. */
  async function changesSinceIssue(
    kind: SheetKind,
    enclosureId: string | null = null,
  ): Promise<readonly SheetChange[]> {
    const all = await latest();
    const spot = await spotOf(kind, enclosureId);
    const issue = all.get(issueKey(kind, spot.enclosureId));
    if (issue === undefined) return [];
    const { definition, loadFacts } = bindingOf(kind);
    const refs = upstreamRefsSchema.parse(issue.upstream);
    const issuedFrom = new Map(
      (
        await findIssues(
          scope.tx,
          scope.actor,
          refs.map((ref) => ref.issueId),
        )
      ).map((row) => [row.id, row]),
    );
    const moved = refs.flatMap((ref) => {
      const now = all.get(issueKey(ref.kind, issuedFrom.get(ref.issueId)?.enclosureId ?? null));
      return now === undefined || now.fingerprint === ref.fingerprint ? [] : [{ ref, now }];
    });
    const fromUpstream = moved.flatMap(({ ref, now }) => {
      const read = BOUND_KINDS.find((bound) => bound === ref.kind);
      const before = issuedFrom.get(ref.issueId);
      if (read === undefined || before === undefined) return [];
      const source = `${SHEETS[read].number} ${SHEETS[read].title}`;
      const { keyFigures } = bindingOf(read).definition.shared;
      return changedFigures(source, keyFigures(before.result), keyFigures(now.result));
    });
    const upstreamThen = Object.fromEntries(
      refs.map((ref) => [ref.kind, issuedFrom.get(ref.issueId)?.result ?? null]),
    );
    const factsNow = await loadFacts({ ...scope, enclosureId: spot.enclosureId }, issue.input, upstreamThen);
    const fromFacts =
      canonicalJson(plain(factsNow)) === canonicalJson(issue.facts)
        ? []
        : changedFigures('Records', definition.factFigures(issue.facts), definition.factFigures(factsNow));
    return [...fromUpstream, ...fromFacts];
  }

  return { open, issueOf, latest, changesSinceIssue };
}

export type SheetBook = ReturnType<typeof sheetBook>;

/** The sheets it reads that exist. */
export function boundReads(kind: SheetKind): readonly SheetKind[] {
  return SHEETS[kind].reads.filter((read) => BOUND_KINDS.includes(read));
}

/** Hash of everything that a result was computed from, engine version included. */
export function fingerprintOf(
  kind: SheetKind,
  sheet: Pick<OpenSheet, 'input' | 'facts'>,
  refs: readonly UpstreamRef[],
): string {
  const { engineVersion } = bindingOf(kind).definition;
  const from = {
    kind,
    engineVersion,
    input: plain(sheet.input),
    facts: plain(sheet.facts),
    upstream: refs.map((ref) => ref.fingerprint),
  };
  return createHash('sha256').update(canonicalJson(from)).digest('hex');
}

/** As the database will hold it. */
function plain(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value ?? null));
}
