// A stored length -> what the screen shows, the drawing says and the screen reader speaks. Showing never rounds
// the stored value: in inches the rest beyond the tape's division is shown too.
import { MM_PER_INCH, NM_PER_MM } from './conversion.ts';
import { greatestSharedDivisor } from './mixed-number.ts';

/** What the shop measures in, and so what a bare number means. */
export type LengthUnit = 'mm' | 'in';

export type InchDenominator = 8 | 16 | 32 | 64;

export type LengthFormat = {
  readonly unit: LengthUnit;
  /** Finest division of the inch; 16 where nothing is said. */
  readonly denominator?: InchDenominator | undefined;
  /** Decimals: of millimetres (1 where nothing is said), or of inches instead of fractions. */
  readonly digits?: number | undefined;
  /**
   * `plain`: 438.2 mm, 17 1/4″ +0.35 mm. `drawing`: 438.2, ≈17 1/4″ (millimetres without the unit, stated once on
   * the sheet; ≈ where inches are rounded). `spoken`: for screen readers.
   */
  readonly style?: 'plain' | 'drawing' | 'spoken' | undefined;
  readonly decimalComma?: boolean | undefined;
  /** The other unit in brackets behind it: 438.2 mm (≈17 1/4″). */
  readonly both?: boolean | undefined;
};

export type DrawingLength = {
  /** What the drawing will say, as a length. */
  readonly mm: number;
  /** Stored less drawn; not zero means "rounded". */
  readonly restMm: number;
  readonly rounded: boolean;
};

/** Rests smaller than this are not shown: a tenth of what a digital caliper resolves over the length of a panel. */
const SHOWN_REST_MM = 0.005;

const THIN_SPACE = '\u2009';
const MINUS = '\u2212';

/** The length that a drawing, tape or screen can say, and what is left over. Ties go up (away from zero). */
export function roundedForDrawing(mm: number, format: LengthFormat): DrawingLength {
  const stepNm = displayStepNm(format);
  const nm = Math.round(Math.abs(mm) * NM_PER_MM);
  const drawnNm = Math.floor((2 * nm + stepNm) / (2 * stepNm)) * stepNm;
  const side = mm < 0 ? -1 : 1;
  const restMm = drawnNm === nm ? 0 : (side * (nm - drawnNm)) / NM_PER_MM;
  const drawnMm = drawnNm === 0 ? 0 : (side * drawnNm) / NM_PER_MM;
  return { mm: drawnMm, restMm, rounded: Math.abs(restMm) >= SHOWN_REST_MM };
}

/** One step of the display, mm: what arrow up and down add in a length field. */
export function displayStepMm(format: LengthFormat): number {
  return displayStepNm(format) / NM_PER_MM;
}

function displayStepNm({ unit, denominator = 16, digits }: LengthFormat): number {
  const unitNm = unit === 'mm' ? NM_PER_MM : MM_PER_INCH * NM_PER_MM;
  if (unit === 'mm' || digits !== undefined) return unitNm / 10 ** Math.min(digits ?? 1, DIGITS_LIMIT);
  return unitNm / denominator;
}

/** Millimetres hold six decimals; inches are offered no more than five, whose step is whole nanometres. */
const DIGITS_LIMIT = 5;

export function formatLength(mm: number, format: LengthFormat): string {
  const shown = formatOneUnit(mm, format);
  if (!format.both) return shown;
  const { denominator, decimalComma } = format;
  const other: LengthFormat =
    format.unit === 'mm' ? { unit: 'in', denominator, style: 'drawing' } : { unit: 'mm', decimalComma };
  return format.style === 'spoken'
    ? `${shown}, ${formatOneUnit(mm, { ...other, style: 'spoken' })}`
    : `${shown} (${formatOneUnit(mm, other)})`;
}

function formatOneUnit(mm: number, format: LengthFormat): string {
  const drawn = roundedForDrawing(mm, format);
  if (format.unit === 'mm') return formatMillimetres(drawn, format);
  return format.style === 'spoken' ? speakInches(drawn, format) : formatInches(drawn, format);
}

