// A port as typed, as the circuit takes it, and as it must be built.
import type { Port, PortFigures } from '@gusset/contracts/acoustics';
import type { SoundChamber, SoundPort, SoundPortResult } from '@gusset/contracts/sound';
import { type RefusalDetail, refuse } from '@gusset/units';
import type { Missing } from '../sheet-definition.ts';

type PortField = 'port' | 'rearPort';

const PORT_NAMES: Readonly<Record<PortField, string>> = { port: 'the port', rearPort: 'the rear port' };

/** What a port still needs before its air can be counted. */
export function missingOfPort(port: SoundPort, field: PortField): readonly Missing[] {
  const name = PORT_NAMES[field];
  const needs: readonly (readonly [part: keyof SoundPort, what: string])[] = [
    ...(port.shape === 'round'
      ? ([['diameter', `inside diameter of ${name}`]] as const)
      : ([
          ['width', `width of ${name}`],
          ['height', `height of ${name}`],
        ] as const)),
    port.by === 'tuning' ? ['tuning', `tuning of ${name}`] : ['length', `length of ${name}`],
  ];
  return needs
    .filter(([part]) => port[part] === null)
    .map(([part, what]) => ({ field: `${field}.${part}`, what }));
}

/** Flares belong to round ports; on a slot what was typed for them rests. */
function flaresMm(port: SoundPort): { readonly outer: number; readonly inner: number } {
  return port.shape === 'round'
    ? { outer: port.outerFlare?.mm ?? 0, inner: port.innerFlare?.mm ?? 0 }
    : { outer: 0, inner: 0 };
}

/** For the circuit; only of a port that misses nothing. The outer end stands flush in its panel. */
export function portOf(port: SoundPort): Port {
  const flares = flaresMm(port);
  return {
    mouth:
      port.shape === 'round'
        ? { shape: 'round', diameterMm: port.diameter?.mm ?? 0 }
        : { shape: 'rectangular', widthMm: port.width?.mm ?? 0, heightMm: port.height?.mm ?? 0 },
    count: port.count,
    outerEnd: { kind: 'flanged', walls: 0, flareRadiusMm: flares.outer },
    innerEnd: { kind: 'free', walls: port.walls, flareRadiusMm: flares.inner },
    sizing:
      port.by === 'tuning'
        ? { by: 'tuning', tuningHz: port.tuning?.value ?? 0 }
        : { by: 'length', lengthMm: port.length?.mm ?? 0 },
    qp: null,
  };
}

/** Area of all mouths, cm². */
export function openAreaCm2(port: SoundPort): number {
  const one =
    port.shape === 'round'
      ? (Math.PI / 4) * (port.diameter?.mm ?? 0) ** 2
      : (port.width?.mm ?? 0) * (port.height?.mm ?? 0);
  return (one * port.count) / 100;
}

/**
 * An opening larger than a wall of the chamber leaves no chamber: the air is then an open pipe, which the model does not
 * know. The wall is that of a cube of the same air, as the box is not drawn yet.
 */
export function refusePortOverWall(port: SoundPort, field: PortField, netLitres: number): RefusalDetail[] {
  const wallCm2 = (netLitres * 1e3) ** (2 / 3);
  const openCm2 = openAreaCm2(port);
  if (openCm2 <= wallCm2) return [];
  const part = port.shape === 'round' ? 'diameter' : 'width';
  const opening = port.count === 1 ? 'opens' : `and its ${port.count - 1} more open`;
  return [
    refuse(`${field}.${part}`, {
      allowed: `openings below ${wallCm2.toFixed(0)} cm² together`,
      got: port.shape === 'round' ? (port.diameter?.mm ?? 0) : (port.width?.mm ?? 0),
      why: `The port ${opening} ${openCm2.toFixed(0)} cm², more than a wall of ${netLitres.toFixed(0)} L of air has`,
    }).refusal,
  ];
}

export type BuiltPort = {
  readonly port: SoundPort;
  readonly figures: PortFigures;
  readonly chamber: SoundChamber['role'];
  readonly fastestMps: number;
};

export function portResult({ port, figures, chamber, fastestMps }: BuiltPort): SoundPortResult {
  const isRound = port.shape === 'round';
  const flares = flaresMm(port);
  return {
    role: figures.role,
    chamber,
    shape: port.shape,
    count: port.count,
    diameterMm: isRound ? (port.diameter?.mm ?? null) : null,
    widthMm: isRound ? null : (port.width?.mm ?? null),
    heightMm: isRound ? null : (port.height?.mm ?? null),
    outerFlareMm: flares.outer,
    innerFlareMm: flares.inner,
    walls: port.walls,
    lengthMm: figures.lengthMm,
    tuningHz: figures.tuningHz,
    openAreaCm2: figures.openAreaCm2,
    airLitres: (figures.openAreaCm2 * Math.max(figures.lengthMm, 0)) / 10_000,
    buildable: figures.buildable,
    fastestMps,
  };
}
