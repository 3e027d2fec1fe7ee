// Does the box of sheet 04 go in and come out? Asked with every wall at its worst: a yes holds whatever the tape did. Asked
// at its best: a no does. Between the two it hangs on the tape. Then by how much, and where.
import { type DryFitOptions, dryFit, type SceneWalls } from '@gusset/cargo';
import type { LoadingAnswer, MmBracket } from '@gusset/contracts/dry-fit-sheet';
import type { DryFitCaseInput, DryFitObstacle, DryFitResult } from '@gusset/contracts/dryfit';
import type { Pose } from '@gusset/contracts/geometry';
import { isRefusal, type Refusal } from '@gusset/units';
import { type LoadingQuestion, loadingCase } from './loading-case.ts';
import { tightestOf } from './tight-place.ts';

/** Raised where the same question gets another answer. */
export const LOADING_ENGINE_VERSION = 1;

export type LoadingOptions = {
  /** The verdict and its way, before it is known by how much. */
  readonly onDecided?: (answer: LoadingAnswer) => void;
  /** Asked now and then; ends the search with what is known by then: undecided is then too close to call. */
  readonly shouldStop?: () => boolean;
  /** False = the verdict alone. */
  readonly measures?: boolean;
};

/** Finer than half of any tape's error. */
const FINEST_MM = 1;
/** Decides all but a few of the bench's cases within a second each. */
const MOST_CELLS = 200_000;
/** By how much is asked less finely: it is bracketed, and a run that isn't decided only widens the bracket. */
const BRACKET_RUN = { finestMm: 2, mostCells: 40_000 };
/** A bracket is halved until it is this narrow, mm. */
const BRACKET_MM = 0.5;
/** More room than this all round is not looked for, nor more that is lacking, mm. */
const MOST_SPARE_MM = 40;
const MOST_SHORT_MM = 160;

type Ask = (nearerMm: number) => DryFitResult | Refusal;

/** Refused where the ± leave no space at all, or the case cannot be: which field, and why. */
export function answerLoading(
  question: LoadingQuestion,
  options: LoadingOptions = {},
): LoadingAnswer | Refusal {
  const { onDecided, shouldStop = () => false, measures = true } = options;
  let cells = 0;
  const run = (walls: SceneWalls, nearerMm: number, limits: DryFitOptions): DryFitResult | Refusal => {
    const made = loadingCase(question, walls, nearerMm);
    if (isRefusal(made)) return made;
    const result = dryFit(made.input, { ...limits, shouldStop });
    if (!isRefusal(result)) cells += result.cells;
    return result;
  };
  const decide = (walls: SceneWalls) => run(walls, 0, { finestMm: FINEST_MM, mostCells: MOST_CELLS });

  const measured = loadingCase(question, 'nominal');
  if (isRefusal(measured)) return measured;
  const nominal = decide('nominal');
  if (isRefusal(nominal)) return nominal;
  // A no as measured is no at worst too; the ± may leave no space at all, which is no yes.
  const worst = nominal.verdict === 'loads' ? decide('worst') : nominal;
  const goesIn = !isRefusal(worst) && worst.verdict === 'loads';
  const decisive = goesIn ? worst : nominal.verdict === 'loads' ? nominal : decide('best');
  if (isRefusal(decisive)) return decisive;

  const verdict = goesIn ? 'goes-in' : decisive.verdict === 'does-not-load' ? 'does-not-go-in' : 'too-close';
  const answerOf = (path: readonly Pose[], more: Partial<LoadingAnswer> = {}): LoadingAnswer => ({
    verdict,
    asMeasured: nominal.verdict,
    spare: goesIn ? { atLeastMm: 0, atMostMm: null } : null,
    short: null,
    decidedBy: decisive.decidedBy,
    path,
    tightest: tightestOf(path, question.profile, {
      cavity: question.cavity,
      space: measured.scene.scene.space,
      obstacles: abreast(measured.input.obstacles ?? [], question),
    }),
    assumptions: measured.scene.assumptions,
    provedToMm: FINEST_MM,
    cells,
    ...more,
  });
  const decided = answerOf(decisive.path);
  onDecided?.(decided);
  // What does not even stand there is told by its clearances in place.
  if (!measures || verdict === 'too-close' || decisive.decidedBy === 'place') return decided;
  if (goesIn) {
    const { path, spare } = widest(decisive.path, (mm) => run('worst', mm, BRACKET_RUN));
    return answerOf(path, { spare, cells });
  }
  const { path, short } = narrowest((mm) => run('best', -mm, BRACKET_RUN));
  return answerOf(path, { short, cells });
}

type Path = readonly Pose[];

/** How much nearer everything may come and it still goes in, and the way it then takes. */
function widest(decided: Path, at: Ask): { readonly path: Path; readonly spare: MmBracket } {
  let [path, low, high]: [Path, number, number] = [decided, 0, MOST_SPARE_MM];
  let atMostMm: number | null = null;
  while (high - low > BRACKET_MM) {
    const middle = (low + high) / 2;
    const result = at(middle);
    if (!isRefusal(result) && result.verdict === 'loads') {
      [path, low] = [result.path, middle];
      continue;
    }
    // Undecided narrows the search, but proves nothing.
    if (isRefusal(result) || result.verdict === 'does-not-load') atMostMm = middle;
    high = middle;
  }
  return { path, spare: { atLeastMm: low, atMostMm } };
}

/** How far everything must give way until it goes in, and the way it then takes. */
function narrowest(at: Ask): { readonly path: Path; readonly short: MmBracket } {
  let path: Path = [];
  let [atLeastMm, atMostMm]: [number, number | null] = [0, null];
  let [low, high] = [0, MOST_SHORT_MM];
  while (high - low > BRACKET_MM) {
    const middle = (low + high) / 2;
    const result = at(middle);
    if (!isRefusal(result) && result.verdict === 'loads') {
      [path, atMostMm, high] = [result.path, middle, middle];
      continue;
    }
    if (!isRefusal(result) && result.verdict === 'does-not-load') atLeastMm = middle;
    low = middle;
  }
  return { path, short: { atLeastMm, atMostMm } };
}

/** What stands beside the box's own width is passed by; the way shifts sideways too little to matter here. */
function abreast(
  obstacles: NonNullable<DryFitCaseInput['obstacles']>,
  { final, widthMm }: LoadingQuestion,
): DryFitObstacle[] {
  return obstacles
    .map(({ name, polygon, z = null }) => ({ name, polygon, z }))
    .filter(({ z }) => z === null || (z.minMm < final.zMm + widthMm && z.maxMm > final.zMm));
}
