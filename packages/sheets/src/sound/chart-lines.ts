// The designs of the sheet as lines: which are drawn, how each looks on every chart, what it is called.
import {
  type ComparedCurves,
  type ComparedDesign,
  DESIGN_LETTERS,
  type DesignLetter,
  ENCLOSURE_WORDS,
  type SolvedDesign,
  type SoundResult,
} from '@gusset/contracts/sound';
import type { CurveDash, CurvePoint, CurveTone, ResponseCurve } from '@gusset/drawings';

/** What is shown beside the chosen design. */
export type ChartChoice = {
  /** Level outdoors instead of in the car. */
  readonly isFreeAir: boolean;
  /** Letters alone at the lines, where there is no room for names. */
  readonly isBrief: boolean;
  /** Designs of the sheet to lay over it. */
  readonly letters: readonly DesignLetter[];
  /** The last issue, drawn beside a draft that differs from it. */
  readonly issued: SoundResult | null;
  /** Where nine in ten of what is built will lie, parts and work within their tolerances; null = not asked for. */
  readonly spread: ChartSpread | null;
};

export type ChartSpread = {
  readonly frequenciesHz: readonly number[];
  readonly p5Db: readonly number[];
  readonly p95Db: readonly number[];
};

/** The kind of line that a design keeps on every chart, so that a grey copy still tells them apart. */
const DASH_OF: Readonly<Record<DesignLetter, CurveDash>> = {
  A: 'solid',
  B: 'long',
  C: 'short',
  D: 'dash-dot',
  E: 'dash-dot-dot',
  F: 'dots',
};
export const designDash = (letter: DesignLetter): CurveDash => DASH_OF[letter];

/** One design on a chart. */
export type Line = {
  /** `A`; `issue` for the one as issued. */
  readonly letter: string;
  readonly name: string;
  readonly dash: CurveDash;
  readonly tone: CurveTone;
  readonly curves: ComparedCurves;
};

export function linesOf(result: SoundResult, { letters, issued }: ChartChoice): readonly Line[] {
  const own: Line = {
    letter: result.letter,
    name: designName(result, result),
    dash: designDash(result.letter),
    tone: 'mark',
    curves: result.curves,
  };
  const beside = result.variants.flatMap((variant): Line[] =>
    variant.state === 'ready' && letters.includes(variant.letter)
      ? [
          {
            letter: variant.letter,
            name: designName(variant, variant.design),
            dash: designDash(variant.letter),
            tone: 'ink',
            curves: variant.design.curves,
          },
        ]
      : [],
  );
  const before: readonly Line[] =
    issued === null
      ? []
      : [{ letter: 'issue', name: 'as issued', dash: 'short', tone: 'brass', curves: issued.curves }];
  return [own, ...beside, ...before];
}

/** `B Vented box 40 L` or the name that someone gave it. */
export function designName(
  { letter, name }: { readonly letter: DesignLetter; readonly name: string },
  design: Pick<SolvedDesign | ComparedDesign, 'enclosure' | 'netLitres'>,
): string {
  if (name !== '') return `${letter} ${name}`;
  const litres = design.netLitres === null ? '' : ` ${Number(design.netLitres.toFixed(0))} L`;
  return `${letter} ${ENCLOSURE_WORDS[design.enclosure]}${litres}`;
}

/** The first letter that no design of the sheet has; null = all six are taken. */
export function freeLetter(taken: readonly DesignLetter[]): DesignLetter | null {
  return DESIGN_LETTERS.find((letter) => !taken.includes(letter)) ?? null;
}

const points = (curves: ComparedCurves, values: readonly number[]): readonly CurvePoint[] =>
  curves.frequenciesHz.map((hz, i) => [hz, values[i] ?? 0] as const);

/** A curve of each design that has it. */
export function curvesOf(
  lines: readonly Line[],
  valuesOf: (curves: ComparedCurves) => readonly number[] | null,
): readonly ResponseCurve[] {
  return lines.flatMap(({ name, dash, tone, curves }) => {
    const values = valuesOf(curves);
    return values === null ? [] : [{ name, dash, tone, points: points(curves, values) }];
  });
}

/** A curve that only the chosen design shows. */
export function line(own: Line | undefined, name: string, values: readonly number[] | null): ResponseCurve {
  const at = own === undefined || values === null ? [] : points(own.curves, values);
  return { name, dash: 'solid', tone: 'mark', points: at };
}
