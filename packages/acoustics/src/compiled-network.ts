// A network (network.ts) laid out once in flat arrays, to be solved at any number of frequencies (solve-network.ts)
// with no allocation.
//
// The matrix of a network is a sum: constants, plus each branch's admittance times a pattern of cells that does not
// change with frequency. A branch is resistance, mass and stiffness in series (one cone, the air of a chamber, an
// outlet); the blocked coil is the one part of another form. The slope over frequency has the same patterns with the
// admittances' own slopes, and its unknowns come from the same factors: A x' = -A' x.
//
// Pressures are carried as forces on one cone (p Sd) and flows as cone velocities (U / Sd), so that all rows are of
// like size and a chamber at its own resonance (no admittance) needs nothing special.
import { type ComplexList, complexList, emptySystem, type LinearSystem } from './linear-solve.ts';
import type { Motor, Network } from './network.ts';
import type { VoiceCoil } from './voice-coil.ts';

/** Which parts meet which cells, entry by entry, and with what factor; frequency changes none of it. */
export type Pattern = {
  readonly parts: Int32Array;
  readonly cells: Int32Array;
  readonly factors: Float64Array;
};

/** Branches as lists: R + j(w M - K/w), what that admits and its slope over w, and the cells that it goes into. */
export type Branches = {
  readonly resistance: Float64Array;
  readonly mass: Float64Array;
  readonly stiffness: Float64Array;
  readonly admittance: ComplexList;
  readonly slope: ComplexList;
  readonly pattern: Pattern;
  /** Row and column of each entry's cell. */
  readonly rows: Int32Array;
  readonly columns: Int32Array;
};

/**
 * What can be read off a solution: first every motor's velocity (m/s outward), then every outlet's flow (m³/s out of
 * its chamber). Each is a branch's admittance times a force, and the force a sum of unknowns.
 */
export type Taps = {
  readonly branches: Int32Array;
  readonly forces: Pattern;
  /** How much of it moves air out to the listener: m² of a cone, 1 of an outlet, 0 of a cone that looks elsewhere. */
  readonly outside: Float64Array;
  readonly force: ComplexList;
  readonly forceSlope: ComplexList;
  readonly value: ComplexList;
};

/** Rms per volt of the source, rms. */
export type CompiledNetwork = {
  readonly matrix: LinearSystem;
  readonly constants: Float64Array;
  readonly branches: Branches;
  readonly coil: VoiceCoil;
  /** Diagonal cell of each string, how many coils it has in series, and how many strings are like it. */
  readonly coilCells: Int32Array;
  readonly coilCounts: Float64Array;
  readonly copies: Float64Array;
  /** Chamber pressures as forces (N), then string currents (A); and their slopes over w. */
  readonly unknowns: ComplexList;
  readonly unknownSlopes: ComplexList;
  readonly right: ComplexList;
  readonly rightSlope: ComplexList;
  readonly chamberCount: number;
  /** By unknown: air that leaks out, m³/s per N; 0 for currents. */
  readonly leaks: Float64Array;
  readonly taps: Taps;
  readonly motorCount: number;
  readonly sums: ComplexList;
};

/** Places in `sums`: current out of the amplifier (A), air out to the listener (m³/s) and its slope over w. */
export const CURRENT = 0;
export const OUTSIDE = 1;
export const OUTSIDE_SLOPE = 2;

const CONE = 0; // the first branch: one cone in no air but its own

type Entry = { readonly cell: number; readonly factor: number };
type Branch = {
  readonly resistance: number;
  readonly mass: number;
  readonly stiffness: number;
  readonly entries: readonly Entry[];
};

export function compileNetwork(network: Network): CompiledNetwork {
  const { chambers, strings, driver } = network;
  const size = chambers.length + strings.length;
  const right = complexList(size);
  right.re.fill(1, chambers.length); // every string stands on the source's one volt
  const leaks = new Float64Array(size);
  chambers.forEach(({ leak }, k) => {
    leaks[k] = leak / driver.sdM2;
  });
  return {
    matrix: emptySystem(size),
    constants: constantCells(network, size),
    branches: layOutBranches(branchesOf(network, size), size),
    coil: network.coil,
    coilCells: wholes(strings, (_, s) => (chambers.length + s) * (size + 1)),
    coilCounts: floats(strings, ({ motors }) => motors.reduce((sum, { drivers }) => sum + drivers, 0)),
    copies: floats(strings, ({ copies }) => copies),
    unknowns: complexList(size),
    unknownSlopes: complexList(size),
    right,
    rightSlope: complexList(size),
    chamberCount: chambers.length,
    leaks,
    taps: layOutTaps(tapsOf(network)),
    motorCount: strings.reduce((sum, { motors }) => sum + motors.length, 0),
    sums: complexList(3),
  };
}

/** Leaks on the diagonal of their chambers; amplifier and cable between all strings. */
function constantCells(
  { chambers, strings, driver, outputOhm, cableOhm }: Network,
  size: number,
): Float64Array {
  const cells = new Float64Array(size * size);
  chambers.forEach(({ leak }, k) => {
    cells[k * (size + 1)] = leak / driver.sdM2 ** 2;
  });
  strings.forEach((_, s) => {
    strings.forEach(({ copies }, o) => {
      cells[(chambers.length + s) * size + chambers.length + o] = (outputOhm + cableOhm) * copies;
    });
  });
  return cells;
}

