// Rates and prices in words, so that a changed one can be named in the list of what moved.
import type { PriceFacts } from '@gusset/contracts/price';
import { SKILL_NAME, SKILLS } from '@gusset/contracts/shop';
import { decimalOf, formatPercent } from '@gusset/units';
import type { KeyFigure } from '../sheet-definition.ts';

/** `1234.50 EUR`: plain digits, the same in every locale. */
export function amountWords(minor: number, currency: string): string {
  return `${decimalOf({ minor, currency })} ${currency}`;
}

export function priceFactFigures(facts: PriceFacts): readonly KeyFigure[] {
  const { currency, rates, taxes } = facts;
  const amount = (minor: number) => amountWords(minor, currency);
  const percent = (basisPoints: number) => formatPercent(basisPoints);
  const skills = SKILLS.flatMap((skill): KeyFigure[] => {
    const rate = rates.labourRateBySkillMinor[skill];
    if (rate === undefined) return [];
    return [{ key: `rate.${skill}`, label: `Hourly rate · ${SKILL_NAME[skill]}`, value: amount(rate) }];
  });
  const parts = facts.partPrices.flatMap(({ partId, name, buyPriceMinor, sellPriceMinor }): KeyFigure[] => [
    { key: `part.${partId}.buy`, label: `${name} · cost`, value: amount(buyPriceMinor) },
    {
      key: `part.${partId}.sell`,
      label: `${name} · price`,
      value: sellPriceMinor === 0 ? 'by markup' : amount(sellPriceMinor),
    },
  ]);
  return [
    { key: 'rate', label: 'Hourly rate', value: amount(rates.labourRateMinor) },
    ...skills,
    { key: 'cost', label: 'Cost of an hour', value: amount(rates.hourlyCostMinor) },
    { key: 'materials', label: 'Markup on materials', value: percent(rates.materialMarkupBasisPoints) },
    { key: 'parts', label: 'Markup on parts', value: percent(rates.partMarkupBasisPoints) },
    {
      key: 'supplies',
      label: 'Supplies, share of labour',
      value: percent(rates.suppliesPercentOfLabourBasisPoints),
    },
    {
      key: 'taxes',
      label: 'Taxes',
      value: taxes.codes.map(({ code, rateBasisPoints }) => `${code} ${percent(rateBasisPoints)}`).join(', '),
    },
    { key: 'including', label: 'Prices hold the tax', value: taxes.pricesIncludeTax ? 'yes' : 'no' },
    { key: 'deposit', label: 'Deposit', value: percent(facts.depositBasisPoints) },
    { key: 'valid', label: 'Valid for', value: `${facts.validDays} days` },
    { key: 'terms', label: 'Terms', value: facts.terms },
    ...parts,
  ];
}
