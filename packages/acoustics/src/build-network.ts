// From a system in the shop's words to the lumped network that stands for it.
import type {
  Chamber,
  DriverArray,
  Enclosure,
  Port,
  PortRole,
  SoundSystem,
} from '@gusset/contracts/acoustics';
import type { Air } from './air.ts';
import { apparentVolumeM3, type ChamberElements, chamberCompliance, chamberElements } from './chamber.ts';
import { type DriverElements, driverElements } from './driver-elements.ts';
import type { DriverString, Face, Network, Outlet } from './network.ts';
import { type PortElements, portElements } from './port.ts';
import { type RadiatorElements, radiatorElements, radiatorTuningRadPerS } from './radiator.ts';
import { wireCoils } from './voice-coil.ts';

/** The network, and which of its parts is which. Outlets stand in the order of `ports`, or are the radiators. */
export type BuiltNetwork = {
  readonly network: Network;
  readonly ports: readonly PortElements[];
  readonly radiator: RadiatorElements | null;
  /** Of the radiators with their chamber, rad/s. */
  readonly radiatorTuningRadPerS: number | null;
};

type AcousticSide = {
  readonly chambers: readonly ChamberElements[];
  readonly outlets: readonly Outlet[];
  readonly front: Face;
  readonly rear: Face;
  readonly ports: readonly PortElements[];
  readonly radiator: RadiatorElements | null;
  readonly radiatorTuningRadPerS: number | null;
};

/** What the box looks like from the drivers: cones in parallel soften it, an isobaric pair stiffens itself. */
export function effectiveDriverCount(array: DriverArray): number {
  return array.isobaric === null ? array.count : 1 / 2;
}

/** Stiffness of a chamber's air over that of the drivers' suspensions, as given and with this air. */
export function complianceRatio(
  chamber: Chamber,
  array: DriverArray,
  elements: DriverElements,
  air: Air,
): number {
  const casM3PerPa = elements.cmsMPerN * elements.sdM2 ** 2;
  return (effectiveDriverCount(array) * casM3PerPa) / chamberCompliance(chamber, air);
}

export function buildNetwork(system: SoundSystem, air: Air): BuiltNetwork {
  const driver = driverElements(system.driver);
  const side = acousticSide(system, driver, air);
  const { isobaric } = system.array;
  const coupling: ChamberElements[] =
    isobaric === null
      ? []
      : [{ compliance: isobaric.couplingLitres / 1e3 / air.stiffnessPa, absorption: 0, leak: 0 }];
  return {
    network: {
      driver,
      coil: wireCoils(system.driver, driver, system.array.coilWiring),
      strings: driverStrings(system.array, side),
      chambers: [...side.chambers, ...coupling],
      outlets: side.outlets,
      outputOhm: system.source.outputOhm,
      cableOhm: system.source.cableOhm,
    },
    ports: side.ports,
    radiator: side.radiator,
    radiatorTuningRadPerS: side.radiatorTuningRadPerS,
  };
}

/** An isobaric pair: the outer driver looks forward, the inner one into the coupling air, which is the last chamber. */
function driverStrings(array: DriverArray, { chambers, front, rear }: AcousticSide): DriverString[] {
  if (array.isobaric === null) {
    return [{ copies: array.parallelStrings, motors: [{ drivers: array.seriesPerString, front, rear }] }];
  }
  const between = chambers.length;
  const outer = { drivers: 1, front, rear: between };
  const inner = { drivers: 1, front: between, rear };
  return array.seriesPerString === 2
    ? [{ copies: 1, motors: [outer, inner] }]
    : [
        { copies: 1, motors: [outer] },
        { copies: 1, motors: [inner] },
      ];
}

const OPEN: AcousticSide = {
  chambers: [],
  outlets: [],
  front: 'outside',
  rear: 'elsewhere',
  ports: [],
  radiator: null,
  radiatorTuningRadPerS: null,
};

function acousticSide(system: SoundSystem, driver: DriverElements, air: Air): AcousticSide {
  const { enclosure } = system;
  switch (enclosure.kind) {
    case 'infinite-baffle':
      return OPEN;
    case 'closed':
      return { ...OPEN, chambers: [closedChamber(enclosure.chamber, system, driver, air)], rear: 0 };
    case 'vented':
      return ventedSide(enclosure.chamber, enclosure.port, air);
    case 'passive-radiator':
      return radiatorSide(enclosure, air);
    case 'single-tuned-bandpass': {
      const front = ventedChamber(enclosure.front, enclosure.frontPort, 'front-port', 1, air);
      const rear = closedChamber(enclosure.rear, system, driver, air);
      return { ...OPEN, chambers: [rear, front.chamber], ...onlyPort(front), front: 1, rear: 0 };
    }
    case 'dual-tuned-bandpass': {
      const front = ventedChamber(enclosure.front, enclosure.frontPort, 'front-port', 1, air);
      const rear = ventedChamber(enclosure.rear, enclosure.rearPort, 'rear-port', 0, air);
      return {
        ...OPEN,
        chambers: [rear.chamber, front.chamber],
        outlets: [front.outlet, rear.outlet],
        ports: [front.port, rear.port],
        front: 1,
        rear: 0,
      };
    }
  }
}

/** Losses of a chamber with no outlet are fixed at the drivers' resonance on it. */
function closedChamber(
  chamber: Chamber,
  system: SoundSystem,
  driver: DriverElements,
  air: Air,
): ChamberElements {
  const alpha = complianceRatio(chamber, system.array, driver, air);
  return chamberElements(chamber, air, 2 * Math.PI * system.driver.fsHz * Math.sqrt(1 + alpha));
}

type VentedChamber = {
  readonly chamber: ChamberElements;
  readonly outlet: Outlet;
  readonly port: PortElements;
};

function ventedChamber(chamber: Chamber, port: Port, role: PortRole, index: number, air: Air): VentedChamber {
  const elements = portElements(port, role, apparentVolumeM3(chamber), air);
  return {
    chamber: chamberElements(chamber, air, elements.tuningRadPerS),
    outlet: {
      chamber: index,
      acousticMass: elements.acousticMass,
      acousticResistance: elements.acousticResistance,
      acousticCompliance: null,
      areaM2: elements.areaM2,
    },
    port: elements,
  };
}

function onlyPort({ outlet, port }: VentedChamber) {
  return { outlets: [outlet], ports: [port] };
}

function ventedSide(chamber: Chamber, port: Port, air: Air): AcousticSide {
  const vented = ventedChamber(chamber, port, 'port', 0, air);
  return { ...OPEN, chambers: [vented.chamber], ...onlyPort(vented), rear: 0 };
}

function radiatorSide(
  { chamber, radiator }: Extract<Enclosure, { kind: 'passive-radiator' }>,
  air: Air,
): AcousticSide {
  const elements = radiatorElements(radiator);
  const tuningRadPerS = radiatorTuningRadPerS(elements, chamberCompliance(chamber, air));
  return {
    ...OPEN,
    chambers: [chamberElements(chamber, air, tuningRadPerS)],
    outlets: [
      {
        chamber: 0,
        acousticMass: elements.acousticMass,
        acousticResistance: elements.acousticResistance,
        acousticCompliance: elements.acousticCompliance,
        areaM2: elements.areaM2,
      },
    ],
    rear: 0,
    radiator: elements,
    radiatorTuningRadPerS: tuningRadPerS,
  };
}
