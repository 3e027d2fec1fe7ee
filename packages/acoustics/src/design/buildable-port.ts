// Whether a port that a tuning asks for can be made at all.
import type { PortFigures } from '@gusset/contracts/acoustics';

/** As the schema of a port. */
export const LONGEST_PORT_MM = 5_000;

export function isBuildable({ buildable, lengthMm }: Pick<PortFigures, 'buildable' | 'lengthMm'>): boolean {
  return buildable && lengthMm <= LONGEST_PORT_MM;
}
