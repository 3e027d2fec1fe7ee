// A box of the search as the enclosure that the circuit takes, or the word that nobody can build it.
import type { Chamber, DriverParameters, Enclosure, Port, SearchBrief } from '@gusset/contracts/acoustics';
import { REFERENCE_AIR } from '../air.ts';
import { portElements } from '../port.ts';
import { radiatorElements, radiatorTuningRadPerS } from '../radiator.ts';
import type { Box } from './box-grid.ts';

/** Sides of a cube of the chamber's air: a longer pipe takes more than one bend to go in. */
const MOST_PORT_SIDES = 2;
/** Air of the pipe itself over the air of its chamber: more, and it is no longer a box with a port. */
const MOST_PORT_AIR = 0.25;
const ADDED_MASS_LIMIT_GRAMS = 20_000;

export type BuiltBox = {
  readonly enclosure: Enclosure;
  readonly port: { readonly diameterMm: number; readonly lengthMm: number } | null;
};

type Drivers = { readonly parameters: DriverParameters; readonly count: number };

/** Null = can't be built: a port too short, too long or too large, a radiator too light for the tuning. */
export function enclosureFor(box: Box, drivers: Drivers, brief: SearchBrief): BuiltBox | null {
  const rear = chamberOf(box.netLitres * box.rearShare, brief);
  switch (box.kind) {
    case 'infinite-baffle':
      return { enclosure: { kind: 'infinite-baffle' }, port: null };
    case 'closed':
      return { enclosure: { kind: 'closed', chamber: rear }, port: null };
    case 'passive-radiator':
      return withRadiator(box, rear, brief);
    case 'vented': {
      const vented = portFor(box, drivers, rear);
      return (
        vented && {
          enclosure: { kind: 'vented', chamber: rear, port: vented.port },
          port: vented.shown,
        }
      );
    }
    case 'single-tuned-bandpass': {
      const front = chamberOf(box.netLitres * (1 - box.rearShare), brief);
      const vented = portFor(box, drivers, front);
      return (
        vented && {
          enclosure: { kind: 'single-tuned-bandpass', rear, front, frontPort: vented.port },
          port: vented.shown,
        }
      );
    }
  }
}

function chamberOf(netLitres: number, { losses }: SearchBrief): Chamber {
  return { netLitres, ...losses };
}

type VentedPort = { readonly port: Port; readonly shown: NonNullable<BuiltBox['port']> };

function portFor(box: Box, { parameters, count }: Drivers, chamber: Chamber): VentedPort | null {
  if (box.tuningHz === null || box.portShare === null) return null;
  const areaMm2 = box.portShare * count * parameters.sdCm2 * 100;
  const diameterMm = Math.round(Math.sqrt((4 * areaMm2) / Math.PI));
  if (diameterMm < 5 || diameterMm > 1_000) return null; // of the schema
  const port: Port = {
    mouth: { shape: 'round', diameterMm },
    count: 1,
    outerEnd: { kind: 'flanged', walls: 0, flareRadiusMm: 0 },
    innerEnd: { kind: 'free', walls: 0, flareRadiusMm: 0 },
    sizing: { by: 'tuning', tuningHz: box.tuningHz },
    qp: null,
  };
  const apparentM3 = (chamber.netLitres * chamber.fillFactor) / 1e3;
  const { lengthMm, openAreaCm2, buildable } = portElements(port, 'port', apparentM3, REFERENCE_AIR).figures;
  const portLitres = (openAreaCm2 * lengthMm) / 1e4;
  const longestMm = MOST_PORT_SIDES * Math.cbrt(chamber.netLitres) * 100;
  if (!buildable || lengthMm > longestMm || portLitres > MOST_PORT_AIR * chamber.netLitres) return null;
  return { port, shown: { diameterMm, lengthMm } };
}

/** The mass that the radiators need for the tuning; a bare one that is already too heavy or too stiff can't. */
function withRadiator(box: Box, chamber: Chamber, brief: SearchBrief): BuiltBox | null {
  const bare = box.radiator === null ? undefined : brief.radiators[box.radiator];
  if (bare === undefined || box.tuningHz === null) return null;
  const compliance = (chamber.netLitres * chamber.fillFactor) / 1e3 / REFERENCE_AIR.stiffnessPa;
  const unloaded = radiatorElements({ ...bare, addedMassGrams: 0 });
  const bareTuning = radiatorTuningRadPerS(unloaded, compliance);
  const bareGrams = bareMassGrams(bare.sdCm2, bare.count, unloaded.acousticMass);
  const ratio = (bareTuning / (2 * Math.PI * box.tuningHz)) ** 2; // mass goes with the square of the period
  const addedMassGrams = bareGrams * (ratio - 1);
  if (addedMassGrams < 0 || addedMassGrams > ADDED_MASS_LIMIT_GRAMS) return null;
  return {
    enclosure: { kind: 'passive-radiator', chamber, radiator: { ...bare, addedMassGrams } },
    port: null,
  };
}

/** Of one radiator, from the acoustic mass of all. */
function bareMassGrams(sdCm2: number, count: number, acousticMass: number): number {
  return acousticMass * count * (sdCm2 / 1e4) ** 2 * 1e3;
}
