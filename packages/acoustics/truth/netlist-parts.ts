// What the pieces of a netlist share: the draft they write to, and a driver's moving parts.
import type { soundSystemSchema } from '@gusset/contracts/acoustics';

export type System = ReturnType<typeof soundSystemSchema.parse>;

/** Stiffness of air where driver data hold: 1.4 x 101 325 Pa. */
export const REFERENCE_STIFFNESS_PA = 141_855;

export type Draft = {
  lines: string[];
  /** Sense sources whose current goes to the outside, with the sign of the flow. */
  outside: string[];
  vectors: Record<string, string>;
  portAreaM2: Record<string, number>;
  radiatorAreaM2: number | null;
};

/** No resistance is a source of no voltage: a resistor that small would cost the solver its digits. */
export function resistor(name: string, from: string, to: string, ohm: number): string {
  return ohm > 0 ? `R${name} ${from} ${to} ${ohm}` : `V${name} ${from} ${to} 0`;
}

export function mechanics(system: System) {
  const { driver } = system;
  const omega = 2 * Math.PI * driver.fsHz;
  const area = driver.sdCm2 * 1e-4;
  const compliance = (driver.vasLitres * 1e-3) / (REFERENCE_STIFFNESS_PA * area * area);
  const mass = 1 / (omega * omega * compliance);
  // Qes is stated with every coil driven: n coils in parallel give n BL²/Re of damping.
  const bl = Math.sqrt((omega * mass * driver.reOhm) / (driver.coils * driver.qes));
  return { area, compliance, mass, resistance: (omega * mass) / driver.qms, bl };
}
