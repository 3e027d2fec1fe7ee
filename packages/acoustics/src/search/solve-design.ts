// One design solved by the circuit: how loud it may play at each frequency, and how even it is.
import type { SoundSystem } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { REFERENCE_AIR } from '../air.ts';
import { type BuiltNetwork, buildNetwork } from '../build-network.ts';
import { compileSystem } from '../compiled-system.ts';
import { openSweep, runSweep, type Sweep } from '../sweep.ts';
import { type AimFigures, aimFigures, SEARCH_FREQUENCIES_HZ } from './aims.ts';
import type { BuiltBox } from './box-enclosure.ts';
import type { OutletLimit } from './level-bounds.ts';
import { PORT_SPEED_LIMIT_MPS, type Trial } from './trial.ts';

/** Rooms for curves that are used again for every design. */
export type Curves = { readonly sweep: Sweep; readonly reachDb: Float64Array; readonly evenDb: Float64Array };

export function makeCurves(): Curves {
  const points = SEARCH_FREQUENCIES_HZ.length;
  return {
    sweep: openSweep(SEARCH_FREQUENCIES_HZ, ['level', 'travel']),
    reachDb: new Float64Array(points),
    evenDb: new Float64Array(points),
  };
}

/** A trial in a box at the most volts: no resistance before the array, air at rest conditions, no car. */
export function systemFor({ driver, wired, mostVolts }: Trial, { enclosure }: BuiltBox): SoundSystem {
  return {
    frequenciesHz: SEARCH_FREQUENCIES_HZ,
    air: { temperatureC: 20, pressurePa: 101_325 },
    source: {
      voltageVrms: mostVolts,
      outputOhm: 0,
      cableOhm: 0,
      maxVoltageVrms: null,
      maxCurrentArms: null,
    },
    filters: [],
    driver: driver.parameters,
    array: wired.array,
    enclosure,
    cabin: null,
    distanceM: 1,
  };
}

export function networkFor(system: SoundSystem): BuiltNetwork {
  return buildNetwork(system, REFERENCE_AIR);
}

/** What an outlet may move at most: air in a port by its speed, a radiator by its travel; m³/s peak. */
export function outletLimitOf({ enclosure }: SoundSystem, { network }: BuiltNetwork): OutletLimit {
  const areaM2 = network.outlets[0]?.areaM2 ?? 0;
  if (enclosure.kind !== 'passive-radiator') return () => areaM2 * PORT_SPEED_LIMIT_MPS;
  const { xmaxMm } = enclosure.radiator;
  return (omega) => (xmaxMm === null ? Number.POSITIVE_INFINITY : (areaM2 * omega * xmaxMm) / 1e3);
}

/** Solves at every frequency of the search; `curves` is filled on the way. Travel and flow grow with the volts. */
export function solveDesign(system: SoundSystem, cabinDb: Float64Array, curves: Curves): AimFigures {
  const compiled = compileSystem(system);
  if (isRefusal(compiled)) throw new Error(`the search made a box that can't be: ${compiled.refusal.why}`);
  runSweep(curves.sweep, compiled);
  const { splFreeDb, excursionMm, radiatorExcursionMm, portSpeedMps } = curves.sweep.curves;
  const radiatorMm = system.enclosure.kind === 'passive-radiator' ? system.enclosure.radiator.xmaxMm : null;
  for (let i = 0; i < cabinDb.length; i++) {
    const evenDb = (splFreeDb[i] ?? 0) + (cabinDb[i] ?? 0);
    const held = Math.max(
      1,
      (excursionMm[i] ?? 0) / (system.driver.xmaxMm ?? Number.POSITIVE_INFINITY),
      (radiatorExcursionMm[i] ?? 0) / (radiatorMm ?? Number.POSITIVE_INFINITY),
      (portSpeedMps[i] ?? 0) / PORT_SPEED_LIMIT_MPS,
    );
    curves.evenDb[i] = evenDb;
    curves.reachDb[i] = evenDb - 20 * Math.log10(held);
  }
  return aimFigures(curves.reachDb, curves.evenDb);
}
