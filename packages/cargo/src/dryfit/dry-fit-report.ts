// The shop's answer: goes in, too close to call, does not go in; then the millimetres, the tightest place or the jam, the
// dimension that would decide, and what would help. One search at a time, so a caller can watch it and stop it.
import type { CavityResult } from '@gusset/contracts/cargo';
import type {
  DryFitAssumption,
  DryFitProgress,
  DryFitQuestion,
  DryFitReport,
  WayMargin,
} from '@gusset/contracts/dryfit';
import type { Pose } from '@gusset/contracts/geometry';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import type { SceneWalls } from '../dry-fit-scene.ts';
import { placeBox } from '../place-box.ts';
import { dryFit } from './dry-fit.ts';
import { decidingDimension } from './report/deciding-dimension.ts';
import { remediesFor } from './report/remedies.ts';
import { middled, type ReportCase, reportCase, standsFree } from './report/report-case.ts';
import { tightestOn } from './report/tight-place.ts';
import { type MarginSearch, wayMargin } from './report/way-margin.ts';
import type { SearchLimits } from './search-way.ts';

export type DryFitReportOptions = {
  readonly onProgress?: (progress: DryFitProgress) => void;
  readonly isCancelled?: () => boolean;
  /** Milliseconds since any moment: an engine has no clock of its own. Left out = only cells bound the search. */
  readonly nowMs?: () => number;
  /** Of all searches together, ms; what is not known by then stays open. */
  readonly budgetMs?: number;
  readonly finestMm?: number;
  readonly mostCells?: number;
};

const DEFAULT_BUDGET_MS = 12_000;
const DEFAULT_FINEST_MM = 1;
const DEFAULT_MOST_CELLS = 150_000;
/** Of the budget: verdicts, numbers, deciding dimension; the rest is for remedies. */
const SHARES = { verdict: 0.35, margin: 0.6, dimension: 0.7, remedies: 1 } as const;
const UNBOUNDED: WayMargin = { atLeastMm: null, atMostMm: null };

type Standing = 'in' | 'out' | 'open';

