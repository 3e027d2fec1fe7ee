// A whole system made ready to be asked at many frequencies: its network laid out, filters and cabin as transfers.
import type { SoundSystem } from '@gusset/contracts/acoustics';
import type { Refusal } from '@gusset/units';
import { type Air, airAt } from './air.ts';
import { type BuiltNetwork, buildNetwork } from './build-network.ts';
import { type CabinGain, cabinGain, refuseCabin } from './cabin.ts';
import { type CompiledNetwork, compileNetwork } from './compiled-network.ts';
import { filterSections } from './filters.ts';
import { driveLimits, type TravelLimits, travelLimits, type VoltageLimit } from './limits.ts';
import { refusePort } from './port.ts';
import type { RationalTransfer } from './transfer.ts';

export type CompiledSystem = {
  readonly network: CompiledNetwork;
  readonly built: BuiltNetwork;
  readonly air: Air;
  readonly voltageVrms: number;
  /** Against one volt. */
  readonly voltageDb: number;
  readonly outputOhm: number;
  /** Ports or radiators, in the order of the network's outlets. */
  readonly outletAreasM2: readonly number[];
  readonly filters: readonly RationalTransfer[];
  readonly cabin: CabinGain | null;
  /** Pa at the listening distance per m³/s² of the air that moves out, half space. */
  readonly pressurePerAcceleration: number;
  /** Volts that hold at every frequency, and the travels and amperes that hold at each. */
  readonly voltageLimit: VoltageLimit | null;
  readonly travelLimits: TravelLimits;
  readonly maxCurrentArms: number | null;
};

/**
 * `system` as the schema gives it back (`soundSystemSchema.parse`), with whatever `frequenciesHz`: a sweep brings its
 * own. Refused for what the schema can't see: flares that a port can't have, a cabin that levels out too high.
 */
export function compileSystem(system: SoundSystem): CompiledSystem | Refusal {
  const air = airAt(system.air);
  const refusal = refusePorts(system) ?? (system.cabin === null ? null : refuseCabin(system.cabin, air));
  if (refusal !== null) return refusal;
  const built = buildNetwork(system, air);
  return {
    network: compileNetwork(built.network),
    built,
    air,
    voltageVrms: system.source.voltageVrms,
    voltageDb: 20 * Math.log10(system.source.voltageVrms),
    outputOhm: system.source.outputOhm,
    outletAreasM2: built.network.outlets.map(({ areaM2 }) => areaM2),
    filters: system.filters.flatMap(filterSections),
    cabin: system.cabin === null ? null : cabinGain(system.cabin, air),
    pressurePerAcceleration: air.densityKgPerM3 / (2 * Math.PI * system.distanceM),
    voltageLimit: driveLimits(system),
    travelLimits: travelLimits(system),
    maxCurrentArms: system.source.maxCurrentArms,
  };
}

function refusePorts({ enclosure }: SoundSystem): Refusal | null {
  if (enclosure.kind === 'vented') return refusePort(enclosure.port, 'enclosure.port');
  const rear =
    enclosure.kind === 'dual-tuned-bandpass' ? refusePort(enclosure.rearPort, 'enclosure.rearPort') : null;
  return rear ?? ('frontPort' in enclosure ? refusePort(enclosure.frontPort, 'enclosure.frontPort') : null);
}
