// The lumped circuit of drivers, chambers and outlets, as a description. `compiled-network.ts` solves it.
//
// Impedance analogies: force = voltage, velocity = current; pressure = voltage, volume velocity = current. No
// radiation load; ports and boxes small beside the wavelength.
//
// Unknowns are the pressures of the chambers and the currents of the strings; cone velocities are eliminated:
//   Zm v = BL i - Sd (p_front - p_rear),   Zm = Rms + s Mms + 1/(s Cms)
//   chamber: its air, leak and outlets take what the cones push in
//   string:  sum over its drivers of (Zcoil i + BL v) + Rseries (all currents) = source voltage
import type { ChamberElements } from './chamber.ts';
import type { DriverElements } from './driver-elements.ts';
import type { VoiceCoil } from './voice-coil.ts';

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
