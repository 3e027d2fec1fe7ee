// Sheet 03 on paper, as issued; a draft says that it is one.
import type { PaperSize } from '@gusset/contracts/drawings';
import { revisionLetter, SHEETS } from '@gusset/contracts/sheet';
import {
  designOf,
  type SoundInput,
  type SoundResult,
  toSoundInput,
  toSoundResult,
} from '@gusset/contracts/sound';
import { soundSheetDocument } from '@gusset/drawings';
import { renderPdf } from '@gusset/drawings/pdf';
import { type SheetOutcome, soundPaper } from '@gusset/sheets';
import { toShopTime } from '@gusset/units';
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

export async function soundSheetPaper(
  deps: Deps,
  actor: Actor,
  { jobId, paper }: Asked,
): Promise<{ readonly pdf: Uint8Array; readonly fileName: string }> {
  const { job, shop, standing } = await inJob(deps, actor, jobId, async (scope) => {
    const found = await findShop(scope.tx, actor.shopId);
    if (found === null) throw notFound('shop');
    return { job: toJobView(scope.job, actor), shop: toShopView(found), standing: await soundOf(scope) };
  });
  const { settings } = shop;
  const { input, result, revision, drawnBy, checkedBy } = standing;
  const now = deps.clock.now();
  const { number, title } = SHEETS.sound;
  const page = soundPaper(designOf(input), result);
  const document = soundSheetDocument({
    ...page,
    notes: revision === null ? ['DRAFT: this sheet has not been issued yet.', ...page.notes] : page.notes,
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
  });
  const fileName = `sound-${job.number}-${revision === null ? 'draft' : `rev-${revision}`}.pdf`;
  return { pdf: await renderPdf(document, { createdAt: now }), fileName };
}

type Standing = {
  readonly input: SoundInput;
  readonly result: SoundResult;
  /** Null = a draft. */
  readonly revision: string | null;
  readonly drawnBy: string;
  readonly checkedBy: string | null;
};

/** The newest issue; where there is none, what the draft says now. */
async function soundOf(scope: SheetScope): Promise<Standing> {
  const book = sheetBook(scope);
  const issue = (await book.latest()).get('sound');
  if (issue !== undefined) {
    const [input, frozen]: unknown[] = [issue.input, issue.result];
    return {
      // An issue's input and result come from the sound sheet's own definition, as at `anySheet`.
      input: toSoundInput(input as SoundInput),
      result: toSoundResult(frozen as SoundResult),
      revision: revisionLetter(issue.revision),
      drawnBy: issue.issuedByName,
      checkedBy: issue.checkedByName,
    };
  }
  const draft = await book.open('sound');
  return {
    input: toSoundInput(draft.input as SoundInput), // the same
    result: readyResult(draft.outcome as SheetOutcome<SoundResult>),
    revision: null,
    drawnBy: scope.actor.name,
    checkedBy: null,
  };
}

function readyResult(outcome: SheetOutcome<SoundResult>): SoundResult {
  if (outcome.state === 'ready') return outcome.result;
  if (outcome.state === 'refused') throw refusedByEngine(outcome.refusals);
  const what = outcome.missing.map((missing) => missing.what).join(', ');
  throw new ShopError('SHEET_INCOMPLETE', `There is nothing to print yet. Still missing: ${what}.`);
}
