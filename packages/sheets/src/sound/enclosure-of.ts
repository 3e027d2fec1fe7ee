// The box of a design: what is still missing of it, and how the circuit takes it.
import type { Chamber, Enclosure, PassiveRadiator } from '@gusset/contracts/acoustics';
import {
  FILL_EFFECT,
  type Fill,
  LEAK_Q,
  type SoundChamber,
  type SoundDesign,
  type SoundRadiator,
} from '@gusset/contracts/sound';
import type { RefusalDetail } from '@gusset/units';
import type { Missing } from '../sheet-definition.ts';
import { missingOfPort, portOf, refusePortOverWall } from './port-of.ts';

const isBandpass = ({ enclosure }: SoundDesign): boolean =>
  enclosure === 'single-tuned-bandpass' || enclosure === 'dual-tuned-bandpass';

/** Which ports the chosen kind of box has. */
export function portsOf({ enclosure }: SoundDesign): { readonly port: boolean; readonly rearPort: boolean } {
  const rearPort = enclosure === 'dual-tuned-bandpass';
  return { port: rearPort || enclosure === 'vented' || enclosure === 'single-tuned-bandpass', rearPort };
}

export function missingOfEnclosure(design: SoundDesign): readonly Missing[] {
  const { enclosure, targetNet, front } = design;
  const has = portsOf(design);
  const missing: Missing[] = [];
  if (targetNet === null && enclosure !== 'infinite-baffle') {
    const what = isBandpass(design) ? 'the net volume behind the drivers' : 'the net volume to aim for';
    missing.push({ field: 'targetNet', what });
  }
  if (isBandpass(design) && front.net === null) {
    missing.push({ field: 'front.net', what: 'the net volume in front of the drivers' });
  }
  if (has.port) missing.push(...missingOfPort(design.port, 'port'));
  if (has.rearPort) missing.push(...missingOfPort(design.rearPort, 'rearPort'));
  if (enclosure === 'passive-radiator') missing.push(...missingOfRadiator(design.radiator));
  return missing;
}

const RADIATOR_NEEDS = [
  ['fsHz', 'the radiator’s resonance'],
  ['qms', 'the radiator’s mechanical Q'],
  ['vasLitres', 'the radiator’s Vas'],
  ['sdCm2', 'the radiator’s cone area'],
] as const;

function missingOfRadiator(radiator: SoundRadiator): readonly Missing[] {
  return RADIATOR_NEEDS.filter(([part]) => radiator[part] === null).map(([part, what]) => ({
    field: `radiator.${part}`,
    what,
  }));
}

/** Ports that the chambers cannot hold; only of a box that misses nothing. */
export function refuseEnclosure(design: SoundDesign): readonly RefusalDetail[] {
  const has = portsOf(design);
  const rearLitres = design.targetNet?.litres ?? 0;
  const portLitres = isBandpass(design) ? (design.front.net?.litres ?? 0) : rearLitres;
  return [
    ...(has.port ? refusePortOverWall(design.port, 'port', portLitres) : []),
    ...(has.rearPort ? refusePortOverWall(design.rearPort, 'rearPort', rearLitres) : []),
  ];
}

export function chambersOf(design: SoundDesign): readonly SoundChamber[] {
  if (design.enclosure === 'infinite-baffle') return [];
  const netLitres = design.targetNet?.litres ?? 0;
  if (!isBandpass(design)) return [{ role: 'only', netLitres }];
  return [
    { role: 'rear', netLitres },
    { role: 'front', netLitres: design.front.net?.litres ?? 0 },
  ];
}

/** For the circuit; only of a box that misses nothing. */
export function enclosureOf(design: SoundDesign): Enclosure {
  const ql = LEAK_Q[design.leak];
  const chamber = (netLitres: number, fill: Fill): Chamber => ({ netLitres, ql, ...FILL_EFFECT[fill] });
  const rear = chamber(design.targetNet?.litres ?? 0, design.fill);
  const front = chamber(design.front.net?.litres ?? 0, design.front.fill);
  switch (design.enclosure) {
    case 'infinite-baffle':
      return { kind: 'infinite-baffle' };
    case 'closed':
      return { kind: 'closed', chamber: rear };
    case 'vented':
      return { kind: 'vented', chamber: rear, port: portOf(design.port) };
    case 'passive-radiator':
      return { kind: 'passive-radiator', chamber: rear, radiator: radiatorOf(design.radiator) };
    case 'single-tuned-bandpass':
      return { kind: 'single-tuned-bandpass', rear, front, frontPort: portOf(design.port) };
    case 'dual-tuned-bandpass':
      return {
        kind: 'dual-tuned-bandpass',
        rear,
        rearPort: portOf(design.rearPort),
        front,
        frontPort: portOf(design.port),
      };
  }
}

function radiatorOf(radiator: SoundRadiator): PassiveRadiator {
  return {
    count: radiator.count,
    fsHz: radiator.fsHz?.value ?? 0,
    qms: radiator.qms?.value ?? 0,
    vasLitres: radiator.vasLitres?.value ?? 0,
    sdCm2: radiator.sdCm2?.value ?? 0,
    addedMassGrams: radiator.addedMassGrams?.value ?? 0,
    xmaxMm: radiator.xmaxMm?.value ?? null,
  };
}
