// What a person asks of the catalogue, as typed, and the brief that it makes.
import type {
  Cabin,
  DriverSearchInput,
  PassiveRadiator,
  SearchAim,
  SearchBrief,
  SearchKind,
} from '@gusset/contracts/acoustics';
import type { Money, TypedFigure, TypedLength, TypedVolume } from '@gusset/units';

/** Loads that amplifiers are rated for, Ω. */
export const LOADS = [4, 2, 1] as const;
export type Load = (typeof LOADS)[number];

/** What the sheet already knows. */
export type SearchDefaults = {
  readonly netLitres: number | null;
  /** What the amplifier gives, into the load that the sheet's drivers are. */
  readonly watts: number | null;
  readonly loadOhm: number | null;
  readonly cabin: Cabin | null;
  readonly losses: SearchBrief['losses'];
  /** A radiator that is entered on the sheet; without one that kind of box is not tried. */
  readonly radiators: readonly PassiveRadiator[];
};

export type SearchEntry = {
  readonly aim: SearchAim;
  readonly kinds: readonly SearchKind[];
  readonly mostDrivers: number;
  readonly leastNet: TypedVolume | null;
  readonly mostNet: TypedVolume | null;
  readonly watts: Readonly<Record<Load, TypedFigure | null>>;
  readonly depth: TypedLength | null;
  readonly budget: Money | null;
  readonly leastOutput: TypedFigure | null;
  readonly inStockOnly: boolean;
};

/** A level that a car with one ordinary driver has: what plays softer is no bass system. Anybody may empty it. */
const LEAST_OUTPUT_DB = 105;
/** Round the volume that the sheet aims at. */
const RANGE_ROUND_NET = { least: 0.6, most: 1.5 };

export function startEntry({ netLitres, watts, loadOhm }: SearchDefaults): SearchEntry {
  const load = loadOhm === null ? null : nearestLoad(loadOhm);
  return {
    aim: 'deep',
    kinds: ['closed', 'vented'],
    mostDrivers: 2,
    leastNet: netLitres === null ? null : volumeOf(netLitres * RANGE_ROUND_NET.least),
    mostNet: netLitres === null ? null : volumeOf(netLitres * RANGE_ROUND_NET.most),
    watts: {
      4: load === 4 ? figureOf(watts) : null,
      2: load === 2 ? figureOf(watts) : null,
      1: load === 1 ? figureOf(watts) : null,
    },
    depth: null,
    budget: null,
    leastOutput: figureOf(LEAST_OUTPUT_DB),
    inStockOnly: false,
  };
}

export type EntryField =
  | 'kinds'
  | 'leastNet'
  | 'mostNet'
  | 'watts'
  | 'depth'
  | 'budget'
  | 'leastOutput'
  | 'sheet';
export type EntryProblems = Readonly<Partial<Record<EntryField, string>>>;

/** The question for the API, or what is still open, by field. */
export function askedBy(
  entry: SearchEntry,
  { cabin, losses, radiators }: SearchDefaults,
): DriverSearchInput | { readonly problems: EntryProblems } {
  const problems: Partial<Record<EntryField, string>> = {};
  if (entry.kinds.length === 0) problems.kinds = 'Choose at least one kind of box.';
  if (entry.leastNet === null) problems.leastNet = 'The least net volume, at least 0.5 L.';
  if (entry.mostNet === null) problems.mostNet = 'The most net volume that there is room for.';
  if (entry.leastNet !== null && entry.mostNet !== null && entry.leastNet.litres > entry.mostNet.litres)
    problems.mostNet = `At least ${entry.leastNet.typed} L, the least volume beside it.`;
  const power = LOADS.flatMap((loadOhm) => {
    const watts = entry.watts[loadOhm];
    return watts === null ? [] : [{ loadOhm, watts: watts.value }];
  });
  if (power.length === 0) problems.watts = 'What the amplifier gives into at least one load.';
  if (entry.leastNet === null || entry.mostNet === null || Object.keys(problems).length > 0)
    return { problems };
  return {
    inStockOnly: entry.inStockOnly,
    brief: {
      aim: entry.aim,
      kinds: [...entry.kinds],
      mostDrivers: entry.mostDrivers,
      net: { leastLitres: entry.leastNet.litres, mostLitres: entry.mostNet.litres },
      power,
      depthMm: entry.depth?.mm ?? null,
      budgetMinor: entry.budget?.minor ?? null,
      leastOutputDb: entry.leastOutput?.value ?? null,
      cabin:
        cabin === null
          ? null
          : cabin.kind === 'shelf'
            ? { ...cabin }
            : { kind: 'curve', points: [...cabin.points] },
      losses: { ...losses },
      radiators: radiators.map((radiator) => ({ ...radiator })),
    },
  };
}

const FIELD_OF_PATH: readonly (readonly [start: string, field: EntryField])[] = [
  ['brief.net.leastLitres', 'leastNet'],
  ['brief.net', 'mostNet'],
  ['brief.kinds', 'kinds'],
  ['brief.power', 'watts'],
  ['brief.depthMm', 'depth'],
  ['brief.budgetMinor', 'budget'],
  ['brief.leastOutputDb', 'leastOutput'],
];

/** Where the server's complaints belong; what is no field here comes from the sheet behind. */
export function problemsOf(
  fields: readonly { readonly path: string; readonly message: string }[],
): EntryProblems {
  const problems: Partial<Record<EntryField, string>> = {};
  for (const { path, message } of fields) {
    const field = FIELD_OF_PATH.find(([start]) => path.startsWith(start))?.[1] ?? 'sheet';
    problems[field] ??= message;
  }
  return problems;
}

function nearestLoad(loadOhm: number): Load {
  return LOADS.reduce((best, load) =>
    Math.abs(Math.log(load / loadOhm)) < Math.abs(Math.log(best / loadOhm)) ? load : best,
  );
}

function figureOf(value: number | null): TypedFigure | null {
  return value === null ? null : { value, typed: String(value), note: null };
}

function volumeOf(litres: number): TypedVolume {
  const kept = Math.max(0.5, Math.round(litres * 2) / 2);
  return { litres: kept, typed: String(kept), unit: 'L', note: null };
}
