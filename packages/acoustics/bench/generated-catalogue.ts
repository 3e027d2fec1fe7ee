// A catalogue and briefs made up from a seed: for proofs and measurements that need thousands of drivers.
import type { SearchBrief, SearchDriver, SearchKind } from '@gusset/contracts/acoustics';

/** Numbers from 0 to 1, the same for the same seed (mulberry32, by Tommy Ettinger, public domain). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Nominal size in inches, piston area, air as stiff as the suspension, depth, price: a middling one of each size. */
const SIZES = [
  { sdCm2: 137, vasLitres: 12, depthMm: 80, costMinor: 4_500 },
  { sdCm2: 210, vasLitres: 22, depthMm: 105, costMinor: 7_500 },
  { sdCm2: 330, vasLitres: 38, depthMm: 135, costMinor: 12_000 },
  { sdCm2: 490, vasLitres: 62, depthMm: 155, costMinor: 18_000 },
  { sdCm2: 820, vasLitres: 120, depthMm: 185, costMinor: 30_000 },
] as const;

/** Drivers as car audio sells them, each figure spread round the middle of its size. */
export function generatedDrivers(count: number, seed: number): SearchDriver[] {
  const random = seededRandom(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  return Array.from({ length: count }, (_, i) => {
    const size = SIZES[Math.floor(random() * SIZES.length)] ?? SIZES[0];
    const coils = random() < 0.5 ? 1 : 2;
    const nominalOhm = random() < 0.5 ? 4 : 2;
    const hasLossyCoil = random() < 0.3;
    return {
      id: `driver-${String(i).padStart(5, '0')}`,
      parameters: {
        fsHz: between(20, 48),
        qms: between(2.5, 11),
        qes: between(0.28, 0.95),
        vasLitres: size.vasLitres * between(0.5, 1.8),
        sdCm2: size.sdCm2 * between(0.94, 1.06),
        reOhm: nominalOhm * between(0.78, 0.92),
        leMh: between(0.3, 3.5),
        l2Mh: hasLossyCoil ? between(0.3, 3) : null,
        r2Ohm: hasLossyCoil ? between(1, 12) : null,
        xmaxMm: between(5, 24),
        peWatts: Math.round(between(120, 1_500)),
        displacementLitres: between(0.6, 4),
        coils,
      },
      nominalOhm,
      mountingDepthMm: Math.round(size.depthMm * between(0.6, 1.3)),
      costMinor: Math.round(size.costMinor * between(0.5, 3)),
      available: random() < 0.2 ? Math.floor(between(0, 5)) : null,
    };
  });
}

const KIND_SETS: readonly (readonly SearchKind[])[] = [
  ['closed'],
  ['closed', 'vented'],
  ['closed', 'vented', 'single-tuned-bandpass'],
  ['infinite-baffle', 'closed', 'vented', 'single-tuned-bandpass', 'passive-radiator'],
];

/** What a shop is asked for: any aim, from a small sedan to a van. */
export function generatedBrief(seed: number): SearchBrief {
  const random = seededRandom(seed * 7_919 + 17);
  const between = (low: number, high: number) => low + (high - low) * random();
  const pick = <T>(values: readonly [T, ...T[]]): T =>
    values[Math.floor(random() * values.length)] ?? values[0];
  const leastLitres = Math.round(between(10, 30));
  const watts = Math.round(between(150, 1_500));
  const hasCabin = random() < 0.8;
  return {
    aim: pick(['deep', 'loud', 'smooth']),
    kinds: KIND_SETS[seed % KIND_SETS.length] ?? ['closed'],
    mostDrivers: pick([1, 2]),
    net: { leastLitres, mostLitres: Math.round(leastLitres * between(1.5, 4)) },
    power: [
      { loadOhm: 4, watts: watts * 0.55 },
      { loadOhm: 2, watts },
      { loadOhm: 1, watts: watts * 1.6 },
    ].slice(0, pick([2, 3])),
    depthMm: random() < 0.5 ? Math.round(between(90, 190)) : null,
    budgetMinor: random() < 0.5 ? Math.round(between(8_000, 90_000)) : null,
    leastOutputDb: random() < 0.7 ? Math.round(between(98, 112)) : null,
    cabin: hasCabin
      ? { kind: 'shelf', longestM: between(1.8, 3.4), upperQ: 0.7, lowerHz: between(15, 30), lowerQ: 0.7 }
      : null,
    losses: pick([
      { fillFactor: 1, ql: 15, qa: null },
      { fillFactor: 1.12, ql: 10, qa: 20 },
    ]),
    radiators: [
      { count: 1, fsHz: 18, qms: 9, vasLitres: 90, sdCm2: 520, addedMassGrams: 0, xmaxMm: 20 },
      { count: 2, fsHz: 22, qms: 7, vasLitres: 40, sdCm2: 330, addedMassGrams: 0, xmaxMm: null },
    ],
  };
}
