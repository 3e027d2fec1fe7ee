// The side profile of the box as it is drawn now, and the opening it has to pass, at full size: for cardboard, before it is
// issued and before anything is cut.
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { PaperSize } from '@gusset/contracts/drawings';
import type { SurveyResult } from '@gusset/contracts/survey';
import { outlinesDxf } from '@gusset/drawings/machine-files';
import { renderPdf } from '@gusset/drawings/pdf';
import { type MockUpPart, mockUpDocument, profileMark, type SheetOutcome } from '@gusset/sheets';
import type { Actor, Deps } from '../deps.ts';
import { notFound, refusedByEngine, ShopError } from '../errors.ts';
import { inJob } from '../sheets/sheet.service.ts';
import { sheetBook } from '../sheets/sheet-book.ts';
import { findShop } from '../shops/shop.queries.ts';
import { toShopView } from '../shops/shop.service.ts';

type Asked = { readonly jobId: string; readonly paper: PaperSize | null };
type Opening = SurveyResult['cavity']['opening'];

/** SHEET_INCOMPLETE or REFUSED_BY_ENGINE where there is no box to try. */
export async function mockUpPaper(
  deps: Deps,
  actor: Actor,
  { jobId, paper }: Asked,
): Promise<{ readonly pdf: Uint8Array; readonly fileName: string }> {
  const { job, shop, box, parts } = await mockUpOf(deps, actor, jobId);
  const document = mockUpDocument({
    paper: paper ?? shop.settings.paper,
    title: `Mock-up, job ${job.number}`,
    author: shop.name,
    facts: `job ${job.number} · profile ${profileMark(box)}`,
    parts,
  });
  const pdf = await renderPdf(document, { createdAt: deps.clock.now() });
  return { pdf, fileName: `mock-up-${job.number}-${profileMark(box)}.pdf` };
}

/** The same outlines for a machine. */
export async function mockUpDxf(
  deps: Deps,
  actor: Actor,
  jobId: string,
): Promise<{ readonly dxf: string; readonly fileName: string }> {
  const { job, box, parts } = await mockUpOf(deps, actor, jobId);
  return { dxf: outlinesDxf(parts), fileName: `mock-up-${job.number}-${profileMark(box)}.dxf` };
}

async function mockUpOf(deps: Deps, actor: Actor, jobId: string) {
  const { job, shop, box, opening } = await inJob(deps, actor, jobId, async (scope) => {
    const found = await findShop(scope.tx, actor.shopId);
    if (found === null) throw notFound('shop');
    const draft = await sheetBook(scope).open('box');
    // A draft's own outcome and upstream, as at `anySheet`.
    const survey = (draft.upstream.survey ?? null) as SurveyResult | null;
    return {
      job: scope.job,
      shop: toShopView(found),
      box: readyBox(draft.outcome as SheetOutcome<BoxSheetResult>),
      opening: survey?.cavity.opening ?? null,
    };
  });
  const parts: readonly MockUpPart[] = [
    { name: 'Side profile, finished', outline: box.box.section.finished },
    ...(opening === null ? [] : [openingPart(opening)]),
  ];
  return { job, shop, box, parts };
}

/** As measured, square on: the hole that the mock-up has to pass. */
function openingPart({ widthMm, heightMm }: Opening): MockUpPart {
  const [left, right] = [-widthMm / 2, widthMm / 2];
  return {
    name: 'Opening, as measured',
    outline: [
      { xMm: left, yMm: 0 },
      { xMm: right, yMm: 0 },
      { xMm: right, yMm: heightMm },
      { xMm: left, yMm: heightMm },
    ],
  };
}

function readyBox(outcome: SheetOutcome<BoxSheetResult>): BoxSheetResult {
  if (outcome.state === 'ready') return outcome.result;
  if (outcome.state === 'refused') throw refusedByEngine(outcome.refusals);
  const what = outcome.missing.map((missing) => missing.what).join(', ');
  throw new ShopError('SHEET_INCOMPLETE', `There is no box to try yet. Still missing: ${what}.`);
}
