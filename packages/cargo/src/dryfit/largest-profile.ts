// The largest profile of a family that goes in and comes out. Regions of measures are bounded and halved, best first; a
// region is ruled out by one question: does the smallest profile that any better one in it would contain load?
// (Monotone optimisation after Tuy 2000, with the depth at the floor taken out as the measure to solve for.)
import {
  type LargestProfileInput,
  type LargestProfileResult,
  type LargestProfileWish,
  largestProfileSchema,
  type ProfileMeasures,
} from '@gusset/contracts/dryfit';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type DryFitOptions, dryFit } from './dry-fit.ts';
import { type FamilyShape, PROFILE_FAMILIES } from './profile-family.ts';

export type LargestOptions = {
  readonly shouldStop?: () => boolean;
  /** Ends after so many profiles were looked at: the same answer on any machine. */
  readonly mostRuns?: number;
  /** Told of each better profile. */
  readonly onBetter?: (measures: ProfileMeasures, areaMm2: number) => void;
  /** Ends when nothing can be larger by more than this share. */
  readonly within?: number;
};

/** Coarse while looking; what is found is made certain all the same, and what is undecided counts as a no. */
const LOOKING: DryFitOptions = { finestMm: 2, mostCells: 8_000 };
const WITHIN = 0.002;
/** Where in each range columns are tried first, the middle ones before the ends. */
const COLUMN_SHARES = [0.5, 0.75, 0.25, 1];
/** Depths closer than this are not told apart, mm. */
const DEPTH_STEP_MM = 0.5;
/** Regions narrower than this in every measure are not halved, mm. */
const FINEST_REGION_MM = 1;

type Region = { readonly low: Measures; readonly high: Measures; readonly boundMm2: number };
type Measures = Record<'t' | 'h' | 'm', number>;
type Asked = 'loads' | 'does-not-load' | 'undecided';

export function largestProfile(
  given: LargestProfileInput,
  options: LargestOptions = {},
): LargestProfileResult | Refusal {
  const parsed = largestProfileSchema.safeParse(given);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    const why = issue?.message ?? 'not readable';
    return refuse(issue?.path.join('.') ?? 'largest', { allowed: 'as the schema has it', got: null, why });
  }
  const wish = parsed.data;
  const backwards = (['b', 'h', 't', 'm'] as const).find((key) => {
    const range = wish.ranges[key];
    return range !== null && range.minMm > range.maxMm;
  });
  if (backwards !== undefined) {
    const range = wish.ranges[backwards];
    const why = 'the least is above the most';
    return refuse(`ranges.${backwards}.maxMm`, {
      allowed: `at least ${range?.minMm}`,
      got: range?.maxMm ?? null,
      why,
    });
  }
  const search = new LargestSearch(wish, options);
  const refusal = search.firstRefusal();
  return refusal ?? search.run();
}

class LargestSearch {
  private readonly wish: LargestProfileWish;
  private readonly shape: FamilyShape;
  private readonly shouldStop: () => boolean;
  /** A question once begun is only cut short from outside. */
  private readonly isCancelled: () => boolean;
  private readonly onBetter: NonNullable<LargestOptions['onBetter']>;
  private readonly within: number;
  private readonly loading: ProfileMeasures[] = [];
  private readonly jamming: ProfileMeasures[] = [];
  private best: LargestProfileResult['best'] = null;
  private runs = 0;

  constructor(wish: LargestProfileWish, options: LargestOptions) {
    this.wish = wish;
    this.shape = PROFILE_FAMILIES[wish.family];
    const { shouldStop = () => false, mostRuns = Number.POSITIVE_INFINITY } = options;
    this.isCancelled = shouldStop;
    this.shouldStop = () => this.runs >= mostRuns || shouldStop();
    this.onBetter = options.onBetter ?? (() => undefined);
    this.within = options.within ?? WITHIN;
  }

  /** A scene that can't be is refused for every profile alike. */
  firstRefusal(): Refusal | null {
    const answer = this.fit(this.measures(this.wish.ranges.b.minMm, this.corner('minMm')), {
      ...LOOKING,
      mostCells: 0,
    });
    return isRefusal(answer) ? answer : null;
  }

  run(): LargestProfileResult {
    const whole = this.region(this.corner('minMm'), this.corner('maxMm'));
    const open: Region[] = whole === null ? [] : [whole];
    if (whole !== null) this.climb(whole);
    let unsettledMm2 = 0;
    while (open.length > 0 && !this.shouldStop()) {
      open.sort((a, b) => a.boundMm2 - b.boundMm2);
      const region = open.pop();
      if (region === undefined || region.boundMm2 <= this.target()) break;
      if (this.isRuledOut(region)) continue;
      this.improveIn(region);
      const halves = this.halve(region);
      if (halves.length === 0) unsettledMm2 = Math.max(unsettledMm2, region.boundMm2);
      open.push(...halves);
    }
    const left = Math.max(unsettledMm2, ...open.map(({ boundMm2 }) => boundMm2), 0);
    return { best: this.best, upperBoundMm2: Math.max(left, this.target()), runs: this.runs };
  }

  /** Columns spread over the region, then nearer and nearer to the best: a high target rules out more. */
  private climb({ low, high }: Region): void {
    for (const column of this.columnsOf(low, high)) {
      if (this.shouldStop()) return;
      this.improveIn({ low: column, high: column, boundMm2: 0 });
    }
    for (let share = 0.1; share > 0.005 && this.best !== null && !this.shouldStop(); ) {
      const before = this.best;
      for (const key of this.shape.others) {
        for (const sign of [1, -1]) {
          const others = {
            ...before.measures,
            [key]: before.measures[key] + sign * share * (high[key] - low[key]),
          };
          if (others[key] < low[key] || others[key] > high[key]) continue;
          this.improveIn({ low: others, high: others, boundMm2: 0 });
        }
      }
      if (this.best === before) share /= 2;
    }
  }

