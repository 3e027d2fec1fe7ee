// In which order to cut so that the fence is set as seldom as possible.
//
// Strips come off either end of a piece, each at its own width against a true edge, so that no size is what other cuts
// happened to leave. A setting serves every sheet at once: at a given setting, cutting all that it can cut never costs a
// later setting, so only the order of settings is searched (beam search over sets of settings, widest first).
import type { CutLevel } from './cut-levels.ts';

/** A fence that stands this close is not moved, mm. */
export const SAME_SETTING_MM = 0.05;
/** Partial orders kept at each number of settings. */
const BEAM = 48;

export type PlannedCut = {
  readonly level: number;
  readonly line: number;
  readonly against: 'low' | 'high';
  readonly fenceMm: number;
};

/** Strips still in one piece: from `low` to `high`, both included; both equal = cut up. */
type LevelState = { readonly low: number; readonly high: number };
type State = {
  readonly levels: readonly LevelState[];
  readonly cuts: readonly PlannedCut[];
  readonly left: number;
};

/** Cuts grouped by setting, in order. Every line of every level is cut once. */
export function orderCuts(levels: readonly CutLevel[]): readonly (readonly PlannedCut[])[] {
  const total = levels.reduce((sum, level) => sum + level.lines.length, 0);
  let states: readonly { readonly state: State; readonly groups: readonly (readonly PlannedCut[])[] }[] = [
    {
      state: {
        levels: levels.map(({ strips }) => ({ low: 0, high: strips.length - 1 })),
        cuts: [],
        left: total,
      },
      groups: [],
    },
  ];
  for (let settings = 0; settings <= total; settings += 1) {
    const done = states.find(({ state }) => state.left === 0);
    if (done !== undefined) return done.groups;
    const seen = new Set<string>();
    states = states
      .flatMap(({ state, groups }) =>
        settingsOf(levels, state).map((fenceMm) => {
          const next = cutAllAt(levels, state, fenceMm);
          return { state: next, groups: [...groups, next.cuts] };
        }),
      )
      .toSorted((one, two) => one.state.left - two.state.left)
      .filter(({ state }) => {
        const key = state.levels.map(({ low, high }) => `${low}-${high}`).join(' ');
        const isNew = !seen.has(key);
        seen.add(key);
        return isNew;
      })
      .slice(0, BEAM);
  }
  return states[0]?.groups ?? [];
}

/** Settings at which something can be cut now, the widest first, each once. */
function settingsOf(levels: readonly CutLevel[], state: State): readonly number[] {
  const widths = openCuts(levels, state).map(({ fenceMm }) => fenceMm);
  const sorted = widths.toSorted((one, two) => two - one);
  return sorted.filter((width, index) => index === 0 || (sorted[index - 1] ?? 0) - width > SAME_SETTING_MM);
}

function cutAllAt(levels: readonly CutLevel[], state: State, fenceMm: number): State {
  const now = [...state.levels];
  const cuts: PlannedCut[] = [];
  for (;;) {
    const open = openCuts(levels, { ...state, levels: now });
    const cut = open.find((one) => Math.abs(one.fenceMm - fenceMm) <= SAME_SETTING_MM);
    if (cut === undefined) break;
    const at = now[cut.level] ?? { low: 0, high: 0 };
    now[cut.level] = cut.against === 'low' ? { ...at, low: at.low + 1 } : { ...at, high: at.high - 1 };
    cuts.push({ ...cut, fenceMm });
  }
  return { levels: now, cuts, left: state.left - cuts.length };
}

/** What can be cut: the first strip against the lower edge, the last against the upper one if it is of use. */
function openCuts(levels: readonly CutLevel[], state: Pick<State, 'levels'>): readonly PlannedCut[] {
  return levels.flatMap((level, index): readonly PlannedCut[] => {
    const at = state.levels[index];
    if (at === undefined || at.low >= at.high || !isFree(level, state)) return [];
    const low = { level: index, line: at.low, against: 'low', fenceMm: widthOf(level, at.low) } as const;
    const high = {
      level: index,
      line: at.high - 1,
      against: 'high',
      fenceMm: widthOf(level, at.high),
    } as const;
    return level.isWanted[at.high] === true && high.fenceMm > 0 ? [low, high] : [low];
  });
}

/** The piece is in hand once it has been cut loose on both sides. */
function isFree({ parent }: CutLevel, { levels }: Pick<State, 'levels'>): boolean {
  if (parent === null) return true;
  const at = levels[parent.level];
  if (at === undefined) return false;
  return parent.strip < at.low || parent.strip > at.high || at.low === at.high;
}

function widthOf(level: CutLevel, strip: number): number {
  const piece = level.strips[strip];
  if (piece === undefined) return 0;
  return level.along === 'width' ? piece.lengthMm : piece.widthMm;
}

/**
 * Fewest settings that any order needs: cuts that no setting can share. Each line is cut at the width of the strip
 * below it or of the one above.
 */
export function leastSettings(levels: readonly CutLevel[]): number {
  const choices = levels
    .flatMap((level) =>
      level.lines.map((_, line) =>
        level.isWanted[line + 1] === true
          ? [widthOf(level, line), widthOf(level, line + 1)]
          : [widthOf(level, line)],
      ),
    )
    .toSorted((one, two) => one.length - two.length);
  const taken: number[] = [];
  let least = 0;
  for (const widths of choices) {
    // Settings within a hair of each other may be one: count only what is clearly apart.
    if (widths.some((width) => taken.some((one) => Math.abs(one - width) <= 2 * SAME_SETTING_MM))) continue;
    taken.push(...widths);
    least += 1;
  }
  return least;
}
