// What is charged for: parts of sheet 07 at the catalogue's prices, tasks by the hour, lines by hand.
import type { LabourRates, LinePricing, QuoteLine } from '@gusset/contracts/estimating';
import type { PartsLine, PartsResult } from '@gusset/contracts/parts';
import type { JobTaskSpec, PartPrice, PriceFacts, PriceInput, PriceNote } from '@gusset/contracts/price';
import { SKILLS } from '@gusset/contracts/shop';
import { labourFromTasks } from '@gusset/estimating';

/** Key of the fee for looking over and fitting what the customer brings. */
export const CUSTOMER_PARTS_KEY = 'customer-parts';

/** How sheet 07 begins the keys of supplies that follow from the design. */
const WORKED_OUT_SUPPLY = 'supply:';

export type PriceLines = { readonly lines: readonly QuoteLine[]; readonly notes: readonly PriceNote[] };

export function priceLines(
  input: PriceInput,
  tasks: readonly JobTaskSpec[],
  facts: PriceFacts,
  parts: PartsResult | null,
): PriceLines {
  const catalogue = new Map(facts.partPrices.map((part) => [part.partId, part]));
  const overrides = new Map(input.priceOverrides.map((one) => [one.lineKey, one.unitPriceMinor]));
  const notes: PriceNote[] = [];
  const partLines = (parts?.lines ?? [])
    .filter((line) => line.quantity > 0 && !isInSuppliesShare(line, overrides))
    .map((line) => {
      const known = line.partId === null ? undefined : catalogue.get(line.partId);
      const typed = overrides.get(line.key);
      if (typed === undefined && lacksPrice(line, known)) {
        notes.push({ code: 'no-price', lineKey: line.key, description: line.description });
      }
      return partLine(line, pricingOf(line, known, typed, facts));
    });
  const labour = labourFromTasks(tasks, ratesOf(facts)).map((line) =>
    withHourlyRate(line, overrides.get(line.key)),
  );
  const extra = input.extraLines.map(
    ({ key, kind, description, quantity, unitCostMinor, unitPriceMinor }): QuoteLine => ({
      key,
      kind,
      description,
      source: null,
      pricing: { by: 'price', quantity, unit: 'lot', unitCostMinor, unitPriceMinor },
      taxCodes: null,
      excludeFrom: [],
    }),
  );
  const lines = [...partLines, ...labour, ...customerPartsFee(facts, parts, overrides), ...extra];
  const keys = new Set(lines.map(({ key }) => key));
  const idle = input.priceOverrides.filter(({ lineKey }) => !keys.has(lineKey));
  return {
    lines,
    notes: [...notes, ...idle.map(({ lineKey }) => ({ code: 'price-for-nothing' as const, lineKey }))],
  };
}

/**
 * Glue, screws and sealant that the design asks for and that are no parts of the catalogue are what the supplies share
 * of the work is taken for: charging them by the piece as well would charge them twice.
 */
function isInSuppliesShare({ key, partId }: PartsLine, overrides: ReadonlyMap<string, number>): boolean {
  return key.startsWith(WORKED_OUT_SUPPLY) && partId === null && !overrides.has(key);
}

/** What nobody sells, nobody prices; all else needs a price from somewhere. */
function lacksPrice({ source }: PartsLine, known: PartPrice | undefined): boolean {
  if (source === 'customer' || source === 'sponsor') return false;
  return known === undefined || (known.sellPriceMinor === 0 && known.buyPriceMinor === 0);
}

function partLine({ key, kind, description, source }: PartsLine, pricing: LinePricing): QuoteLine {
  return { key, kind, description, source, pricing, taxCodes: null, excludeFrom: [] };
}

function pricingOf(
  { kind, quantity, unit, source }: PartsLine,
  known: PartPrice | undefined,
  typedMinor: number | undefined,
  { rates }: PriceFacts,
): LinePricing {
  const unitCostMinor = known?.buyPriceMinor ?? 0;
  // What is brought costs and earns nothing; its value goes along for insurance.
  if (source === 'customer' || source === 'sponsor') {
    return { by: 'price', quantity, unit, unitCostMinor, unitPriceMinor: 0 };
  }
  const unitPriceMinor = typedMinor ?? known?.sellPriceMinor ?? 0;
  if (typedMinor !== undefined || unitPriceMinor > 0) {
    return { by: 'price', quantity, unit, unitCostMinor, unitPriceMinor };
  }
  const markupBasisPoints =
    kind === 'material' ? rates.materialMarkupBasisPoints : rates.partMarkupBasisPoints;
  return { by: 'markup', quantity, unit, unitCostMinor, markupBasisPoints };
}

function withHourlyRate(line: QuoteLine, hourlyRateMinor: number | undefined): QuoteLine {
  if (hourlyRateMinor === undefined || line.pricing.by !== 'hours') return line;
  return { ...line, pricing: { ...line.pricing, hourlyRateMinor } };
}

/** One fee for each part that the customer brings, where the shop asks one. */
function customerPartsFee(
  { rates }: PriceFacts,
  parts: PartsResult | null,
  overrides: ReadonlyMap<string, number>,
): QuoteLine[] {
  const brought = (parts?.lines ?? []).filter(
    ({ source, quantity }) => source === 'customer' && quantity > 0,
  ).length;
  const unitPriceMinor = overrides.get(CUSTOMER_PARTS_KEY) ?? rates.customerPartFeeMinor;
  if (brought === 0 || unitPriceMinor === 0) return [];
  return [
    {
      key: CUSTOMER_PARTS_KEY,
      kind: 'other',
      description: 'Looking over the parts you bring',
      source: null,
      pricing: { by: 'price', quantity: brought, unit: 'each', unitCostMinor: 0, unitPriceMinor },
      taxCodes: null,
      excludeFrom: [],
    },
  ];
}

function ratesOf({ rates }: PriceFacts): LabourRates {
  const bySkill = SKILLS.flatMap((skill) => {
    const hourlyRateMinor = rates.labourRateBySkillMinor[skill];
    const hourlyCostMinor = rates.hourlyCostBySkillMinor[skill];
    if (hourlyRateMinor === undefined && hourlyCostMinor === undefined) return [];
    const both = {
      hourlyRateMinor: hourlyRateMinor ?? rates.labourRateMinor,
      hourlyCostMinor: hourlyCostMinor ?? rates.hourlyCostMinor,
    };
    return [[skill, both] as const];
  });
  return {
    hourlyRateMinor: rates.labourRateMinor,
    hourlyCostMinor: rates.hourlyCostMinor,
    bySkill: Object.fromEntries(bySkill),
  };
}
