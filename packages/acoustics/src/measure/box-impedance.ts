// Impedance of drivers on one chamber, closed or vented, in closed form: what a fit asks thousands of times.
// The same circuit as `network.ts` (side by side, alike), which the tests hold it against.
import type {
  AirConditions,
  Chamber,
  DriverArray,
  DriverParameters,
  Port,
  Source,
} from '@gusset/contracts/acoustics';
import { airAt } from '../air.ts';
import { apparentVolumeM3, chamberElements, squeezeAdmittance } from '../chamber.ts';
import { add, type Complex, complex, divide, reciprocal, scale } from '../complex.ts';
import { driverElements } from '../driver-elements.ts';
import { portElements } from '../port.ts';
import { blockedImpedance, wireCoils } from '../voice-coil.ts';

export type OneChamberBox = {
  readonly driver: DriverParameters;
  readonly array: DriverArray;
  readonly chamber: Chamber;
  /** Null = closed. */
  readonly port: Port | null;
  readonly source: Pick<Source, 'cableOhm'>;
  readonly air: AirConditions;
};

/** At the amplifier's terminals, by frequency, ohm. */
export function boxImpedance(box: OneChamberBox): (frequencyHz: number) => Complex {
  const { array, source } = box;
  const air = airAt(box.air);
  const driver = driverElements(box.driver);
  const coil = wireCoils(box.driver, driver, array.coilWiring);
  const area = array.count * driver.sdM2 ** 2;
  const port = box.port === null ? null : portElements(box.port, 'port', apparentVolumeM3(box.chamber), air);
  const alpha = (area * driver.cmsMPerN * air.stiffnessPa) / apparentVolumeM3(box.chamber);
  const closedRadPerS = 2 * Math.PI * box.driver.fsHz * Math.sqrt(1 + alpha);
  const chamber = chamberElements(box.chamber, air, port?.tuningRadPerS ?? closedRadPerS);
  return (frequencyHz) => {
    const omega = 2 * Math.PI * frequencyHz;
    const intoPort =
      port === null ? complex(0) : reciprocal(complex(port.acousticResistance, omega * port.acousticMass));
    const load = reciprocal(add(add(squeezeAdmittance(chamber, omega), complex(chamber.leak)), intoPort));
    const cone = complex(driver.rmsNsPerM, omega * driver.mmsKg - 1 / (omega * driver.cmsMPerN));
    const motional = divide(complex(coil.blTm ** 2), add(cone, scale(load, area)));
    const one = add(blockedImpedance(coil, omega), motional);
    return add(scale(one, array.seriesPerString / array.parallelStrings), complex(source.cableOhm));
  };
}
