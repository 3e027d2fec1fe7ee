// The lumped circuit of drivers, chambers and outlets, solved exactly at one frequency.
//
// Impedance analogies: force = voltage, velocity = current; pressure = voltage, volume velocity = current. No
// radiation load; ports and boxes small beside the wavelength.
//
// Unknowns are the pressures of the chambers and the currents of the strings; cone velocities are eliminated:
//   Zm v = BL i - Sd (p_front - p_rear),   Zm = Rms + s Mms + 1/(s Cms)
//   chamber: its air, leak and outlets take what the cones push in
//   string:  sum over its drivers of (Zcoil i + BL v) + Rseries (all currents) = source voltage
// Pressures are carried as forces on one cone (p Sd) and flows as cone velocities (U / Sd), so that all rows are of
// like size and a chamber at its own resonance (no admittance) needs nothing special.
import { type ChamberElements, squeezeAdmittance } from './chamber.ts';
import { add, type Complex, complex, multiply, ONE, reciprocal, scale, subtract, ZERO } from './complex.ts';
import type { DriverElements } from './driver-elements.ts';
import { solveLinear } from './linear-solve.ts';
import { blockedImpedance, type VoiceCoil } from './voice-coil.ts';

/** What a cone's face looks at: a chamber by its place in the list, the listener, or a space not counted. */
export type Face = number | 'outside' | 'elsewhere';

/** Drivers at one place in a string. */
export type Motor = { readonly drivers: number; readonly front: Face; readonly rear: Face };

/** A string of motors in series, `copies` of it alike in parallel. */
export type DriverString = { readonly copies: number; readonly motors: readonly Motor[] };

/** A way for air from a chamber to the outside: port or radiator, in series mass, resistance and compliance. */
export type Outlet = {
  readonly chamber: number;
  readonly acousticMass: number;
  readonly acousticResistance: number;
  /** Null = no suspension: a port. */
  readonly acousticCompliance: number | null;
  readonly areaM2: number;
};

export type Network = {
  readonly driver: DriverElements;
  readonly coil: VoiceCoil;
  readonly strings: readonly DriverString[];
  readonly chambers: readonly ChamberElements[];
  readonly outlets: readonly Outlet[];
  readonly outputOhm: number;
  readonly cableOhm: number;
};

/** Everything at one frequency, per volt of the source; rms with rms. */
export type NetworkState = {
  readonly omega: number;
  /** Out of the amplifier, A. */
  readonly current: Complex;
  /** One list per string: of one copy, A; and the motors of it, m/s outward. */
  readonly stringCurrents: readonly Complex[];
  readonly velocities: readonly (readonly Complex[])[];
  /** Pa, by chamber. */
  readonly pressures: readonly Complex[];
  /** Out of the chamber, m³/s, by outlet. */
  readonly outletFlows: readonly Complex[];
  /** All the air that moves out into the listener's space, m³/s. */
  readonly outsideFlow: Complex;
};

const STEP_ASIDE = 1 + 1e-7; // off a lossless resonance that two chambers share, where only the limit exists

/** The network at `frequencyHz`, above 0. */
export function solveNetwork(network: Network, frequencyHz: number): NetworkState {
  const omega = 2 * Math.PI * frequencyHz;
  const state = solveAt(network, omega) ?? solveAt(network, omega * STEP_ASIDE);
  if (state === null)
    throw new Error('a network with resistance in its coils has an answer beside any frequency');
  return state;
}

/** Mechanical impedance of one cone in no air but its own, N s/m. */
export function mechanicalImpedance(driver: DriverElements, omega: number): Complex {
  return complex(driver.rmsNsPerM, omega * driver.mmsKg - 1 / (omega * driver.cmsMPerN));
}

export function outletImpedance(outlet: Outlet, omega: number): Complex {
  const stiffness = outlet.acousticCompliance === null ? 0 : 1 / (omega * outlet.acousticCompliance);
  return complex(outlet.acousticResistance, omega * outlet.acousticMass - stiffness);
}

function solveAt(network: Network, omega: number): NetworkState | null {
  const mobility = reciprocal(mechanicalImpedance(network.driver, omega));
  const { rows, right } = assemble(network, omega, mobility);
  const unknowns = solveLinear(rows, right);
  return unknowns === null ? null : readState(network, omega, mobility, unknowns);
}

