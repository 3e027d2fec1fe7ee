// Freezes what the customer will read: scope, drawings, lines, totals, dates and terms, from issued sheets only.
import { createHash } from 'node:crypto';
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { PriceResult } from '@gusset/contracts/price';
import { type FrozenDrawing, type QuoteSnapshot, quoteSnapshotSchema } from '@gusset/contracts/quote';
import { revisionLetter } from '@gusset/contracts/sheet';
import type { ShopSettings } from '@gusset/contracts/shop';
import type { SoundResult } from '@gusset/contracts/sound';
import type { SurveyResult } from '@gusset/contracts/survey';
import type { DrawingView, Scene } from '@gusset/drawings';
import { hideCosts } from '@gusset/estimating';
import { boxIsometricScene, boxSectionScene, canonicalJson } from '@gusset/sheets';
import { addDays, formatLength, formatPercent, toShopTime } from '@gusset/units';
import { toShopDate } from '../data/dates.ts';
import type { JobRow } from '../jobs/job.queries.ts';
import type { IssueRow } from '../sheets/sheet.queries.ts';
import { snapshotSections } from './snapshot-sections.ts';

export type SnapshotSource = {
  readonly now: Date;
  readonly version: number;
  readonly job: JobRow;
  readonly customerAddress: string | null;
  readonly shop: {
    readonly name: string;
    readonly locale: string;
    readonly timeZone: string;
    readonly settings: ShopSettings;
  };
  readonly priceIssue: IssueRow;
  /** Issued sheets of the job by kind. */
  readonly issues: ReadonlyMap<string, IssueRow>;
};

/** As wide as a phone shows it without shrinking its figures; page and paper may enlarge it. */
const SECTION_VIEW = { widthPt: 400, heightPt: 300, textPt: 11 };
const WHOLE_VIEW = { widthPt: 400, heightPt: 250, textPt: 11 };

const VEHICLE_CAUTION =
  'Work on a vehicle’s wiring and structure follows the makers’ instructions, local codes and licensed practice; where they differ from this quote, they go first.';

export function quoteSnapshot(source: SnapshotSource): QuoteSnapshot {
  const { now, version, job, shop, priceIssue } = source;
  const price = resultOf<PriceResult>(priceIssue);
  const quote = hideCosts(price.quote);
  const { settings } = shop;
  const { totals } = quote;
  const issuedOn = toShopTime(now.toISOString(), shop.timeZone).date;
  return quoteSnapshotSchema.parse({
    format: 1,
    number: `${job.number}/${version}`,
    version,
    priceRevision: revisionLetter(priceIssue.revision),
    madeAt: now.toISOString(),
    locale: shop.locale,
    timeZone: shop.timeZone,
    paper: settings.paper,
    shop: {
      name: shop.name,
      lines: linesOf(settings.letterhead.address),
      phone: settings.letterhead.phone,
      email: settings.letterhead.email,
      taxNumber: settings.letterhead.taxNumber,
    },
    customer: { name: job.customer.name, lines: linesOf(source.customerAddress ?? '') },
    vehicle: vehicleWords(job),
    job: { number: job.number, title: job.title },
    issuedOn,
    validUntil: addDays(issuedOn, quote.validDays),
    promisedOn: toShopDate(job.promisedOn),
    scope: price.scope,
    exclusions: [...quote.exclusions],
    terms: price.terms,
    cautions: cautionsOf(source),
    drawings: drawingsOf(source),
    currency: quote.currency,
    sections: snapshotSections(quote, price.tasks),
    taxIncluded: quote.pricesIncludeTax,
    subtotalMinor: quote.pricesIncludeTax ? totals.grandMinor : totals.netMinor,
    taxes: quote.taxes
      .filter(({ taxableMinor }) => taxableMinor > 0)
      .map(({ name, rateBasisPoints, taxableMinor, taxMinor }) => ({
        name: `${name} ${formatPercent(rateBasisPoints)}`,
        baseMinor: taxableMinor,
        amountMinor: taxMinor,
      })),
    totalMinor: totals.grandMinor,
    depositMinor: totals.depositMinor,
    balanceMinor: totals.balanceMinor,
  });
}

/** Names exactly this picture: an approval carries it. */
export function snapshotHash(snapshot: unknown): string {
  // Through JSON once, so that what is hashed is what the database gives back.
  return createHash('sha256')
    .update(canonicalJson(JSON.parse(JSON.stringify(snapshot))))
    .digest('hex');
}

/** Sound because a kind's issued result was computed by that kind's own definition. */
export function resultOf<Result>(issue: IssueRow): Result {
  return issue.result as Result;
}

function linesOf(text: string): string[] {
  return text
    .split('\n')
    .map((line) => line.trim().slice(0, 500))
    .filter((line) => line !== '')
    .slice(0, 12);
}

function vehicleWords({ vehicle }: JobRow): string {
  if (vehicle === null) return '';
  const { model, year, plate } = vehicle;
  return [model.make, model.model, model.body, year, plate].filter(Boolean).join(' ');
}

function cautionsOf({ issues }: SnapshotSource): string[] {
  const sound = issues.get('sound');
  if (sound === undefined) return [VEHICLE_CAUTION];
  const loudestDb = Math.round(resultOf<SoundResult>(sound).loudestDb);
  const hearing = `Mind your hearing: at full power this system may reach about ${loudestDb} dB in the low notes inside the car. That is an estimate and no promise; long listening at such levels harms hearing for good, and local law on loudness applies.`;
  return [hearing, VEHICLE_CAUTION];
}

function drawingsOf({ issues, shop }: SnapshotSource): QuoteSnapshot['drawings'] {
  const issue = issues.get('box');
  if (issue === undefined) return { section: null, whole: null };
  const box = resultOf<BoxSheetResult>(issue);
  const survey = issues.get('survey');
  const cavity = survey === undefined ? null : resultOf<SurveyResult>(survey).cavity;
  const { lengthUnit, inchDenominator } = shop.settings;
  const view: Pick<DrawingView, 'formatLength'> = {
    formatLength: (mm) =>
      formatLength(mm, {
        unit: lengthUnit,
        denominator: inchDenominator,
        style: 'drawing',
        ...(lengthUnit === 'mm' ? { digits: 0 } : {}),
      }),
  };
  return {
    section: frozen(boxSectionScene(box, cavity, { ...SECTION_VIEW, ...view })),
    whole: frozen(boxIsometricScene(box, { ...WHOLE_VIEW, ...view })),
  };
}

function frozen({ title, description, widthPt, heightPt, layers }: Scene): FrozenDrawing {
  return {
    title: title.slice(0, 200),
    description: description.slice(0, 1_000),
    widthPt,
    heightPt,
    layers: [...layers],
  };
}

/** The drawing as the renderers take it; its layers were written by `frozen` above and by nothing else. */
export function sceneOf({ title, description, widthPt, heightPt, layers }: FrozenDrawing): Scene {
  return {
    title,
    description,
    widthPt,
    heightPt,
    world: null,
    scaleLabel: null,
    layers: layers as Scene['layers'],
  };
}
