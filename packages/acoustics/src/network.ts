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
import { addTo, emptySystem, type LinearSystem, solveLinear } from './linear-solve.ts';
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
  const unknowns = solveLinear(assemble(network, omega, mobility));
  return unknowns === null ? null : readState(network, omega, mobility, unknowns);
}

function assemble(network: Network, omega: number, mobility: Complex): LinearSystem {
  const { chambers, strings, coil, driver } = network;
  const system = emptySystem(chambers.length + strings.length);
  const perCone = 1 / driver.sdM2 ** 2;
  chambers.forEach((chamber, k) => {
    addTo(system, k, k, scale(add(squeezeAdmittance(chamber, omega), complex(chamber.leak)), perCone));
  });
  for (const outlet of network.outlets) {
    const admittance = reciprocal(outletImpedance(outlet, omega));
    addTo(system, outlet.chamber, outlet.chamber, scale(admittance, perCone));
  }
  const blocked = blockedImpedance(coil, omega);
  const perMotor = { mobility, blocked, blTm: coil.blTm };
  const seriesOhm = network.outputOhm + network.cableOhm;
  strings.forEach(({ copies, motors }, s) => {
    const row = chambers.length + s;
    strings.forEach((other, o) => {
      addTo(system, row, chambers.length + o, complex(seriesOhm * other.copies));
    });
    for (const motor of motors) addMotor(system, motor, row, copies, perMotor);
    addTo(system, row, system.size, ONE);
  });
  return system;
}

type PerMotor = { readonly mobility: Complex; readonly blocked: Complex; readonly blTm: number };

/** v = mobility (BL i - P_front + P_rear), into its string's voltage and into the air of both faces. */
function addMotor(system: LinearSystem, motor: Motor, row: number, copies: number, per: PerMotor): void {
  const { drivers, front, rear } = motor;
  addTo(system, row, row, scale(add(per.blocked, scale(per.mobility, per.blTm ** 2)), drivers));
  const force = scale(per.mobility, per.blTm * drivers);
  const yielding = scale(per.mobility, drivers * copies);
  if (typeof front === 'number') addFace(system, row, { face: front, sign: 1, copies, force, yielding });
  if (typeof rear === 'number') addFace(system, row, { face: rear, sign: -1, copies, force, yielding });
  if (typeof front !== 'number' || typeof rear !== 'number') return;
  addTo(system, front, rear, scale(yielding, -1));
  addTo(system, rear, front, scale(yielding, -1));
}

type FaceTerms = {
  readonly face: number;
  /** 1 = front: pushes into its chamber when the cone moves outward. */
  readonly sign: 1 | -1;
  readonly copies: number;
  readonly force: Complex;
  readonly yielding: Complex;
};

function addFace(
  system: LinearSystem,
  row: number,
  { face, sign, copies, force, yielding }: FaceTerms,
): void {
  addTo(system, row, face, scale(force, -sign));
  addTo(system, face, row, scale(force, -sign * copies));
  addTo(system, face, face, yielding);
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