  private columnsOf(low: Measures, high: Measures): Measures[] {
    return this.shape.others.reduce<Measures[]>(
      (columns, key) =>
        columns.flatMap((column) =>
          COLUMN_SHARES.map((share) => ({ ...column, [key]: low[key] + share * (high[key] - low[key]) })),
        ),
      [low],
    );
  }

  /** What a better profile has to exceed, mm². */
  private target(): number {
    return (this.best?.areaMm2 ?? 0) * (1 + this.within);
  }

  /** Any profile of the region above the target contains this one: where it jams they all do. */
  private isRuledOut({ low, high }: Region): boolean {
    const depth = this.depthFor(this.target(), high);
    if (depth === null) return true;
    const least = Math.max(depth, this.leastDepth(low));
    return this.ask(this.measures(least, low)) === 'does-not-load';
  }

  /** In the middle of the region, a little better than the best so far; then as deep as goes. */
  private improveIn({ low, high }: Region): void {
    const middle = mix(low, high, 0.5);
    for (const others of [middle, low, high]) {
      const wanted = this.depthFor(this.target(), others);
      if (wanted === null) continue;
      let shown = Math.max(wanted, this.leastDepth(others));
      if (shown > this.wish.ranges.b.maxMm || this.ask(this.measures(shown, others)) !== 'loads') continue;
      let beyond = this.wish.ranges.b.maxMm;
      if (this.ask(this.measures(beyond, others)) === 'loads') shown = beyond;
      while (beyond - shown > DEPTH_STEP_MM && !this.shouldStop()) {
        const depth = (shown + beyond) / 2;
        if (this.ask(this.measures(depth, others)) === 'loads') shown = depth;
        else beyond = depth;
      }
      this.adopt(this.measures(shown, others));
      return;
    }
  }

  private adopt(measures: ProfileMeasures): void {
    const areaMm2 = this.shape.areaMm2(measures);
    if (areaMm2 <= (this.best?.areaMm2 ?? 0)) return;
    const answer = this.fit(measures, LOOKING);
    if (isRefusal(answer) || answer.verdict !== 'loads') return;
    this.best = { measures, areaMm2, path: answer.path };
    this.onBetter(measures, areaMm2);
  }

  private halve({ low, high }: Region): Region[] {
    const widest = this.shape.others.reduce((a, b) => (high[b] - low[b] > high[a] - low[a] ? b : a));
    if (high[widest] - low[widest] <= FINEST_REGION_MM) return [];
    const middle = (low[widest] + high[widest]) / 2;
    const halves = [
      this.region(low, { ...high, [widest]: middle }),
      this.region({ ...low, [widest]: middle }, high),
    ];
    return halves.filter((half) => half !== null);
  }

  private region(low: Measures, high: Measures): Region | null {
    if (this.leastDepth(low) > this.wish.ranges.b.maxMm) return null;
    return { low, high, boundMm2: this.shape.areaMm2(this.measures(this.wish.ranges.b.maxMm, high)) };
  }

  /** Least depth at the floor for which the area is above `areaMm2`; null where not even the deepest is. */
  private depthFor(areaMm2: number, others: Measures): number | null {
    const { minMm, maxMm } = this.wish.ranges.b;
    const area = (b: number) => this.shape.areaMm2(this.measures(b, others));
    if (area(maxMm) <= areaMm2) return null;
    let [low, high] = [minMm, maxMm];
    if (area(low) > areaMm2) return low;
    while (high - low > DEPTH_STEP_MM / 50) {
      const middle = (low + high) / 2;
      if (area(middle) > areaMm2) high = middle;
      else low = middle;
    }
    return low;
  }

  private leastDepth({ t }: Measures): number {
    const { b } = this.wish.ranges;
    return this.shape.others.includes('t') ? Math.max(b.minMm, t + this.wish.taperMm) : b.minMm;
  }

  /** The top is never longer than the taper leaves, the upright part never higher than the whole. */
  private measures(b: number, { t, h, m }: Measures): ProfileMeasures {
    const top = this.shape.others.includes('t') ? Math.min(t, b - this.wish.taperMm) : b;
    return { b, t: top, h, m: Math.min(m, h) };
  }

  private corner(end: 'minMm' | 'maxMm'): Measures {
    const { h, t, m, b } = this.wish.ranges;
    return { h: h[end], t: (t ?? b)[end], m: (m ?? h)[end] };
  }

  private ask(measures: ProfileMeasures): Asked {
    if (this.loading.some((known) => contains(known, measures))) return 'loads';
    if (this.jamming.some((known) => contains(measures, known))) return 'does-not-load';
    const answer = this.fit(measures, LOOKING);
    if (isRefusal(answer) || answer.verdict === 'too-close') return 'undecided';
    (answer.verdict === 'loads' ? this.loading : this.jamming).push(measures);
    return answer.verdict;
  }

  private fit(measures: ProfileMeasures, limits: DryFitOptions) {
    this.runs++;
    const body = { profile: [...this.shape.profile(measures)], widthMm: null };
    return dryFit(
      { ...this.wish.scene, body, final: this.wish.anchor },
      { ...limits, shouldStop: this.isCancelled },
    );
  }
}

function contains(outer: ProfileMeasures, inner: ProfileMeasures): boolean {
  return outer.b >= inner.b && outer.t >= inner.t && outer.h >= inner.h && outer.m >= inner.m;
}

function mix(low: Measures, high: Measures, share: number): Measures {
  const at = (key: keyof Measures) => low[key] + (high[key] - low[key]) * share;
  return { t: at('t'), h: at('h'), m: at('m') };
}