function formatMillimetres(drawn: DrawingLength, format: LengthFormat): string {
  const number = decimalText(Math.abs(drawn.mm), format);
  if (format.style === 'spoken') {
    return `${drawn.mm < 0 ? 'minus ' : ''}${number} ${number === '1' ? 'millimetre' : 'millimetres'}`;
  }
  return `${drawn.mm < 0 ? MINUS : ''}${number}${format.style === 'drawing' ? '' : ' mm'}`;
}

function formatInches(drawn: DrawingLength, format: LengthFormat): string {
  const sign = drawn.mm < 0 ? MINUS : '';
  const size = Math.abs(drawn.mm);
  const number = format.digits === undefined ? fractionText(size, format) : fixedInches(size, format);
  if (format.style === 'drawing') return `${drawn.rounded ? '≈' : ''}${sign}${number}″`;
  if (!drawn.rounded || format.digits !== undefined) return `${sign}${number}″`;
  const rest = decimalText(Math.abs(drawn.restMm), { ...format, digits: 2 });
  return `${sign}${number}″ ${drawn.restMm < 0 ? MINUS : '+'}${rest} mm`;
}

function fixedInches(sizeMm: number, format: LengthFormat): string {
  const text = (sizeMm / MM_PER_INCH).toFixed(Math.min(format.digits ?? 0, DIGITS_LIMIT));
  return format.decimalComma ? text.replace('.', ',') : text;
}

type Inches = { readonly whole: number; readonly over: number; readonly under: number };

/** Whole inches and the reduced fraction; never 16/16, because whole steps are counted first. */
function inchParts(sizeMm: number, { denominator = 16 }: LengthFormat): Inches {
  const steps = Math.round((sizeMm / MM_PER_INCH) * denominator);
  const over = steps % denominator;
  const shared = greatestSharedDivisor(denominator, over);
  return { whole: Math.floor(steps / denominator), over: over / shared, under: denominator / shared };
}

function fractionText(sizeMm: number, format: LengthFormat): string {
  const { whole, over, under } = inchParts(sizeMm, format);
  if (over === 0) return String(whole);
  return whole === 0 ? `${over}/${under}` : `${whole}${THIN_SPACE}${over}/${under}`;
}

const PART_NAMES: Readonly<Record<number, readonly [one: string, many: string]>> = {
  2: ['half', 'halves'],
  4: ['quarter', 'quarters'],
  8: ['eighth', 'eighths'],
  16: ['sixteenth', 'sixteenths'],
  32: ['thirty-second', 'thirty-seconds'],
  64: ['sixty-fourth', 'sixty-fourths'],
};

/** `17 and a quarter inches`, `3 eighths of an inch`, `minus 2 inches plus 0.35 millimetres`. */
function speakInches(drawn: DrawingLength, format: LengthFormat): string {
  const size = Math.abs(drawn.mm);
  const sign = drawn.mm < 0 ? 'minus ' : '';
  if (format.digits !== undefined) return `${sign}${fixedInches(size, format)} inches`;
  const { whole, over, under } = inchParts(size, format);
  const [one, many] = PART_NAMES[under] ?? ['', ''];
  const part = over === 1 ? `${under === 8 ? 'an' : 'a'} ${one}` : `${over} ${many}`;
  const inches =
    over === 0
      ? `${whole} ${whole === 1 ? 'inch' : 'inches'}`
      : whole === 0
        ? `${part} of an inch`
        : `${whole} and ${part} inches`;
  if (!drawn.rounded) return `${sign}${inches}`;
  const rest = decimalText(Math.abs(drawn.restMm), { ...format, digits: 2 });
  return `${sign}${inches} ${drawn.restMm < 0 ? 'minus' : 'plus'} ${rest} millimetres`;
}

/** At most `digits` decimals, none where the number is whole. */
function decimalText(value: number, { digits = 1, decimalComma }: LengthFormat): string {
  const text = String(Number(value.toFixed(Math.min(digits, DIGITS_LIMIT))));
  return decimalComma ? text.replace('.', ',') : text;
}
