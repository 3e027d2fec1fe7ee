/// <reference types="node" />
// Largest profile that loads, on invented cargo spaces: its area against the best of an exhaustive 10 mm grid, and time. The
// grid is searched whole, from the largest area down: what contains a jamming profile jams, what lies in a loading one
// loads, and the first that loads is the best. Undecided ones count as a no on both sides.
//
//   node packages/cargo/bench/largest.bench.ts --vehicles 12 --seconds 5 --grid-seconds 20
import { parseArgs } from 'node:util';
import type { LargestProfileInput, ProfileFamily, ProfileMeasures } from '@gusset/contracts/dryfit';
import { isRefusal } from '@gusset/units';
import { PROFILE_FAMILIES } from '../src/dryfit/profile-family.ts';
import { dryFit, largestProfile } from '../src/index.ts';
import { boundsOf } from '../src/plane/polygon.ts';
import { randomCase, seeded } from './random-scene.ts';

const { values } = parseArgs({
  options: {
    vehicles: { type: 'string', default: '12' },
    seconds: { type: 'string', default: '5' },
    'grid-seconds': { type: 'string', default: '20' },
    seed: { type: 'string', default: '1' },
  },
});
const GRID_MM = 10;
const TAPER_MM = 40;
const FAMILIES: readonly ProfileFamily[] = ['box', 'wedge', 'clipped'];
const random = seeded(Number(values.seed));
/** Processor time: a busy machine doesn't count against the search. */
const now = (): number => process.cpuUsage().user / 1_000;

console.log('vehicle family   area share of grid  bound/area  seconds  runs  grid runs');
const shares: number[] = [];
let unfinished = 0;
for (let vehicle = 1; vehicle <= Number(values.vehicles); ) {
  const given = randomCase(random);
  if (given === null) continue;
  for (const family of FAMILIES) measure(vehicle, wishOf(given, family));
  vehicle++;
}
shares.sort((a, b) => a - b);
const short = shares.filter((share) => share < 0.995).length;
console.log(
  `${shares.length} compared: least ${shares[0]?.toFixed(4)}, ${short} more than 0.5 % below the grid; ` +
    `${unfinished} grids not finished; ${Math.round(process.resourceUsage().maxRSS / 1_024)} MB at most`,
);

function wishOf(
  given: NonNullable<ReturnType<typeof randomCase>>,
  family: ProfileFamily,
): LargestProfileInput {
  const { body, final, ...scene } = given;
  const { xMaxMm, yMaxMm } = boundsOf(body.profile);
  const [b, h] = [10 * Math.ceil(xMaxMm / 8), 10 * Math.ceil(yMaxMm / 8)];
  return {
    scene,
    anchor: final,
    family,
    ranges: {
      b: { minMm: 150, maxMm: b },
      h: { minMm: 150, maxMm: h },
      t: { minMm: 110, maxMm: b },
      m: { minMm: 50, maxMm: h },
    },
    taperMm: family === 'box' ? 0 : TAPER_MM,
  };
}

function measure(vehicle: number, wish: LargestProfileInput): void {
  const started = now();
  const isOver = () => now() - started >= Number(values.seconds) * 1_000;
  const found = largestProfile(wish, { shouldStop: isOver });
  const seconds = (now() - started) / 1_000;
  if (isRefusal(found)) throw new Error(JSON.stringify(found));
  const grid = bestOfGrid(wish);
  const area = found.best?.areaMm2 ?? 0;
  if (grid.isWhole && grid.areaMm2 > 0) shares.push(area / grid.areaMm2);
  if (!grid.isWhole) unfinished++;
  const share = !grid.isWhole ? 'unfinished' : grid.areaMm2 === 0 ? 'none' : (area / grid.areaMm2).toFixed(4);
  const bound = area === 0 ? '-' : (found.upperBoundMm2 / area).toFixed(3);
  console.log(
    [
      String(vehicle).padStart(7),
      wish.family.padEnd(8),
      share.padStart(18),
      bound.padStart(11),
      seconds.toFixed(2).padStart(8),
      String(found.runs).padStart(5),
      String(grid.runs).padStart(10),
    ].join(' '),
  );
}

function bestOfGrid(wish: LargestProfileInput) {
  const shape = PROFILE_FAMILIES[wish.family];
  const all = gridOf(wish).map((measures) => ({ measures, areaMm2: shape.areaMm2(measures) }));
  all.sort((a, b) => b.areaMm2 - a.areaMm2);
  const jamming: ProfileMeasures[] = [];
  const started = now();
  let runs = 0;
  for (const { measures, areaMm2 } of all) {
    if (jamming.some((known) => contains(measures, known))) continue;
    if (now() - started > Number(values['grid-seconds']) * 1_000) return { areaMm2: 0, runs, isWhole: false };
    runs++;
    const body = { profile: [...shape.profile(measures)] };
    const answer = dryFit({ ...wish.scene, body, final: wish.anchor }, { finestMm: 1, mostCells: 60_000 });
    if (isRefusal(answer)) throw new Error(JSON.stringify(answer));
    if (answer.verdict === 'loads') return { areaMm2, runs, isWhole: true };
    if (answer.verdict === 'does-not-load') jamming.push(leastJamming(wish, measures));
  }
  return { areaMm2: 0, runs, isWhole: true };
}

/** Halves toward the least of the family while it still jams: one small no rules out many larger ones. */
function leastJamming(wish: LargestProfileInput, measures: ProfileMeasures): ProfileMeasures {
  const shape = PROFILE_FAMILIES[wish.family];
  let jams = measures;
  for (const share of [0.5, 0.25, 0.12]) {
    const shrunk = (key: 'b' | 't' | 'h' | 'm') =>
      jams[key] - share * Math.max(0, jams[key] - (wish.ranges[key]?.minMm ?? jams[key]));
    const smaller = { b: shrunk('b'), t: shrunk('t'), h: shrunk('h'), m: shrunk('m') };
    if (smaller.t > smaller.b || smaller.m > smaller.h) continue;
    const body = { profile: [...shape.profile(smaller)] };
    const answer = dryFit({ ...wish.scene, body, final: wish.anchor }, { finestMm: 3, mostCells: 10_000 });
    if (!isRefusal(answer) && answer.verdict === 'does-not-load') jams = smaller;
  }
  return jams;
}

function gridOf({ family, ranges, taperMm = 0 }: LargestProfileInput): ProfileMeasures[] {
  const { b, h, t, m } = ranges;
  const bs = steps(b);
  const hs = steps(h);
  if (family === 'box')
    return bs.flatMap((deep) => hs.map((high) => ({ b: deep, t: deep, h: high, m: high })));
  const tops = steps(t ?? b);
  const fronts = family === 'wedge' ? [0] : steps(m ?? h);
  return bs.flatMap((deep) =>
    tops
      .filter((top) => top <= deep - taperMm)
      .flatMap((top) =>
        hs.flatMap((high) =>
          fronts.filter((front) => front < high).map((front) => ({ b: deep, t: top, h: high, m: front })),
        ),
      ),
  );
}

function steps({ minMm, maxMm }: { readonly minMm: number; readonly maxMm: number }): number[] {
  return Array.from({ length: Math.floor((maxMm - minMm) / GRID_MM) + 1 }, (_, i) => minMm + i * GRID_MM);
}

function contains(outer: ProfileMeasures, inner: ProfileMeasures): boolean {
  return outer.b >= inner.b && outer.t >= inner.t && outer.h >= inner.h && outer.m >= inner.m;
}
