// How loud a design can be at most, from the elements of its circuit without solving it: for ruling out what can't win.
//
// F = force of one cone at the most volts, Z = Zr + j Zi = impedance of a cone with its motor, S = area of one cone, n
// cones, C = compliance of a chamber, z = nS²/(admittance of what lies behind the cones) their load by the air.
// Everything the cones work on is passive: its impedance has no negative real part. So
//
//   no box, closed box     |U| <= nS F / Zr                         the air can at best cancel Zi; leaks only take away
//                          |U| <= nS w xmax / √2
//   one outlet             U is what the chamber's air is squeezed by (port, cone and leak together):
//                          |U| = nS F / |Z (Y + Yc)/Yc + nS²/Yc| with any passive Y, least where Y cancels the reactance:
//                          |U| <= F |Z| w C / (S Zr)
//                          |U| <= cones at xmax + (1 + G |Zo|) outlet at its limit,   leak G, outlet impedance Zo
//   bandpass               X = Z + z(rear). The front passes |Y/(Y + k)| of nS F/X, k = Yc + nS²/X. Y -> Y/(Y + k) takes the
//                          right half-plane into a disc that reaches |k|/Re k, so
//                          |U| <= nS F |k| / (|X| Re k) + rear leak
//                          |U| <= (1 + G |Zo|) outlet at its limit + rear leak of cones at xmax
//
// Compliance with absorption: |Yc| <= wC and 0 <= Im Yc <= wC, Re Yc >= 0; each bound holds with those.

import { type ChamberElements, squeezeAdmittance } from '../chamber.ts';
import { add, complex, magnitude, reciprocal, scale } from '../complex.ts';
import type { Network, Outlet } from '../network.ts';
import { SEARCH_FREQUENCIES_HZ } from './aims.ts';
import { levelDb } from './levels.ts';
import type { Trial } from './trial.ts';

/** A bound must lie above the solved value in spite of rounding. */
const ROUNDING = 1 + 1e-9;

/** m³/s peak that an outlet may move at its own limit; Infinity where none is stated. */
export type OutletLimit = (omega: number) => number;

/** Fills `mostDb` with a level that `reach` doesn't exceed, by frequency. */
export function boundLevels(
  trial: Trial,
  network: Network,
  outletLimit: OutletLimit,
  cabinDb: Float64Array,
  mostDb: Float64Array,
): void {
  for (const [i, frequencyHz] of SEARCH_FREQUENCIES_HZ.entries()) {
    const omega = 2 * Math.PI * frequencyHz;
    const flow = mostFlow(trial, network, outletLimit, omega, i);
    mostDb[i] = levelDb(flow * ROUNDING, omega) + (cabinDb[i] ?? 0);
  }
}

/** Everything at one frequency that the bounds are made of. */
type Point = {
  readonly omega: number;
  readonly re: number;
  readonly im: number;
  /** Of one cone at the most volts, N. */
  readonly forceN: number;
  readonly areaM2: number;
  readonly sdM2: number;
  /** Cones at their travel, m³/s rms. */
  readonly travelFlow: number;
};

function mostFlow(trial: Trial, network: Network, limit: OutletLimit, omega: number, i: number): number {
  const { motors, mostVolts, xmaxM } = trial;
  const point: Point = {
    omega,
    re: motors.re[i] ?? 0,
    im: motors.im[i] ?? 0,
    forceN: (motors.forceN[i] ?? 0) * mostVolts,
    areaM2: motors.areaM2,
    sdM2: network.driver.sdM2,
    travelFlow: (motors.areaM2 * omega * xmaxM) / Math.SQRT2,
  };
  const [first, second] = network.chambers;
  const [outlet] = network.outlets;
  if (first === undefined || outlet === undefined) return directFlow(point);
  if (second === undefined) return ventedFlow(point, first, outlet, limit);
  return bandpassFlow(point, first, second, outlet, limit);
}

function directFlow({ areaM2, forceN, re, travelFlow }: Point): number {
  return Math.min((areaM2 * forceN) / re, travelFlow);
}

function ventedFlow(point: Point, chamber: ChamberElements, outlet: Outlet, limit: OutletLimit): number {
  const { omega, re, im, forceN, sdM2, travelFlow } = point;
  const byForce = (forceN * Math.hypot(re, im) * omega * chamber.compliance) / (sdM2 * re);
  return Math.min(byForce, travelFlow + outletFlow(omega, chamber, outlet, limit));
}

function bandpassFlow(
  point: Point,
  rear: ChamberElements,
  front: ChamberElements,
  outlet: Outlet,
  limit: OutletLimit,
): number {
  const { omega, re, im, forceN, areaM2, sdM2, travelFlow } = point;
  const rearAir = add(squeezeAdmittance(rear, omega), complex(rear.leak));
  const behind = scale(reciprocal(rearAir), areaM2 * sdM2);
  const cone = complex(re + behind.re, im + behind.im);
  const leaking = rear.leak / magnitude(rearAir);
  const seen = scale(reciprocal(cone), areaM2 * sdM2);
  const stiff = omega * front.compliance;
  const reactance =
    front.absorption === 0
      ? Math.abs(seen.im + stiff)
      : Math.max(Math.abs(seen.im), Math.abs(seen.im + stiff));
  const passed = Math.sqrt(1 + (reactance / seen.re) ** 2);
  const byForce = areaM2 * forceN * (passed / magnitude(cone) + leaking / cone.re);
  return Math.min(byForce, outletFlow(omega, front, outlet, limit) + leaking * travelFlow);
}

/** Of an outlet at its limit and of the leak beside it, m³/s rms. */
function outletFlow(omega: number, chamber: ChamberElements, outlet: Outlet, limit: OutletLimit): number {
  const { acousticResistance, acousticMass, acousticCompliance } = outlet;
  const stiffness = acousticCompliance === null ? 0 : 1 / (omega * acousticCompliance);
  const impedance = Math.hypot(acousticResistance, omega * acousticMass - stiffness);
  return ((1 + chamber.leak * impedance) * limit(omega)) / Math.SQRT2;
}
