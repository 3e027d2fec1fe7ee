// The box with the most net litres that stands clear and goes in, for the Box sheet. Net litres are the caller's to
// compute; the search takes only sections that are better, so that few have to be looked for a way out.
//
// Steps along one measure, and along pairs of them against each other, that are halved when none helps (compass search,
// Kolda, Lewis and Torczon 2003) from the best of a few spread-out sections. It finds good boxes and proves no bound.
import type {
  LargestForSheetResult,
  LargestForSheetWish,
  ProfileMeasures,
  SheetFamily,
  SheetProfile,
} from '@gusset/contracts/dryfit';
import type { Pose } from '@gusset/contracts/geometry';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type DryFitScene, dryFitScene, poseOutside } from '../../dry-fit-scene.ts';
import { placeBox } from '../../place-box.ts';
import { dryFit } from '../dry-fit.ts';
import { keepsLimits } from './keeps-limits.ts';
import { SHEET_FAMILIES, sheetMeasures } from './sheet-family.ts';
import { WayMemory } from './way-memory.ts';

export type LargestForSheetOptions = {
  /** Net air of a box of these measures, litres; null where it can't be built. */
  readonly netLitres: (measures: ProfileMeasures, family: SheetFamily) => number | null;
  /** Told of each better box for no floor kept free. */
  readonly onBest?: (best: SheetProfile) => void;
  /** Asked often; ends the search with the best so far. */
  readonly isCancelled?: () => boolean;
};

/** Undecided counts as a no: a coarse look is enough, as every yes is proved. */
const LOOKING = { finestMm: 2, mostCells: 20_000 };
/** Steps of the search, mm. The last is what a shop builds to. */
const STEPS_MM = [80, 40, 20, 10, 5];
/** Where in each range the search may begin. */
const SHARES = [0, 0.35, 0.7];
/** Sections from which the search sets out, of each family. */
const MOST_STARTS = 2;
/** A box is better by at least this, litres: less is no reason to look for a way out. */
const BETTER_BY_LITRES = 0.01;

type Point = ProfileMeasures & { readonly x: number };
type Tried = { readonly point: Point; readonly found: SheetProfile };

/** Lengths mm, finished outside. Refused where the wish runs backwards or the survey leaves no room. */
export function largestForSheet(
  wish: LargestForSheetWish,
  options: LargestForSheetOptions,
): LargestForSheetResult | Refusal {
  const ranges = { ...wish.ranges, slide: wish.slide };
  for (const [key, { minMm, maxMm }] of Object.entries(ranges)) {
    if (minMm <= maxMm) continue;
    const why = 'the least is above the most';
    return refuse(`${key}.maxMm`, { allowed: `at least ${minMm}`, got: maxMm, why });
  }
  const built = dryFitScene(wish.cavity, { walls: 'worst' });
  return isRefusal(built) ? built : new SheetSearch(wish, built, options).run();
}

class SheetSearch {
  private readonly wish: LargestForSheetWish;
  private readonly scene: DryFitScene;
  private readonly options: LargestForSheetOptions;
  private readonly memories = new Map<string, WayMemory>();
  private readonly litres = new Map<string, number | null>();
  private runs = 0;

  constructor(wish: LargestForSheetWish, scene: DryFitScene, options: LargestForSheetOptions) {
    this.wish = wish;
    this.scene = scene;
    this.options = options;
  }

  /** Most floor kept free first: what goes in there is a beginning for every lesser one. */
  run(): LargestForSheetResult {
    const asked = [...new Set([...this.wish.floorKeptFreeMm, 0])].sort((a, b) => b - a);
    const bests = new Map<number, SheetProfile | null>();
    const byFamily = new Map<SheetFamily, Tried>();
    for (const keptFreeMm of asked) {
      for (const family of this.wish.families) {
        const tried = this.searchFamily(family, keptFreeMm, byFamily.get(family) ?? null);
        if (tried !== null) byFamily.set(family, tried);
      }
      bests.set(keptFreeMm, mostLitres([...byFamily.values()]));
    }
    const best = bests.get(0) ?? null;
    return {
      best,
      tradeOff: this.wish.floorKeptFreeMm.map((mm) => ({ keptFreeMm: mm, best: bests.get(mm) ?? null })),
      runs: this.runs,
      endedEarly: this.isCancelled(),
    };
  }

  private searchFamily(family: SheetFamily, keptFreeMm: number, known: Tried | null): Tried | null {
    let best = known;
    for (const start of this.starts(family, keptFreeMm, known)) {
      const end = this.climb(family, keptFreeMm, start);
      if (best === null || end.found.netLitres > best.found.netLitres) best = end;
    }
    return best;
  }

  private starts(family: SheetFamily, keptFreeMm: number, known: Tried | null): Tried[] {
    const starts = known === null ? [] : [known];
    const points = this.spread(family).map((point) => ({ point, litres: this.litresOf(family, point) ?? 0 }));
    points.sort((a, b) => b.litres - a.litres);
    for (const { point, litres } of points) {
      if (starts.length >= MOST_STARTS || litres === 0 || this.isCancelled()) break;
      const found = this.judge(family, point, keptFreeMm);
      if (found !== null) starts.push({ point, found });
    }
    return starts;
  }

  private spread(family: SheetFamily): Point[] {
    const { ranges, slide } = this.wish;
    const { varies } = SHEET_FAMILIES[family];
    const origin = { b: ranges.b.minMm, t: ranges.t.minMm, h: ranges.h.minMm, m: ranges.m.minMm };
    const at = { ...origin, x: Math.max(slide.minMm, Math.min(0, slide.maxMm)) };
    return varies.reduce<Point[]>(
      (points, key) =>
        points.flatMap((point) =>
          SHARES.map((share) => ({
            ...point,
            [key]: ranges[key].minMm + share * (ranges[key].maxMm - ranges[key].minMm),
          })),
        ),
      [at],
    );
  }