/** Refused where the question can't be asked: outline, place, opening; never because it does not go in. */
export function dryFitReport(
  question: DryFitQuestion,
  options: DryFitReportOptions = {},
): DryFitReport | Refusal {
  const refusal = refuseTilt(question);
  if (refusal !== null) return refusal;
  const run = new ReportRun(options);
  const { cavity, profile, widthMm, final, clearances } = question;
  const place = placeBox({ cavity, profile, widthMm, pose: final, clearances });
  if (isRefusal(place)) return place;
  if (place.outsideSection) {
    const why = 'no corner of the box stands in the cargo space';
    return refuse('final', { allowed: 'a place in the cargo space', got: null, why });
  }
  const nominal = reportCase(cavity, question, 'nominal');
  if (isRefusal(nominal)) return nominal;
  const [worst, best] = [reportCase(cavity, question, 'worst'), reportCase(cavity, question, 'best')];
  const limits = run.limitsUntil(SHARES.verdict);
  const stands = standsFree(nominal.input);
  const standing = {
    // What overlaps as measured has no place that could move along with a wall.
    worst: isRefusal(worst) || !stands ? 'open' : standingOf(worst, limits, run),
    nominal: standingOf(nominal, limits, run),
    best: isRefusal(best) ? 'open' : standingOf(best, limits, run),
  } as const;
  const neverStands = !isRefusal(best) && !standsFree(best.input);
  const isNo = neverStands || standing.best === 'out';
  const verdict = standing.worst === 'in' ? 'goes-in' : isNo ? 'does-not-go-in' : 'too-close';

  const search = (from: ReportCase | Refusal, known: Standing) =>
    isRefusal(from) || !standsFree(from.input)
      ? null
      : wayMargin(from.input, known === 'open' ? null : known === 'in', run.limitsUntil(SHARES.margin));
  run.tell('margin', SHARES.verdict, null);
  const found = search(nominal, standing.nominal);
  const atWorst = verdict === 'does-not-go-in' ? null : search(worst, standing.worst);
  const atBest = standing.nominal === 'in' ? null : search(best, standing.best);
  for (const each of [found, atWorst, atBest]) run.cells += each?.cells ?? 0;

  const shown = shownPath({ nominal, worst, best }, { nominal: found, worst: atWorst, best: atBest }, run);
  const stuck = stands ? (found?.overlapping ?? null) : [nominal.input.final];
  const jamPath = standing.nominal === 'in' ? null : stuck;
  const margin = found?.margin ?? UNBOUNDED;
  const jam = jamPath === null ? null : withMiddle(tightestOn(cavity, nominal.input, jamPath, true), widthMm);
  const tight =
    shown === null ? null : withMiddle(tightestOn(cavity, shown.from.input, shown.path, false), widthMm);
  const report: DryFitReport = {
    verdict,
    tooClose: verdict === 'too-close' ? whyTooClose(nominal, worst, standing) : null,
    margin,
    marginAtWorst: atWorst?.margin ?? UNBOUNDED,
    marginAtBest: atBest?.margin ?? UNBOUNDED,
    wantedMm: clearances.openingMm,
    keepsWanted: (margin.atLeastMm ?? -1) >= clearances.openingMm,
    fits: { asMeasured: place.fits, atWorst: place.fitsAtWorst, clearances: place.clearances },
    path: shown === null ? [] : middled(shown.path, widthMm),
    pathWalls: shown?.walls ?? null,
    tightest: tight,
    shortBy: standing.nominal === 'in' ? null : shortOf(margin, standing.nominal),
    jam,
    decidingDimension: null,
    remedies: [],
    assumptions: assumptionsOf(question, nominal),
    notConsidered: ['yaw-and-roll', 'soft-walls', 'lifting-by-hand', 'several-people'],
    cutChecked: null,
    drawn: {
      space: nominal.input.space,
      outside: nominal.input.outside,
      opening: nominal.input.opening,
      obstacles: nominal.input.obstacles.map(({ name, polygon }) => ({ name, polygon })),
    },
    provedToMm: limits.finestMm,
    cells: run.cells,
    ms: run.ms(),
  };
  if (verdict === 'goes-in') return run.finished(report);

  run.tell('deciding-dimension', SHARES.margin, report);
  const settled = (surer: CavityResult) => isSettled(question, surer, run.limitsUntil(SHARES.dimension));
  const deciding = verdict === 'too-close' ? decidingDimension(cavity, jam ?? tight, settled) : null;
  const decided = { ...report, decidingDimension: deciding };
  run.tell('remedies', SHARES.dimension, decided);
  const remedies = remediesFor(question, jam ?? tight, run.limitsUntil(SHARES.remedies), (soFar) =>
    run.tell('remedies', run.share(), { ...decided, remedies: [...soFar] }),
  );
  return run.finished({ ...decided, remedies });
}

/** Clock, budget and progress of one report. */
class ReportRun {
  cells = 0;
  private readonly options: DryFitReportOptions;
  private readonly startedMs: number;

  constructor(options: DryFitReportOptions) {
    this.options = options;
    this.startedMs = options.nowMs?.() ?? 0;
  }

  ms(): number {
    return (this.options.nowMs?.() ?? 0) - this.startedMs;
  }

  share(): number {
    return Math.min(1, this.ms() / this.budgetMs());
  }

  limitsUntil(share: number): SearchLimits {
    const { isCancelled, finestMm = DEFAULT_FINEST_MM, mostCells = DEFAULT_MOST_CELLS } = this.options;
    const shouldStop = () => isCancelled?.() === true || this.ms() >= share * this.budgetMs();
    return { finestMm, mostCells, shouldStop };
  }

