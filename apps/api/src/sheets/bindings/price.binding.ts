import type { PartPrice, PriceFacts, PriceInput, PriceResult } from '@gusset/contracts/price';
import { SKILLS, type Skill } from '@gusset/contracts/shop';
import { type PriceUpstream, priceSheet } from '@gusset/sheets';
import { notFound } from '../../errors.ts';
import { noteMilestones } from '../../jobs/job-standing.ts';
import { findParts } from '../../records/kinds/part.queries.ts';
import { findShop } from '../../shops/shop.queries.ts';
import { toShopView } from '../../shops/shop.service.ts';
import type { SheetBinding, SheetScope } from '../sheet-binding.ts';

/** Sheet 08: reads the prices of the named parts, the shop's rates, taxes and terms, and what its people cost. */
export const priceBinding: SheetBinding<PriceInput, PriceFacts, PriceUpstream, PriceResult> = {
  definition: priceSheet,
  async loadFacts(scope, _input, upstream) {
    const shop = await findShop(scope.tx, scope.actor.shopId);
    if (shop === null) throw notFound('shop');
    const { settings } = toShopView(shop);
    return {
      currency: shop.currency,
      partPrices: await partPrices(scope, upstream),
      rates: {
        labourRateMinor: settings.labourRateMinor,
        labourRateBySkillMinor: settings.labourRateBySkillMinor,
        ...(await hourlyCosts(scope)),
        materialMarkupBasisPoints: settings.materialMarkupBasisPoints,
        partMarkupBasisPoints: settings.partMarkupBasisPoints,
        marginFloorBasisPoints: settings.marginFloorBasisPoints,
        suppliesPercentOfLabourBasisPoints: settings.suppliesPercentOfLabourBasisPoints,
        suppliesCapMinor: settings.suppliesCapMinor,
        customerPartFeeMinor: settings.customerPartFeeMinor,
      },
      taxes: {
        codes: settings.taxCodes,
        codeByKind: settings.taxCodeByKind,
        pricesIncludeTax: settings.pricesIncludeTax,
        rounding: settings.taxRounding,
      },
      depositBasisPoints: settings.depositBasisPoints,
      validDays: settings.quoteValidDays,
      terms: settings.quoteTerms,
    };
  },
  /** The job is priced, and its total is this one until the customer has approved another. */
  async onIssued({ deps, tx, actor, job }, { result }) {
    await noteMilestones(tx, actor, job.id, { pricedAt: deps.clock.now() });
    await tx.job.updateMany({
      where: { shopId: actor.shopId, id: job.id, approvedAt: null },
      data: { totalMinor: result.quote.totals.grandMinor },
    });
  },
};

async function partPrices({ tx, actor }: SheetScope, { parts }: PriceUpstream): Promise<PartPrice[]> {
  const ids = new Set((parts?.lines ?? []).map(({ partId }) => partId).filter((id) => id !== null));
  const rows = ids.size === 0 ? [] : await findParts(tx, actor, [...ids]);
  return rows.map(({ id, maker, name, buyPriceMinor, sellPriceMinor }) => ({
    partId: id,
    name: [maker, name].filter((word) => word !== '').join(' '),
    buyPriceMinor,
    sellPriceMinor,
  }));
}

/** Means over the people who work here; somebody without a skill's own people costs what everybody costs. */
async function hourlyCosts({ tx, actor }: SheetScope) {
  const people = await tx.person.findMany({
    where: { shopId: actor.shopId, archivedAt: null, hourlyCostMinor: { gt: 0 } },
    select: { skills: true, hourlyCostMinor: true },
    orderBy: { id: 'asc' },
    take: 200,
  });
  const bySkill = SKILLS.filter((skill) => skill !== 'any').flatMap((skill) => {
    const able = people.filter(({ skills }) => skills.includes(skill));
    return able.length === 0 ? [] : [[skill, mean(able)] as const];
  });
  const hourlyCostBySkillMinor: Partial<Record<Skill, number>> = Object.fromEntries(bySkill);
  return { hourlyCostMinor: mean(people), hourlyCostBySkillMinor };
}

function mean(people: readonly { readonly hourlyCostMinor: number }[]): number {
  if (people.length === 0) return 0;
  return Math.round(people.reduce((sum, { hourlyCostMinor }) => sum + hourlyCostMinor, 0) / people.length);
}
