// What would make a box go in: each change is made on the sheet itself, the box built again as the sheet builds it, and
// tried with every wall at its worst. So its cost in litres is exact, and a remedy that is offered is proved.
import { dryFit } from '@gusset/cargo';
import type { BoxFacts, BoxInput, BoxLength, BoxSheetResult } from '@gusset/contracts/box';
import type { CavityResult } from '@gusset/contracts/cargo';
import type { LoadingChoices, LoadingRemedy } from '@gusset/contracts/dry-fit-sheet';
import { isRefusal } from '@gusset/units';
import type { BoxUpstream } from '../box/box-design.ts';
import { boxSheet } from '../box/box-sheet.ts';
import { loadingCase, loadingQuestion } from './loading-case.ts';

export type BoxLoadingRemedy = LoadingRemedy<BoxInput>;

export type RemedyQuestion = {
  readonly input: BoxInput;
  readonly facts: BoxFacts;
  readonly upstream: BoxUpstream;
  readonly choices: LoadingChoices;
};

export type RemedyOptions = {
  readonly onFound?: (remedy: BoxLoadingRemedy) => void;
  readonly onProgress?: (share: number) => void;
  readonly shouldStop?: () => boolean;
};

/** A cut beyond this share of a size makes another box of it. */
const MOST_SHARE = 0.45;
/** As the bracket of an answer is asked; what isn't decided by then is no remedy. */
const TRIAL = { finestMm: 2, mostCells: 30_000 };

type Cut = {
  readonly kind: 'height' | 'depth' | 'width' | 'clip' | 'lean';
  readonly mostMm: number;
  readonly cut: (byMm: number) => BoxInput;
};

type Trial = {
  readonly result: BoxSheetResult;
  readonly cavity: CavityResult;
  readonly choices: LoadingChoices;
};

/** Found ones in the order tried; free ones first. Empty where the box can't be built or the car isn't measured. */
export function loadingRemedies(question: RemedyQuestion, options: RemedyOptions = {}): BoxLoadingRemedy[] {
  const { input, facts, upstream, choices } = question;
  const { onFound, onProgress, shouldStop = () => false } = options;
  const cavity = upstream.survey?.cavity ?? null;
  const now = boxSheet.compute(input, facts, upstream);
  if (now.state !== 'ready' || cavity === null) return [];
  const netNow = now.result.box.volumes.netLitres;
  const goesIn = (trial: Trial) => !shouldStop() && loadsAtWorst(trial, shouldStop);
  const found: BoxLoadingRemedy[] = [];
  const keep = (remedy: BoxLoadingRemedy) => {
    found.push(remedy);
    onFound?.(remedy);
  };
  const free = { byMm: null, costLitres: 0, netLitres: netNow, input: null };

  if (!choices.mayTurnOver && goesIn({ result: now.result, cavity, choices: { mayTurnOver: true } })) {
    keep({ ...free, kind: 'turn-over', part: null });
  }
  for (const { id, name, appliesTo } of cavity.obstructions) {
    if (appliesTo === 'fit') continue;
    const without = { ...cavity, obstructions: cavity.obstructions.filter((it) => it.id !== id) };
    if (goesIn({ result: now.result, cavity: without, choices })) {
      keep({ ...free, kind: 'take-out', part: name });
    }
  }
  const cuts = cutsOf(input);
  for (const [index, cut] of cuts.entries()) {
    onProgress?.(index / cuts.length);
    const tried = (byMm: number) => {
      const outcome = boxSheet.compute(cut.cut(byMm), facts, upstream);
      if (outcome.state !== 'ready' || !goesIn({ result: outcome.result, cavity, choices })) return null;
      return outcome.result;
    };
    const least = leastCut(cut.mostMm, tried);
    if (least === null) continue;
    const { netLitres } = least.result.box.volumes;
    keep({
      kind: cut.kind,
      byMm: least.byMm,
      part: null,
      costLitres: netNow - netLitres,
      netLitres,
      input: cut.cut(least.byMm),
    });
  }
  onProgress?.(1);
  return found;
}

function loadsAtWorst({ result, cavity, choices }: Trial, shouldStop: () => boolean): boolean {
  const question = loadingQuestion(result, cavity, choices);
  if (isRefusal(question)) return false;
  const made = loadingCase(question, 'worst');
  if (isRefusal(made)) return false;
  const answer = dryFit(made.input, { ...TRIAL, shouldStop });
  return !isRefusal(answer) && answer.verdict === 'loads';
}

/** The least whole millimetres that do; a box that is smaller still goes the same way. */
function leastCut(
  mostMm: number,
  tried: (byMm: number) => BoxSheetResult | null,
): { readonly byMm: number; readonly result: BoxSheetResult } | null {
  const whole = Math.floor(mostMm);
  const most = whole < 1 ? null : tried(whole);
  if (most === null) return null;
  let least = { byMm: whole, result: most };
  let low = 0;
  while (least.byMm - low > 1) {
    const middle = Math.floor((low + least.byMm) / 2);
    const result = tried(middle);
    if (result === null) low = middle;
    else least = { byMm: middle, result };
  }
  return least;
}

function cutsOf(input: BoxInput): Cut[] {
  const { outside, shape } = input;
  const { width, height, depth, depthTop } = outside;
  const cuts: Cut[] = [];
  const sized = (changes: Partial<BoxInput['outside']>): BoxInput => ({
    ...input,
    outside: { ...outside, ...changes },
  });
  const hasTop = shape !== 'rectangular';
  if (height !== null) {
    const lower = (byMm: number) => sized({ height: less(height, byMm) });
    cuts.push({ kind: 'height', mostMm: height.mm * MOST_SHARE, cut: lower });
  }
  if (depth !== null) {
    const shorter = (byMm: number) =>
      sized({
        depth: less(depth, byMm),
        depthTop: hasTop && depthTop !== null ? less(depthTop, byMm) : depthTop,
      });
    const least = Math.min(depth.mm, hasTop ? (depthTop?.mm ?? depth.mm) : depth.mm);
    cuts.push({ kind: 'depth', mostMm: least * MOST_SHARE, cut: shorter });
  }
  if (width !== null) {
    const narrower = (byMm: number) => sized({ width: less(width, byMm) });
    cuts.push({ kind: 'width', mostMm: width.mm * MOST_SHARE, cut: narrower });
  }
  // Sloping faces take the search longer, so the plain cuts are known first.
  if (!hasTop && height !== null && depth !== null) {
    const clipped = (byMm: number): BoxInput => ({
      ...sized({ kneeHeight: less(height, byMm), depthTop: less(depth, byMm) }),
      shape: 'clipped-wedge',
      slopedFace: 'front',
    });
    cuts.push({ kind: 'clip', mostMm: Math.min(height.mm, depth.mm) * MOST_SHARE, cut: clipped });
  }
  const top = hasTop ? depthTop : depth;
  if (top !== null) {
    const asWedge = (byMm: number): BoxInput => ({
      ...sized({ depthTop: less(top, byMm) }),
      ...(hasTop ? {} : { shape: 'wedge' as const, slopedFace: 'front' as const }),
    });
    cuts.push({ kind: 'lean', mostMm: top.mm * MOST_SHARE, cut: asWedge });
  }
  return cuts;
}

/** As if it had been typed: down to a whole tenth. */
function less({ mm }: BoxLength, byMm: number): BoxLength {
  const figure = String(Math.floor((mm - byMm) * 10 + 1e-6) / 10);
  return { mm: Number(figure), typed: figure, unit: 'mm' };
}