  tell(step: DryFitProgress['step'], share: number, soFar: DryFitReport | null): void {
    this.options.onProgress?.({ step, share, soFar });
  }

  finished(report: DryFitReport): DryFitReport {
    const last = { ...report, cells: this.cells, ms: this.ms() };
    this.tell('done', 1, last);
    return last;
  }

  private budgetMs(): number {
    return this.options.budgetMs ?? DEFAULT_BUDGET_MS;
  }
}

function refuseTilt({ final, thetaRange }: DryFitQuestion): Refusal | null {
  if (thetaRange === null) return null;
  if (final.thetaRad >= thetaRange.minRad && final.thetaRad <= thetaRange.maxRad) return null;
  const allowed = `${thetaRange.minRad} to ${thetaRange.maxRad} rad`;
  const why = 'in its place it is tipped farther than it may be on the way';
  return refuse('final.thetaRad', { allowed, got: final.thetaRad, why });
}

/** Goes in, does not, or open: asked at bare touching. A place that is overlapped is no answer about the way. */
function standingOf({ input }: ReportCase, limits: SearchLimits, run?: ReportRun): Standing {
  const result = dryFit(input, limits);
  if (isRefusal(result)) return 'open';
  if (run !== undefined) run.cells += result.cells;
  if (result.verdict === 'too-close' || result.decidedBy === 'place') return 'open';
  return result.verdict === 'loads' ? 'in' : 'out';
}

function isSettled(question: DryFitQuestion, cavity: CavityResult, limits: SearchLimits): boolean {
  const at = (walls: SceneWalls): Standing => {
    const built = reportCase(cavity, question, walls);
    return isRefusal(built) ? 'open' : standingOf(built, limits);
  };
  return at('worst') === 'in' || at('best') === 'out';
}

type ByWalls<T> = Readonly<Record<SceneWalls, T>>;

/** As measured where that is known, else at worst, else at best. */
function shownPath(
  cases: ByWalls<ReportCase | Refusal>,
  searches: ByWalls<MarginSearch | null>,
  run: ReportRun,
): { readonly path: readonly Pose[]; readonly walls: SceneWalls; readonly from: ReportCase } | null {
  for (const walls of ['nominal', 'worst', 'best'] as const) {
    const from = cases[walls];
    if (isRefusal(from)) continue;
    const roomy = searches[walls]?.path ?? null;
    if (roomy !== null) return { path: roomy, walls, from };
    const plain = dryFit(from.input, run.limitsUntil(SHARES.margin));
    if (!isRefusal(plain) && plain.verdict === 'loads') return { path: plain.path, walls, from };
  }
  return null;
}

function whyTooClose(
  nominal: ReportCase,
  worst: ReportCase | Refusal,
  standing: ByWalls<Standing>,
): DryFitReport['tooClose'] {
  if (!standsFree(nominal.input) || (!isRefusal(worst) && !standsFree(worst.input))) return 'place';
  return standing.worst === 'out' || standing.best === 'in' ? 'plus-minus' : 'undecided';
}

function shortOf({ atLeastMm, atMostMm }: WayMargin, standing: Standing): DryFitReport['shortBy'] {
  if (standing !== 'out' && atMostMm === null) return null;
  return {
    atLeastMm: Math.max(0, -(atMostMm ?? 0)),
    atMostMm: atLeastMm === null ? null : Math.max(0, -atLeastMm),
  };
}

function withMiddle<T extends { readonly pose: Pose }>(tight: T | null, widthMm: number): T | null {
  return tight === null ? null : { ...tight, pose: { ...tight.pose, zMm: tight.pose.zMm + widthMm / 2 } };
}

function assumptionsOf({ thetaRange }: DryFitQuestion, { scene }: ReportCase): DryFitAssumption[] {
  return [
    ...scene.assumptions,
    thetaRange === null ? 'turning-over-allowed' : 'upright-only-within-the-tilts-allowed',
    'place-follows-the-wall-behind',
  ];
}
