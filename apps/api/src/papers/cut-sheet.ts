// What hangs at the saw: the cut list and a map of every sheet, as issued; a draft says that it is one.
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { CuttingFacts, CuttingInput, CuttingResult } from '@gusset/contracts/cutting-sheet';
import type { PaperSize } from '@gusset/contracts/drawings';
import { revisionLetter, SHEETS } from '@gusset/contracts/sheet';
import { cutSheetDocument, type WorkPage } from '@gusset/drawings';
import { renderPdf } from '@gusset/drawings/pdf';
import {
  cutMaterials,
  gluePage,
  glueUp,
  machineWork,
  routerPage,
  type SheetOutcome,
  sawPage,
  testFitWarnings,
} from '@gusset/sheets';
import { formatLength, isRefusal, toShopTime } from '@gusset/units';
import type { Actor, Deps } from '../deps.ts';
import { notFound, refusedByEngine, ShopError } from '../errors.ts';
import { toJobView } from '../jobs/job.service.ts';
import { findIssues } from '../sheets/sheet.queries.ts';
import { inJob } from '../sheets/sheet.service.ts';
import type { SheetScope } from '../sheets/sheet-binding.ts';
import { bindingOf } from '../sheets/sheet-bindings.ts';
import { sheetBook, upstreamRefsSchema } from '../sheets/sheet-book.ts';
import { findShop } from '../shops/shop.queries.ts';
import { toShopView } from '../shops/shop.service.ts';

/** Longest text that a cell of the title block takes. */
const CELL_LIMIT = 200;

type Asked = { readonly jobId: string; readonly paper: PaperSize | null };

export async function cutSheetPaper(
  deps: Deps,
  actor: Actor,
  { jobId, paper }: Asked,
): Promise<{ readonly pdf: Uint8Array; readonly fileName: string }> {
  const { job, shop, standing } = await inJob(deps, actor, jobId, async (scope) => {
    const found = await findShop(scope.tx, actor.shopId);
    if (found === null) throw notFound('shop');
    return { job: toJobView(scope.job, actor), shop: toShopView(found), standing: await cuttingOf(scope) };
  });
  const { settings } = shop;
  const { result, revision, drawnBy, checkedBy } = standing;
  const format = { unit: settings.lengthUnit, denominator: settings.inchDenominator } as const;
  const length = (mm: number) => formatLength(mm, { ...format, style: 'drawing' });
  const now = deps.clock.now();
  const { number, title } = SHEETS.cutting;
  const document = cutSheetDocument({
    paper: paper ?? settings.paper,
    language: 'en',
    titleBlock: {
      shop: shop.name,
      vehicle: (job.vehicle?.name ?? '').slice(0, CELL_LIMIT),
      customer: job.customer.name.slice(0, CELL_LIMIT),
      job: String(job.number),
      revision: revision ?? 'draft',
      drawn: drawnBy,
      checked: checkedBy,
      units: settings.lengthUnit,
      date: toShopTime(now.toISOString(), shop.timeZone).date,
      sheet: `${number} ${title}`,
    },
    kerfMm: result.kerfMm,
    materials: cutMaterials(result, length),
    notes: paperNotes(standing),
    work: workPages(standing, length),
    formatLength: length,
  });
  const fileName = `cut-sheet-${job.number}-${revision === null ? 'draft' : `rev-${revision}`}.pdf`;
  return { pdf: await renderPdf(document, { createdAt: now }), fileName };
}

/** Saw, router, then the glue-up of the box that it was cut for. */
function workPages(
  { result, input, facts, box }: Standing,
  length: (mm: number) => string,
): readonly WorkPage[] {
  const works = machineWork(result, input, facts);
  const router = routerPage(works, length);
  const plan = box === null ? null : glueUp(box, input);
  return [
    sawPage(works, result.trimMm, length),
    ...(router === null ? [] : [router]),
    ...(plan === null || isRefusal(plan) ? [] : [gluePage(plan, input, length)]),
  ];
}

type Standing = {
  readonly result: CuttingResult;
  readonly input: CuttingInput;
  readonly facts: Pick<CuttingFacts, 'saw'>;
  readonly box: BoxSheetResult | null;
  /** Null = a draft. */
  readonly revision: string | null;
  readonly drawnBy: string;
  readonly checkedBy: string | null;
};

/** The newest issue; where there is none, what the draft says now. */
export async function cuttingOf(scope: SheetScope): Promise<Standing> {
  const book = sheetBook(scope);
  const issue = (await book.latest()).get('cutting');
  const { readInput } = bindingOf('cutting').definition;
  if (issue !== undefined) {
    // What is frozen with an issue comes from the cutting sheet's own definition, as at `anySheet`.
    const [input, facts, frozen]: readonly unknown[] = [readInput(issue.input), issue.facts, issue.result];
    return {
      result: frozen as CuttingResult,
      input: input as CuttingInput,
      facts: facts as CuttingFacts,
      box: await boxCutFrom(scope, issue.upstream),
      revision: revisionLetter(issue.revision),
      drawnBy: issue.issuedByName,
      checkedBy: issue.checkedByName,
    };
  }
  const draft = await book.open('cutting');
  const { box } = draft.upstream;
  return {
    // The same: a draft's own input, facts and result.
    result: readyResult(draft.outcome as SheetOutcome<CuttingResult>),
    input: draft.input as CuttingInput,
    facts: draft.facts as CuttingFacts,
    box: (box ?? null) as BoxSheetResult | null,
    revision: null,
    drawnBy: scope.actor.name,
    checkedBy: null,
  };
}

/** The issue of the box that an issue of the cutting sheet read. */
async function boxCutFrom({ tx, actor }: SheetScope, upstream: unknown): Promise<BoxSheetResult | null> {
  const ref = upstreamRefsSchema.parse(upstream).find(({ kind }) => kind === 'box');
  const [issue] = ref === undefined ? [] : await findIssues(tx, actor, [ref.issueId]);
  const frozen: unknown = issue?.result ?? null;
  return frozen as BoxSheetResult | null; // written by the box sheet, as above
}

function readyResult(outcome: SheetOutcome<CuttingResult>): CuttingResult {
  if (outcome.state === 'ready') return outcome.result;
  if (outcome.state === 'refused') throw refusedByEngine(outcome.refusals);
  const what = outcome.missing.map((missing) => missing.what).join(', ');
  throw new ShopError('SHEET_INCOMPLETE', `There is nothing to print yet. Still missing: ${what}.`);
}

function paperNotes({ result, input, box, revision }: Standing): readonly string[] {
  const sheets = result.sheetsUsed.map(({ name, count }) => `${count} × ${name}`).join(', ');
  return [
    ...(revision === null ? ['DRAFT: this sheet has not been issued yet; sizes may still change.'] : []),
    ...(result.isDraft
      ? [
          'DRAFT: the real thickness of a sheet has not been settled. Measure it with a calliper before cutting.',
        ]
      : []),
    ...(box === null ? [] : testFitWarnings(input.testFit ?? null, box)),
    sheets === '' ? 'Cut from offcuts alone.' : `Sheets: ${sheets}.`,
    'Wood dust harms: extraction on, fitted respirator. Lift a full sheet with two people or a panel carrier.',
  ];
}
