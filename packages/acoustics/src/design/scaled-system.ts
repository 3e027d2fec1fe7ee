// A system with parts of it off by a factor. Cms, BL, Mms and Re are what spreads in a driver; fs, Q and Vas follow:
//   fs ~ (Cms Mms)^-1/2    Qms ~ (Mms/Cms)^1/2    Qes ~ (Mms/Cms)^1/2 Re/BL²    Vas ~ Cms     (Rms, Sd held)
import type { Chamber, DesignSystem, DriverParameters, Enclosure, Port } from '@gusset/contracts/acoustics';
import { type Refusal, refuse } from '@gusset/units';
import type { CompiledSystem } from '../compiled-system.ts';

export type DriverFactors = {
  readonly cms: number;
  readonly bl: number;
  readonly mms: number;
  readonly re: number;
};

export function scaledDriver(
  driver: DriverParameters,
  { cms, bl, mms, re }: DriverFactors,
): DriverParameters {
  const stiffAndHeavy = Math.sqrt(mms / cms);
  return {
    ...driver,
    fsHz: driver.fsHz / Math.sqrt(cms * mms),
    qms: driver.qms * stiffAndHeavy,
    qes: (driver.qes * stiffAndHeavy * re) / bl ** 2,
    vasLitres: driver.vasLitres * cms,
    reOhm: driver.reOhm * re,
  };
}

/** Change of all chambers and ports alike; `null` leaves a thing as it is. */
export type BoxChange = {
  readonly volume: number;
  readonly ql: number | null;
  readonly portLengthMm: number;
  /** Of the sides or diameter of the mouth. */
  readonly bore: number;
};

export const NO_CHANGE: BoxChange = { volume: 1, ql: null, portLengthMm: 0, bore: 1 };

export function changedEnclosure(enclosure: Enclosure, change: BoxChange): Enclosure {
  const air = (chamber: Chamber): Chamber => ({
    ...chamber,
    netLitres: chamber.netLitres * change.volume,
    ql: change.ql ?? chamber.ql,
  });
  const vent = (port: Port) => changedPort(port, change);
  switch (enclosure.kind) {
    case 'infinite-baffle':
      return enclosure;
    case 'closed':
    case 'passive-radiator':
      return { ...enclosure, chamber: air(enclosure.chamber) };
    case 'vented':
      return { ...enclosure, chamber: air(enclosure.chamber), port: vent(enclosure.port) };
    case 'single-tuned-bandpass':
      return {
        ...enclosure,
        rear: air(enclosure.rear),
        front: air(enclosure.front),
        frontPort: vent(enclosure.frontPort),
      };
    case 'dual-tuned-bandpass':
      return {
        ...enclosure,
        rear: air(enclosure.rear),
        rearPort: vent(enclosure.rearPort),
        front: air(enclosure.front),
        frontPort: vent(enclosure.frontPort),
      };
  }
}

/** Of a port by its length, as `withLengths` leaves all of them. */
function changedPort(port: Port, { portLengthMm, bore }: BoxChange): Port {
  const { mouth, sizing, outerEnd, innerEnd } = port;
  const shortestMm = Math.max(1, outerEnd.flareRadiusMm + innerEnd.flareRadiusMm);
  return {
    ...port,
    mouth:
      mouth.shape === 'round'
        ? { ...mouth, diameterMm: mouth.diameterMm * bore }
        : { ...mouth, widthMm: mouth.widthMm * bore, heightMm: mouth.heightMm * bore },
    sizing:
      sizing.by === 'length'
        ? { by: 'length', lengthMm: Math.max(shortestMm, sizing.lengthMm + portLengthMm) }
        : sizing,
  };
}

/** The same system with every port as it is built: by its length. Refused where a port can't be built. */
export function withLengths(system: DesignSystem, { built }: CompiledSystem): DesignSystem | Refusal {
  const broken = built.ports.find(({ figures }) => !figures.buildable);
  if (broken !== undefined) {
    return refuse('system.enclosure', {
      allowed: 'ports that can be built',
      got: broken.figures.lengthMm,
      why: 'a port of no length has no tolerance: its mouth can’t reach the tuning',
    });
  }
  const lengthOf = (role: string) =>
    built.ports.find(({ figures }) => figures.role === role)?.figures.lengthMm;
  const sized = (port: Port, role: string): Port => ({
    ...port,
    sizing: { by: 'length', lengthMm: lengthOf(role) ?? 0 },
  });
  const { enclosure } = system;
  switch (enclosure.kind) {
    case 'vented':
      return { ...system, enclosure: { ...enclosure, port: sized(enclosure.port, 'port') } };
    case 'single-tuned-bandpass':
      return { ...system, enclosure: { ...enclosure, frontPort: sized(enclosure.frontPort, 'front-port') } };
    case 'dual-tuned-bandpass':
      return {
        ...system,
        enclosure: {
          ...enclosure,
          frontPort: sized(enclosure.frontPort, 'front-port'),
          rearPort: sized(enclosure.rearPort, 'rear-port'),
        },
      };
    default:
      return system;
  }
}

/** Net litres of all chambers. */
export function totalLitres(enclosure: Enclosure): number {
  if (enclosure.kind === 'infinite-baffle') return 0;
  return 'rear' in enclosure
    ? enclosure.rear.netLitres + enclosure.front.netLitres
    : enclosure.chamber.netLitres;
}
