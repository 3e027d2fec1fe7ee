// What hangs at the saw: the cut list and a map of every sheet, as issued; a draft says that it is one.
import type { CuttingResult } from '@gusset/contracts/cutting-sheet';
import type { PaperSize } from '@gusset/contracts/drawings';
import { revisionLetter, SHEETS } from '@gusset/contracts/sheet';
import { cutSheetDocument } from '@gusset/drawings';
import { renderPdf } from '@gusset/drawings/pdf';
import { cutMaterials, type SheetOutcome } from '@gusset/sheets';
import { formatLength, toShopTime } from '@gusset/units';
import type { Actor, Deps } from '../deps.ts';
import { notFound, refusedByEngine, ShopError } from '../errors.ts';
import { toJobView } from '../jobs/job.service.ts';
import { inJob } from '../sheets/sheet.service.ts';
import type { SheetScope } from '../sheets/sheet-binding.ts';
import { sheetBook } from '../sheets/sheet-book.ts';
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
    notes: paperNotes(result, revision),
    formatLength: length,
  });
  const fileName = `cut-sheet-${job.number}-${revision === null ? 'draft' : `rev-${revision}`}.pdf`;
  return { pdf: await renderPdf(document, { createdAt: now }), fileName };
}

type Standing = {
  readonly result: CuttingResult;
  /** Null = a draft. */
  readonly revision: string | null;
  readonly drawnBy: string;
  readonly checkedBy: string | null;
};

/** The newest issue; where there is none, what the draft says now. */
async function cuttingOf(scope: SheetScope): Promise<Standing> {
  const book = sheetBook(scope);
  const issue = (await book.latest()).get('cutting');
  if (issue !== undefined) {
    const frozen: unknown = issue.result;
    return {
      // An issue's result comes from the cutting sheet's own computation, as at `anySheet`.
      result: frozen as CuttingResult,
      revision: revisionLetter(issue.revision),
      drawnBy: issue.issuedByName,
      checkedBy: issue.checkedByName,
    };
  }
  const result = readyResult((await book.open('cutting')).outcome as SheetOutcome<CuttingResult>); // the same
  return { result, revision: null, drawnBy: scope.actor.name, checkedBy: null };
}

function readyResult(outcome: SheetOutcome<CuttingResult>): CuttingResult {
  if (outcome.state === 'ready') return outcome.result;
  if (outcome.state === 'refused') throw refusedByEngine(outcome.refusals);
  const what = outcome.missing.map((missing) => missing.what).join(', ');
  throw new ShopError('SHEET_INCOMPLETE', `There is nothing to print yet. Still missing: ${what}.`);
}

function paperNotes(result: CuttingResult, revision: string | null): readonly string[] {
  const sheets = result.sheetsUsed.map(({ name, count }) => `${count} × ${name}`).join(', ');
  return [
    ...(revision === null ? ['DRAFT: this sheet has not been issued yet; sizes may still change.'] : []),
    ...(result.isDraft
      ? [
          'DRAFT: the real thickness of a sheet has not been settled. Measure it with a calliper before cutting.',
        ]
      : []),
    sheets === '' ? 'Cut from offcuts alone.' : `Sheets: ${sheets}.`,
    'Wood dust harms: extraction on, fitted respirator. Lift a full sheet with two people or a panel carrier.',
  ];
}
