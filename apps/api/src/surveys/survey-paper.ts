// The blank measuring sheet of a survey: the section with its letters, and a box to write in for each of them.
import { sketchCavity } from '@gusset/cargo';
import type { PaperSize } from '@gusset/contracts/drawings';
import { surveySheetDocument } from '@gusset/drawings';
import { renderPdf } from '@gusset/drawings/pdf';
import { surveyForm, surveyView } from '@gusset/sheets';
import { isRefusal, toShopTime } from '@gusset/units';
import type { Actor, Deps } from '../deps.ts';
import { notFound, refusedByEngine } from '../errors.ts';
import { findShop } from '../shops/shop.queries.ts';
import { toShopView } from '../shops/shop.service.ts';
import { extrasOf, formKindOf, modelNameOf } from './survey.queries.ts';
import { surveyOrNotFound } from './survey-scope.ts';

/** Longest text that a cell of the title block takes. */
const CELL_LIMIT = 200;

export async function surveyPaper(
  { doors, clock }: Deps,
  actor: Actor,
  { surveyId, paper }: { readonly surveyId: string; readonly paper: PaperSize | null },
): Promise<Uint8Array> {
  const { row, shop } = await doors.inShop(actor.shopId, async (tx) => {
    const found = await findShop(tx, actor.shopId);
    if (found === null) throw notFound('shop');
    return { row: await surveyOrNotFound(tx, actor, surveyId), shop: toShopView(found) };
  });
  const extras = extrasOf(row);
  const form = surveyForm(formKindOf(row), extras.free);
  if (isRefusal(form)) throw refusedByEngine([form.refusal]);
  const now = clock.now();
  const name = modelNameOf(row.model);
  const sketch = sketchCavity(form, []);
  const drawn = {
    title: name,
    form,
    activeKey: null,
    readingText: () => null,
    showsAll: false, // checks and detail stand in the list; on the drawing they would hide the rest
    // An empty form: what stands in the space is written on it at the car.
    obstructions: [],
    keepFree: [],
    narrowings: [],
  };
  const document = surveySheetDocument({
    paper: paper ?? shop.settings.paper,
    language: 'en',
    titleBlock: {
      shop: shop.name,
      vehicle: name.slice(0, CELL_LIMIT),
      customer: '',
      job: '',
      revision: String(row.revision),
      drawn: actor.name,
      checked: null,
      units: shop.settings.lengthUnit,
      date: toShopTime(now.toISOString(), shop.timeZone).date,
      sheet: '02 Survey',
    },
    heading: [form.name, row.spaceName, row.seatState].filter((words) => words !== '').join(', '),
    views: [
      { kind: 'section', cavity: surveyView(sketch, 'section', drawn) },
      { kind: 'plan', cavity: surveyView(sketch, 'plan', drawn) },
    ],
    rows: form.dimensions.map(({ letter, label, hint }) => ({ letter, what: label, how: hint })),
  });
  return renderPdf(document, { createdAt: now });
}
