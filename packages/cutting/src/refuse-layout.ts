// What no layout can answer, named at the field: no parts, too many, or a part that no sheet takes.
import type { CutPart, LayoutInput, StockSheet } from '@gusset/contracts/cutting';
import { type Refusal, refuse } from '@gusset/units';
import { AS_GIVEN, grainWays, type LayoutProblem, TURNED } from './layout-problem.ts';

/** A wider cut is no saw blade or router bit. */
const WIDEST_KERF_MM = 50;
/** The search is tuned and tested to this many pieces at once. */
const MOST_PARTS = 400;

export function refuseKerf(kerfMm: number): Refusal | null {
  if (kerfMm >= 0 && kerfMm <= WIDEST_KERF_MM) return null;
  return refuse('settings.kerfMm', {
    allowed: `0 to ${WIDEST_KERF_MM} mm`,
    got: kerfMm,
    why: 'no blade or bit cuts that wide',
  });
}

export function refuseNoParts(parts: readonly CutPart[]): Refusal | null {
  if (parts.length > 0) return null;
  return refuse('parts', { allowed: 'at least 1 part', got: 0, why: 'there is nothing to cut' });
}

export function refuseTooManyParts(parts: readonly CutPart[]): Refusal | null {
  if (parts.length <= MOST_PARTS) return null;
  return refuse('parts', {
    allowed: `1 to ${MOST_PARTS} parts of one material and thickness`,
    got: parts.length,
    why: 'that is more than one layout takes; lay them out in two batches',
  });
}

export function refuseRepeatedIds(input: LayoutInput): Refusal | null {
  return (
    repeatedId(
      'parts',
      input.parts.map((part) => part.id),
    ) ??
    repeatedId(
      'sheets',
      input.sheets.map((sheet) => sheet.id),
    )
  );
}

function repeatedId(list: 'parts' | 'sheets', ids: readonly string[]): Refusal | null {
  const index = ids.findIndex((id, place) => ids.indexOf(id) !== place);
  if (index < 0) return null;
  return refuse(`${list}[${index}].id`, {
    allowed: 'an id of its own',
    got: ids[index] ?? null,
    why: 'two entries with one id cannot be told apart in the layout',
  });
}

/** A part that lies on no sheet at all, however empty. */
export function refuseUncuttable(input: LayoutInput, problem: LayoutProblem): Refusal | null {
  const stockCount = problem.stocks.length;
  const index = input.parts.findIndex((_, piece) =>
    problem.ways.subarray(piece * stockCount, (piece + 1) * stockCount).every((ways) => ways === 0),
  );
  const part = input.parts[index];
  return part === undefined ? null : uncuttable(part, index, input);
}

function uncuttable(part: CutPart, index: number, input: LayoutInput): Refusal {
  const allowedWays = input.sheets.map((sheet) => ({ sheet, ways: grainWays(part, sheet) }));
  const withGrain = closest(part, allowedWays, input);
  const anyWay = closest(
    part,
    input.sheets.map((sheet) => ({ sheet, ways: AS_GIVEN | TURNED })),
    input,
  );
  const size = `${shown(part.lengthMm)} × ${shown(part.widthMm)}`;
  if (anyWay !== null && anyWay.overMm <= 0) {
    const usable = `${shown(anyWay.usableLengthMm)} × ${shown(anyWay.usableWidthMm)}`;
    const turnRule = part.mayTurn ? 'its grain would run the wrong way' : 'it may not be turned';
    return refuse(part.grain === 'none' ? `parts[${index}].mayTurn` : `parts[${index}].grain`, {
      allowed: `a grain and a turn that let ${size} lie on a sheet`,
      got: part.grain,
      why: `part ${part.id} fits the ${usable} of sheet ${anyWay.sheet.id} only in a way where ${turnRule}`,
    });
  }
  const near = withGrain ?? anyWay;
  const isLonger = near === null || near.longSide;
  const over = near === null ? '' : ` by ${shown(near.overMm)}`;
  return refuse(`parts[${index}].${isLonger ? 'lengthMm' : 'widthMm'}`, {
    allowed:
      near === null
        ? 'no sheet'
        : `within ${shown(near.usableLengthMm)} × ${shown(near.usableWidthMm)}, trimmed`,
    got: isLonger ? part.lengthMm : part.widthMm,
    why: `part ${part.id} (${size}) is larger than every sheet${over}`,
  });
}

type Closest = {
  readonly sheet: StockSheet;
  readonly usableLengthMm: number;
  readonly usableWidthMm: number;
  /** How far the part sticks out on its worse side; 0 or less where it fits. */
  readonly overMm: number;
  /** True where the part's length is the side that sticks out most. */
  readonly longSide: boolean;
};

function closest(
  part: CutPart,
  candidates: readonly { readonly sheet: StockSheet; readonly ways: number }[],
  input: LayoutInput,
): Closest | null {
  const tries = candidates.flatMap(({ sheet, ways }) => {
    const usableLengthMm = sheet.lengthMm - 2 * input.settings.trimMm;
    const usableWidthMm = sheet.widthMm - 2 * input.settings.trimMm;
    const lying = (alongX: number, alongY: number, turned: boolean): Closest => {
      const overX = alongX - usableLengthMm;
      const overY = alongY - usableWidthMm;
      return {
        sheet,
        usableLengthMm,
        usableWidthMm,
        overMm: Math.max(overX, overY),
        longSide: overX >= overY !== turned,
      };
    };
    return [
      ...((ways & AS_GIVEN) !== 0 ? [lying(part.lengthMm, part.widthMm, false)] : []),
      ...((ways & TURNED) !== 0 ? [lying(part.widthMm, part.lengthMm, true)] : []),
    ];
  });
  return tries.toSorted((one, two) => one.overMm - two.overMm)[0] ?? null;
}

/** Refusals are read by people: two decimals are finer than any saw. */
function shown(lengthMm: number): string {
  return String(Math.round(lengthMm * 100) / 100);
}
