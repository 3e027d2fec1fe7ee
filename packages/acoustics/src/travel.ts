// How far cones and radiators travel and how fast the air goes in the ports. Peak, one way, per volt of the source.
import type { BuiltNetwork } from './build-network.ts';
import { magnitude, ZERO } from './complex.ts';
import type { NetworkState } from './network.ts';

const MM_PER_M = 1e3;
const PEAK = Math.SQRT2; // states are rms

export type Travel = {
  /** mm; the outer cone of an isobaric pair. */
  readonly excursion: readonly number[];
  readonly inner: readonly number[] | null;
  readonly radiator: readonly number[] | null;
  /** m/s at the throat. */
  readonly portSpeed: readonly number[] | null;
  readonly rearPortSpeed: readonly number[] | null;
};

export function travelPerVolt(built: BuiltNetwork, states: readonly NetworkState[]): Travel {
  const cone = (index: number) =>
    states.map(
      ({ velocities, omega }) => (PEAK * magnitude(velocities.flat()[index] ?? ZERO) * MM_PER_M) / omega,
    );
  const airSpeed = (index: number, areaM2: number) =>
    states.map(({ outletFlows }) => (PEAK * magnitude(outletFlows[index] ?? ZERO)) / areaM2);
  const [port, rearPort] = built.ports;
  const { radiator, network } = built;
  const isPair = network.strings.flatMap(({ motors }) => motors).length > 1;
  return {
    excursion: cone(0),
    inner: isPair ? cone(1) : null,
    radiator:
      radiator &&
      airSpeed(0, radiator.areaM2).map((speed, i) => (speed * MM_PER_M) / (states[i]?.omega ?? 1)),
    portSpeed: port === undefined ? null : airSpeed(0, port.areaM2),
    rearPortSpeed: rearPort === undefined ? null : airSpeed(1, rearPort.areaM2),
  };
}