function assemble(network: Network, omega: number, mobility: Complex) {
  const { chambers, strings, coil, driver } = network;
  const size = chambers.length + strings.length;
  const rows: Complex[][] = Array.from({ length: size }, () => Array.from({ length: size }, () => ZERO));
  const put = (row: number, column: number, value: Complex) => {
    const cells = rows[row];
    if (cells !== undefined) cells[column] = add(cells[column] ?? ZERO, value);
  };
  const perCone = 1 / driver.sdM2 ** 2;
  for (const [k, chamber] of chambers.entries()) {
    put(k, k, scale(add(squeezeAdmittance(chamber, omega), complex(chamber.leak)), perCone));
  }
  for (const outlet of network.outlets) {
    put(outlet.chamber, outlet.chamber, scale(reciprocal(outletImpedance(outlet, omega)), perCone));
  }
  const blocked = blockedImpedance(coil, omega);
  for (const [s, string] of strings.entries()) {
    const at = chambers.length + s;
    for (const other of strings.keys()) {
      const shared = (network.outputOhm + network.cableOhm) * (strings[other]?.copies ?? 0);
      put(at, chambers.length + other, complex(shared));
    }
    for (const motor of string.motors) {
      putMotor(put, motor, at, string.copies, { mobility, blocked, blTm: coil.blTm });
    }
  }
  return { rows, right: rows.map((_, row) => (row < chambers.length ? ZERO : ONE)) };
}

type Put = (row: number, column: number, value: Complex) => void;

/** v = mobility (BL i - P_front + P_rear), into its string's voltage and into the air of both faces. */
function putMotor(
  put: Put,
  motor: Motor,
  at: number,
  copies: number,
  { mobility, blocked, blTm }: { mobility: Complex; blocked: Complex; blTm: number },
): void {
  const faces = [
    { face: motor.front, sign: 1 },
    { face: motor.rear, sign: -1 },
  ];
  put(at, at, scale(add(blocked, scale(mobility, blTm ** 2)), motor.drivers));
  for (const { face, sign } of faces) {
    if (typeof face !== 'number') continue;
    put(at, face, scale(mobility, -sign * blTm * motor.drivers));
    const pushed = sign * motor.drivers * copies;
    put(face, at, scale(mobility, -pushed * blTm));
    for (const other of faces) {
      if (typeof other.face === 'number') put(face, other.face, scale(mobility, pushed * other.sign));
    }
  }
}

function readState(network: Network, omega: number, mobility: Complex, unknowns: Complex[]): NetworkState {
  const { chambers, strings, driver, coil } = network;
  const forces = unknowns.slice(0, chambers.length);
  const stringCurrents = unknowns.slice(chambers.length);
  const forceAt = (face: Face) => (typeof face === 'number' ? (forces[face] ?? ZERO) : ZERO);
  const velocities = strings.map((string, s) =>
    string.motors.map((motor) => {
      const push = scale(stringCurrents[s] ?? ZERO, coil.blTm);
      return multiply(mobility, add(subtract(push, forceAt(motor.front)), forceAt(motor.rear)));
    }),
  );
  const pressures = forces.map((force) => scale(force, 1 / driver.sdM2));
  const outletFlows = network.outlets.map((outlet) =>
    multiply(pressures[outlet.chamber] ?? ZERO, reciprocal(outletImpedance(outlet, omega))),
  );
  return {
    omega,
    current: strings.reduce((sum, { copies }, s) => add(sum, scale(stringCurrents[s] ?? ZERO, copies)), ZERO),
    stringCurrents,
    velocities,
    pressures,
    outletFlows,
    outsideFlow: sumOutside(network, velocities, pressures, outletFlows),
  };
}

/** Cones that face the listener, outlets and leaks: all at one point. */
function sumOutside(
  { strings, chambers, driver }: Network,
  velocities: readonly (readonly Complex[])[],
  pressures: readonly Complex[],
  outletFlows: readonly Complex[],
): Complex {
  let sum = outletFlows.reduce(add, ZERO);
  for (const [k, chamber] of chambers.entries()) sum = add(sum, scale(pressures[k] ?? ZERO, chamber.leak));
  for (const [s, string] of strings.entries()) {
    for (const [m, motor] of string.motors.entries()) {
      if (motor.front !== 'outside') continue;
      sum = add(sum, scale(velocities[s]?.[m] ?? ZERO, driver.sdM2 * motor.drivers * string.copies));
    }
  }
  return sum;
}
