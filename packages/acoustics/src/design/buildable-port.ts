// Whether a port that a tuning asks for can be made at all.
import type { PortFigures } from '@gusset/contracts/acoustics';

/** `mostMm` is the longest that would be built. */
export function isBuildable({ buildable, lengthMm }: PortFigures, mostMm: number): boolean {
  return buildable && lengthMm <= mostMm;
}
