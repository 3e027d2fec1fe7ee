// A system as a circuit for ngspice, written from the physics and not from src/: every driver, coil, port and radiator
// is a part of its own, nothing is merged by symmetry, filters and cabin are resistors, coils and capacitors.
// Mechanical loops: current = velocity, voltage = force. Acoustic nodes: voltage = pressure, current = volume velocity.
import { type SoundSystemInput, soundSystemSchema } from '@gusset/contracts/acoustics';

import { writeDrivers } from './netlist-drivers.ts';
import { writeEnclosure } from './netlist-enclosure.ts';
import { writeFilters, writeSum } from './netlist-filters.ts';
import { type Draft, resistor } from './netlist-parts.ts';

const GAS = 287.058; // J/(kg K)
const GAMMA = 1.4;

export type Netlist = {
  readonly lines: readonly string[];
  /** Vectors to print, by what they are. */
  readonly vectors: Readonly<Record<string, string>>;
  readonly densityKgPerM3: number;
  readonly portAreaM2: Readonly<Record<string, number>>;
  readonly radiatorAreaM2: number | null;
};

export function netlistFor(input: SoundSystemInput): Netlist {
  const system = soundSystemSchema.parse(input);
  const kelvin = system.air.temperatureC + 273.15;
  const air = {
    rho: system.air.pressurePa / (GAS * kelvin),
    c: Math.sqrt(GAMMA * GAS * kelvin),
    stiffness: GAMMA * system.air.pressurePa,
  };
  const draft: Draft = { lines: [], outside: [], vectors: {}, portAreaM2: {}, radiatorAreaM2: null };
  writeFilters(draft, system);
  draft.lines.push(
    resistor('out', 'drive', 'amp', system.source.outputOhm),
    'Vamp amp sensed 0',
    resistor('cable', 'sensed', 'top', system.source.cableOhm),
  );
  writeDrivers(draft, system, air.stiffness);
  writeEnclosure(draft, system, air);
  writeSum(draft, system, air.c);
  return {
    lines: ['gusset truth', '.options rshunt=1e15 reltol=1e-9', ...draft.lines],
    vectors: { terminal: 'v(amp)', current: 'i(vamp)', outside: 'v(heard)', ...draft.vectors },
    densityKgPerM3: air.rho,
    portAreaM2: draft.portAreaM2,
    radiatorAreaM2: draft.radiatorAreaM2,
  };
}