  private climb(family: SheetFamily, keptFreeMm: number, start: Tried): Tried {
    let here = start;
    for (const stepMm of STEPS_MM) {
      for (let next = this.step(family, keptFreeMm, here, stepMm); next !== null; ) {
        here = next;
        next = this.step(family, keptFreeMm, here, stepMm);
      }
    }
    return here;
  }

  /** The neighbour with the most litres that goes in; null where none is better. */
  private step(family: SheetFamily, keptFreeMm: number, from: Tried, stepMm: number): Tried | null {
    const better = this.neighbours(family, from.point, stepMm)
      .map((point) => ({ point, litres: this.litresOf(family, point) ?? 0 }))
      .filter(({ litres }) => litres > from.found.netLitres + BETTER_BY_LITRES)
      .sort((a, b) => b.litres - a.litres);
    for (const { point } of better) {
      if (this.isCancelled()) return null;
      const found = this.judge(family, point, keptFreeMm);
      if (found === null) continue;
      if (keptFreeMm === 0) this.tell(found);
      return { point, found };
    }
    return null;
  }

  private neighbours(family: SheetFamily, point: Point, stepMm: number): Point[] {
    const moves = SHEET_FAMILIES[family].varies;
    const slides = [-stepMm, 0, stepMm].filter(
      (by) => by === 0 || this.wish.slide.minMm < this.wish.slide.maxMm,
    );
    const single = moves.map((up) => ({ ...point, [up]: point[up] + stepMm }));
    const paired = moves.flatMap((up) =>
      moves
        .filter((down) => down !== up)
        .map((down) => ({ ...point, [up]: point[up] + stepMm, [down]: point[down] - stepMm })),
    );
    return [...single, ...paired].flatMap((moved) => slides.map((by) => ({ ...moved, x: moved.x + by })));
  }

  private bestTold = 0;
  private tell(found: SheetProfile): void {
    if (found.netLitres <= this.bestTold) return;
    this.bestTold = found.netLitres;
    this.options.onBest?.(found);
  }

  private litresOf(family: SheetFamily, point: Point): number | null {
    const { ranges, slide } = this.wish;
    const { varies } = SHEET_FAMILIES[family];
    const isWithin = varies.every(
      (key) => point[key] >= ranges[key].minMm && point[key] <= ranges[key].maxMm,
    );
    if (!isWithin || point.x < slide.minMm || point.x > slide.maxMm) return null;
    const measures = sheetMeasures(family, point);
    if (measures === null || !keepsLimits(this.wish, family, measures)) return null;
    const { b, t, h, m } = measures;
    const key = `${family} ${b} ${t} ${h} ${m}`;
    const known = this.litres.get(key);
    if (known !== undefined) return known;
    const litres = this.options.netLitres(measures, family);
    this.litres.set(key, litres);
    return litres;
  }

  /** Null where it stands too far out, too near something, or isn't shown to go in. */
  private judge(family: SheetFamily, point: Point, keptFreeMm: number): SheetProfile | null {
    const netLitres = this.litresOf(family, point);
    const measures = sheetMeasures(family, point);
    if (netLitres === null || measures === null) return null;
    const final = { ...this.wish.anchor, xMm: this.wish.anchor.xMm + point.x };
    const frontXMm = final.xMm + measures.b * Math.cos(final.thetaRad);
    if (frontXMm > this.wish.cavity.opening.from.xMm - keptFreeMm) return null;
    const profile = SHEET_FAMILIES[family].profile(measures);
    const { cavity, widthMm, clearances } = this.wish;
    const placed = placeBox({ cavity, profile, widthMm, pose: final, clearances });
    if (isRefusal(placed) || !placed.fits) return null;
    if (placed.clearances.some(({ verdict }) => verdict !== 'clear')) return null;
    const path = this.wayOf(family, measures, final);
    if (path.length === 0) return null;
    const areaMm2 = SHEET_FAMILIES[family].areaMm2(measures);
    return { family, measures, profile: [...profile], final, netLitres, areaMm2, path };
  }

  private wayOf(family: SheetFamily, measures: ProfileMeasures, final: Pose): readonly Pose[] {
    const place = `${family} ${final.xMm}`;
    const memory = this.memories.get(place) ?? new WayMemory();
    this.memories.set(place, memory);
    const known = memory.recall(measures);
    if (known !== null) return known;
    this.runs++;
    const profile = [...SHEET_FAMILIES[family].profile(measures)];
    const { widthMm, thetaRange } = this.wish;
    // A box in place is told by the middle of its width, the planner's by its left side.
    const zMm = final.zMm - widthMm / 2;
    const answer = dryFit(
      {
        ...this.scene.scene,
        body: { profile, widthMm },
        clearance: { movingMm: 0, finalMm: 0 },
        start: poseOutside(this.scene, profile, final.thetaRad, zMm),
        final: { ...final, zMm },
        thetaRange,
      },
      { ...LOOKING, shouldStop: () => this.isCancelled() },
    );
    if (isRefusal(answer)) return [];
    if (answer.verdict === 'does-not-load') memory.keepJamming(measures);
    if (answer.verdict !== 'loads') return [];
    const path = answer.path.map((pose) => ({ ...pose, zMm: pose.zMm + widthMm / 2 }));
    memory.keepLoading(measures, path);
    return path;
  }

  private isCancelled(): boolean {
    return this.options.isCancelled?.() ?? false;
  }
}

function mostLitres(tried: readonly Tried[]): SheetProfile | null {
  return tried.reduce<SheetProfile | null>(
    (best, { found }) => (best === null || found.netLitres > best.netLitres ? found : best),
    null,
  );
}