/** The cone, then the air of each chamber, then each outlet. */
function branchesOf({ driver, coil, chambers, strings, outlets }: Network, size: number): Branch[] {
  const perCone = 1 / driver.sdM2 ** 2;
  const onChamber = (k: number): readonly Entry[] => [{ cell: k * (size + 1), factor: perCone }];
  const moved = strings.flatMap(({ motors, copies }, s) =>
    motors.flatMap((motor) =>
      motorEntries(motor, { row: chambers.length + s, size, copies, blTm: coil.blTm }),
    ),
  );
  return [
    {
      resistance: driver.rmsNsPerM,
      mass: driver.mmsKg,
      stiffness: 1 / driver.cmsMPerN,
      entries: moved,
    },
    ...chambers.map(({ absorption, compliance }, k) => ({
      resistance: absorption,
      mass: 0,
      stiffness: 1 / compliance,
      entries: onChamber(k),
    })),
    ...outlets.map(({ acousticResistance, acousticMass, acousticCompliance, chamber }) => ({
      resistance: acousticResistance,
      mass: acousticMass,
      stiffness: acousticCompliance === null ? 0 : 1 / acousticCompliance,
      entries: onChamber(chamber),
    })),
  ];
}

type Place = { readonly row: number; readonly size: number; readonly copies: number; readonly blTm: number };

/** v = mobility (BL i - P_front + P_rear), into its string's voltage and into the air of both faces. */
function motorEntries({ drivers, front, rear }: Motor, { row, size, copies, blTm }: Place): Entry[] {
  const entries: Entry[] = [{ cell: row * (size + 1), factor: blTm ** 2 * drivers }];
  const face = (chamber: number, sign: 1 | -1): void => {
    entries.push(
      { cell: row * size + chamber, factor: -sign * blTm * drivers },
      { cell: chamber * size + row, factor: -sign * blTm * drivers * copies },
      { cell: chamber * (size + 1), factor: drivers * copies },
    );
  };
  if (typeof front === 'number') face(front, 1);
  if (typeof rear === 'number') face(rear, -1);
  if (typeof front === 'number' && typeof rear === 'number') {
    entries.push(
      { cell: front * size + rear, factor: -drivers * copies },
      { cell: rear * size + front, factor: -drivers * copies },
    );
  }
  return entries;
}

function layOutBranches(branches: readonly Branch[], size: number): Branches {
  const pattern = patternOf(branches);
  return {
    resistance: floats(branches, ({ resistance }) => resistance),
    mass: floats(branches, ({ mass }) => mass),
    stiffness: floats(branches, ({ stiffness }) => stiffness),
    admittance: complexList(branches.length),
    slope: complexList(branches.length),
    pattern,
    rows: pattern.cells.map((cell) => Math.floor(cell / size)),
    columns: pattern.cells.map((cell) => cell % size),
  };
}

type Tap = { readonly branch: number; readonly outside: number; readonly entries: readonly Entry[] };

function tapsOf({ driver, coil, chambers, strings, outlets }: Network): Tap[] {
  const cones = strings.flatMap(({ motors, copies }, s) =>
    motors.map(({ drivers, front, rear }) => ({
      branch: CONE,
      outside: front === 'outside' ? driver.sdM2 * drivers * copies : 0,
      entries: [
        { cell: chambers.length + s, factor: coil.blTm },
        ...(typeof front === 'number' ? [{ cell: front, factor: -1 }] : []),
        ...(typeof rear === 'number' ? [{ cell: rear, factor: 1 }] : []),
      ],
    })),
  );
  const flows = outlets.map(({ chamber }, o) => ({
    branch: CONE + 1 + chambers.length + o,
    outside: 1,
    entries: [{ cell: chamber, factor: 1 / driver.sdM2 }],
  }));
  return [...cones, ...flows];
}

function layOutTaps(taps: readonly Tap[]): Taps {
  return {
    branches: wholes(taps, ({ branch }) => branch),
    forces: patternOf(taps),
    outside: floats(taps, ({ outside }) => outside),
    force: complexList(taps.length),
    forceSlope: complexList(taps.length),
    value: complexList(taps.length),
  };
}

/** Entries of one part on the same cell become one. */
function patternOf(parts: readonly { readonly entries: readonly Entry[] }[]): Pattern {
  const merged: { part: number; cell: number; factor: number }[] = [];
  parts.forEach(({ entries }, part) => {
    for (const { cell, factor } of entries) {
      const same = merged.findLast((entry) => entry.part === part && entry.cell === cell);
      if (same === undefined) merged.push({ part, cell, factor });
      else same.factor += factor;
    }
  });
  return {
    parts: wholes(merged, ({ part }) => part),
    cells: wholes(merged, ({ cell }) => cell),
    factors: floats(merged, ({ factor }) => factor),
  };
}

// Filled by a loop: the iterator of `from` takes longer than all else in a search that lays out thousands of networks.

function floats<T>(items: readonly T[], read: (item: T) => number): Float64Array {
  const list = new Float64Array(items.length);
  items.forEach((item, i) => {
    list[i] = read(item);
  });
  return list;
}

function wholes<T>(items: readonly T[], read: (item: T, place: number) => number): Int32Array {
  const list = new Int32Array(items.length);
  items.forEach((item, i) => {
    list[i] = read(item, i);
  });
  return list;
}
