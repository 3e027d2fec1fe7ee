// Money: whole minor units and an ISO 4217 code, never a float. Decimals per currency come from Intl's copy of
// ISO 4217. Rounding is half away from zero; splits are by largest remainder, so that parts sum to the whole.
import { type Refusal, refuse } from './refusal.ts';

export type Money = {
  /** Whole minor units (cents, fils; yen has none smaller): a safe integer. */
  readonly minor: number;
  /** ISO 4217 code, upper case. */
  readonly currency: string;
};

const KNOWN_CURRENCIES: ReadonlySet<string> = new Set(Intl.supportedValuesOf('currency'));

export function isCurrency(code: string): boolean {
  return KNOWN_CURRENCIES.has(code);
}

/** Decimals of the currency's minor unit: JPY 0, USD 2, BHD 3. The code must be known (`isCurrency`). */
export function currencyExponent(currency: string): number {
  const format = new Intl.NumberFormat('en', { style: 'currency', currency });
  return format.resolvedOptions().maximumFractionDigits ?? 2;
}

/** Makes money of a whole number of minor units. */
export function money(minor: number, currency: string): Money | Refusal {
  if (!Number.isSafeInteger(minor)) {
    return refuse('minor', { allowed: SAFE_AMOUNT, got: minor, why: 'Money counts whole minor units.' });
  }
  if (!isCurrency(currency)) {
    return refuse('currency', {
      allowed: 'an ISO 4217 code such as USD',
      got: currency,
      why: `${currency.slice(0, 10)} is not a currency known here.`,
    });
  }
  return { minor: minor === 0 ? 0 : minor, currency };
}

const SAFE_AMOUNT = 'a whole number of minor units up to 9,007,199,254,740,991';

/** Sum of amounts in one currency; none is refused, since nothing says in which currency nothing is. */
export function addMoney(...amounts: readonly Money[]): Money | Refusal {
  const [first] = amounts;
  if (first === undefined) {
    return refuse('amounts', {
      allowed: 'one amount or more',
      got: null,
      why: 'There is nothing to add up.',
    });
  }
  const other = amounts.find(({ currency }) => currency !== first.currency);
  if (other !== undefined) {
    return refuse('currency', {
      allowed: first.currency,
      got: other.currency,
      why: `${first.currency} and ${other.currency} can't be added: convert one first.`,
    });
  }
  const sum = amounts.reduce((total, { minor }) => total + BigInt(minor), 0n);
  return money(Number(sum), first.currency);
}

/** A rate may have hundredths of a basis point: 8.875 % is 887.5. */
const RATE_STEPS_PER_UNIT = 1_000_000n;
const STEPS_PER_BASIS_POINT = 100;

/**
 * `minor` times a rate in basis points (10,000 = the whole), to the nearest minor unit, halves away from zero.
 * The rate counts to a hundredth of a basis point; finer is rounded to that.
 */
export function applyRate(minor: number, rateBasisPoints: number): number {
  return divideRounded(BigInt(minor) * rateSteps(rateBasisPoints), RATE_STEPS_PER_UNIT);
}

/** The part of a tax-inclusive amount that is tax: amount x rate / (1 + rate), halves away from zero. */
export function rateWithin(grossMinor: number, rateBasisPoints: number): number {
  const steps = rateSteps(rateBasisPoints);
  return divideRounded(BigInt(grossMinor) * steps, RATE_STEPS_PER_UNIT + steps);
}

function rateSteps(rateBasisPoints: number): bigint {
  return BigInt(Math.round(rateBasisPoints * STEPS_PER_BASIS_POINT));
}

/** `over / under` to the nearest whole, halves away from zero; `under` is above 0. */
export function divideRounded(over: bigint, under: bigint): number {
  const size = over < 0n ? -over : over;
  const rounded = (2n * size + under) / (2n * under);
  return Number(over < 0n ? -rounded : rounded);
}

/**
 * Splits `totalMinor` by weights (zero or more, whole numbers) by largest remainder: the parts sum to the whole
 * to the unit, and each is within one unit of its exact share. Equal remainders go to the earlier weight, so
 * bring the weights in an order that means something. All weights 0: split evenly. No weights: no parts.
 */
export function allocate(totalMinor: number, weights: readonly number[]): number[] {
  const given = weights.map((weight) => BigInt(weight));
  const given0 = given.reduce((sum, weight) => sum + weight, 0n);
  const used = given0 === 0n ? given.map(() => 1n) : given;
  const whole = given0 === 0n ? BigInt(used.length) : given0;
  const size = BigInt(Math.abs(totalMinor));
  const shares = used.map((weight, index) => ({
    index,
    units: (size * weight) / whole,
    remainder: (size * weight) % whole,
  }));
  const left = Number(size - shares.reduce((sum, { units }) => sum + units, 0n));
  const byRemainder = shares.toSorted(
    (a, b) => Number(b.remainder > a.remainder) - Number(b.remainder < a.remainder) || a.index - b.index,
  );
  const lucky = new Set(byRemainder.slice(0, left).map(({ index }) => index));
  const sign = totalMinor < 0 ? -1 : 1;
  return shares.map(({ index, units }) => {
    const part = Number(units) + (lucky.has(index) ? 1 : 0);
    return part === 0 ? 0 : sign * part;
  });
}
