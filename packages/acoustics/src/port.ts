// Ports as lumped air masses: end corrections, flares, and the length for a tuning or the tuning of a length.
// Ends: Rayleigh's flanged piston; H. Levine, J. Schwinger, "On the Radiation of Sound from an Unflanged Circular
// Pipe", Phys. Rev. 73, 1948. Walls flush with an opening double its area each (image method). Ports alike share
// nothing but the chamber. Pipe resonances are outside the model.
import type { Port, PortEnd, PortFigures, PortRole } from '@gusset/contracts/acoustics';
import { type Refusal, refuse } from '@gusset/units';
import type { Air } from './air.ts';

const FLANGED_END = 8 / (3 * Math.PI); // times the radius
const FREE_END = 0.6133; // times the radius

const MM_PER_M = 1e3;

export type PortElements = {
  /** All ports together, at the throat, m². */
  readonly areaM2: number;
  /** kg/m⁴ */
  readonly acousticMass: number;
  /** Flow loss, Pa s/m³; 0 = none. */
  readonly acousticResistance: number;
  readonly tuningRadPerS: number;
  readonly figures: PortFigures;
};

/** Area of one port's throat, m². */
function mouthAreaM2({ mouth }: Port): number {
  return mouth.shape === 'round'
    ? (Math.PI / 4) * (mouth.diameterMm / MM_PER_M) ** 2
    : (mouth.widthMm / MM_PER_M) * (mouth.heightMm / MM_PER_M);
}

/**
 * Air beyond the straight pipe that moves with it at one end, as a length of pipe, m. `radiusM` is that of the throat
 * or of the circle of equal area. A flare counts by the integral of (a/r)² along its quarter circle.
 */
export function endCorrectionM(end: PortEnd, radiusM: number): number {
  const flareM = end.flareRadiusMm / MM_PER_M;
  const mouthM = radiusM + flareM;
  const factor = end.kind === 'flanged' ? FLANGED_END : FREE_END;
  const beyond = factor * mouthM * Math.sqrt(2 ** end.walls) * (radiusM / mouthM) ** 2;
  return flareLengthM(radiusM, flareM) + beyond;
}

function flareLengthM(radiusM: number, flareM: number): number {
  if (flareM === 0) return 0;
  const m = radiusM + flareM;
  const d = m ** 2 - flareM ** 2;
  const bend = ((2 * flareM) / d ** 1.5) * Math.atan(Math.sqrt((m + flareM) / (m - flareM)));
  return radiusM ** 2 * flareM * (bend + 1 / d);
}

type PortGeometry = { readonly areaM2: number; readonly endsM: number; readonly flaresM: number };

function portGeometry(port: Port): PortGeometry {
  const oneAreaM2 = mouthAreaM2(port);
  const radiusM = Math.sqrt(oneAreaM2 / Math.PI);
  return {
    areaM2: oneAreaM2 * port.count,
    endsM: endCorrectionM(port.outerEnd, radiusM) + endCorrectionM(port.innerEnd, radiusM),
    flaresM: (port.outerEnd.flareRadiusMm + port.innerEnd.flareRadiusMm) / MM_PER_M,
  };
}

/**
 * The ports of a chamber whose apparent volume (net x fill) is `volumeM3`. A tuning out of reach is answered with
 * `figures.buildable` false: the sound is that of the tuning, the length says why it can't be built.
 */
export function portElements(port: Port, role: PortRole, volumeM3: number, air: Air): PortElements {
  const { areaM2, endsM, flaresM } = portGeometry(port);
  const squeeze = areaM2 * (air.soundSpeedMps ** 2 / volumeM3); // wb² Leff
  const effectiveM =
    port.sizing.by === 'tuning'
      ? squeeze / (2 * Math.PI * port.sizing.tuningHz) ** 2
      : port.sizing.lengthMm / MM_PER_M - flaresM + endsM;
  const tuningRadPerS = Math.sqrt(squeeze / effectiveM);
  const acousticMass = (air.densityKgPerM3 * effectiveM) / areaM2;
  const lengthM = effectiveM - endsM + flaresM;
  return {
    areaM2,
    acousticMass,
    acousticResistance: port.qp === null ? 0 : (tuningRadPerS * acousticMass) / port.qp,
    tuningRadPerS,
    figures: {
      role,
      tuningHz: tuningRadPerS / (2 * Math.PI),
      lengthMm: lengthM * MM_PER_M,
      effectiveLengthMm: effectiveM * MM_PER_M,
      openAreaCm2: areaM2 * 1e4,
      buildable: lengthM > 0 && lengthM >= flaresM,
    },
  };
}

/** What the schema can't see: flares on a slot, or longer than the port they sit on. */
export function refusePort(port: Port, field: string): Refusal | null {
  const flaresMm = port.outerEnd.flareRadiusMm + port.innerEnd.flareRadiusMm;
  if (port.mouth.shape === 'rectangular' && flaresMm > 0) {
    return refuse(`${field}.mouth.shape`, {
      allowed: 'round, where an end is flared',
      got: port.mouth.shape,
      why: 'the air in a flare is known for round ports only',
    });
  }
  if (port.sizing.by === 'length' && port.sizing.lengthMm < flaresMm) {
    return refuse(`${field}.sizing.lengthMm`, {
      allowed: `at least ${flaresMm} mm`,
      got: port.sizing.lengthMm,
      why: 'the length counts the flares, and they alone are longer',
    });
  }
  return null;
}
