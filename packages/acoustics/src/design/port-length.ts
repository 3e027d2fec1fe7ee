// The length of a port whose own walls take air from the box that it tunes. With L the length, e the ends less the flares,
// W the air before the port (and the part of it in the panel) and k the section that it takes:
//   (L + e)(W - k L) = S c²/wb²
// a quadratic, of which the smaller root is the port; past the larger one the port is most of the box.
import type { Port, PortMouthCandidate } from '@gusset/contracts/acoustics';
import type { Air } from '../air.ts';
import { endCorrectionM } from '../port.ts';

const MM_PER_M = 1e3;
const LITRES_PER_M3 = 1e3;
const LEAST_VOLUME_M3 = 0.05 / LITRES_PER_M3; // as the schema of a chamber

export type PortLengthQuestion = {
  readonly mouth: PortMouthCandidate;
  readonly tuningHz: number;
  /** Before the port where `takesAir`, else net. */
  readonly litres: number;
  readonly takesAir: boolean;
  readonly fillFactor: number;
  readonly panelMm: number;
  readonly air: Air;
};

export type PortLength =
  | {
      readonly kind: 'length';
      readonly lengthMm: number;
      readonly effectiveLengthMm: number;
      readonly netLitres: number;
      readonly displacedLitres: number;
    }
  | { readonly kind: 'mouth-too-small'; readonly highestTuningHz: number }
  /** Null = even the shortest would leave no air. */
  | { readonly kind: 'port-takes-the-air'; readonly lowestTuningHz: number | null };

/** Length for the tuning, or between which tunings this mouth could. */
export function portLength(question: PortLengthQuestion): PortLength {
  const { mouth, tuningHz, air, fillFactor } = question;
  const box = portAndBox(question);
  if (volumeAt(box, box.shortestM) < LEAST_VOLUME_M3) {
    return { kind: 'port-takes-the-air', lowestTuningHz: null };
  }
  const areaM2 = openAreaM2(mouth);
  const squeeze = (areaM2 * air.soundSpeedMps ** 2) / fillFactor; // wb² Leff V
  const wanted = squeeze / (2 * Math.PI * tuningHz) ** 2;
  const tuningAtHz = (leffTimesVolume: number) => Math.sqrt(squeeze / leffTimesVolume) / (2 * Math.PI);
  const discriminant = box.linear ** 2 - 4 * box.sectionM2 * (wanted - box.endsM * box.wholeM3);
  if (discriminant < 0) {
    const top = box.linear ** 2 / (4 * box.sectionM2) + box.endsM * box.wholeM3;
    return { kind: 'port-takes-the-air', lowestTuningHz: tuningAtHz(top) };
  }
  const buried = (2 * (wanted - box.endsM * box.wholeM3)) / (box.linear + Math.sqrt(discriminant));
  // Within the panel a port takes no air, so there the volume stays whole.
  const lengthM = buried > box.panelM ? buried : wanted / box.openM3 - box.endsM;
  if (lengthM < box.shortestM) {
    return {
      kind: 'mouth-too-small',
      highestTuningHz: tuningAtHz((box.shortestM + box.endsM) * volumeAt(box, box.shortestM)),
    };
  }
  const volumeM3 = volumeAt(box, lengthM);
  if (volumeM3 < LEAST_VOLUME_M3) return { kind: 'port-takes-the-air', lowestTuningHz: null };
  const insideM = Math.max(0, lengthM - box.panelM);
  return {
    kind: 'length',
    lengthMm: lengthM * MM_PER_M,
    effectiveLengthMm: (lengthM + box.endsM) * MM_PER_M,
    netLitres: volumeM3 * LITRES_PER_M3,
    displacedLitres: sectionM2(mouth) * insideM * LITRES_PER_M3,
  };
}

type PortAndBox = {
  readonly endsM: number;
  readonly panelM: number;
  readonly shortestM: number;
  /** Taken from the air per metre of port; 0 where the net volume is held. */
  readonly sectionM2: number;
  readonly openM3: number;
  /** As if the part in the panel were air as well. */
  readonly wholeM3: number;
  readonly linear: number;
};

function portAndBox({ mouth, litres, takesAir, panelMm }: PortLengthQuestion): PortAndBox {
  const port = portOf(mouth, 1);
  const radiusM = Math.sqrt(openAreaM2(mouth) / mouth.count / Math.PI);
  const flaresM = (port.outerEnd.flareRadiusMm + port.innerEnd.flareRadiusMm) / MM_PER_M;
  const endsM = endCorrectionM(port.outerEnd, radiusM) + endCorrectionM(port.innerEnd, radiusM) - flaresM;
  const panelM = panelMm / MM_PER_M;
  const section = takesAir ? sectionM2(mouth) : 0;
  const openM3 = litres / LITRES_PER_M3;
  const wholeM3 = openM3 + section * panelM;
  return {
    endsM,
    panelM,
    shortestM: Math.max(flaresM, panelM, 1 / MM_PER_M),
    sectionM2: section,
    openM3,
    wholeM3,
    linear: wholeM3 - section * endsM,
  };
}

function volumeAt({ openM3, sectionM2: section, panelM }: PortAndBox, lengthM: number): number {
  return openM3 - section * Math.max(0, lengthM - panelM);
}

/** All throats together, m². */
export function openAreaM2(mouth: PortMouthCandidate): number {
  const oneMm2 =
    mouth.shape === 'round' ? (Math.PI / 4) * mouth.diameterMm ** 2 : mouth.widthMm * mouth.heightMm;
  return (oneMm2 * mouth.count) / MM_PER_M ** 2;
}

/** All ports together with their own walls, m². */
function sectionM2(mouth: PortMouthCandidate): number {
  const { widthMm, heightMm } = outsideMm(mouth);
  const oneMm2 = mouth.shape === 'round' ? (Math.PI / 4) * widthMm ** 2 : widthMm * heightMm;
  return (oneMm2 * mouth.count) / MM_PER_M ** 2;
}

/** What one port takes with the panels that it brings itself. */
export function outsideMm(mouth: PortMouthCandidate): {
  readonly widthMm: number;
  readonly heightMm: number;
} {
  if (mouth.shape === 'round') {
    const outer = mouth.diameterMm + 2 * mouth.wallMm;
    return { widthMm: outer, heightMm: outer };
  }
  const sides = { none: 2, 'one-wall': 2, corner: 1, 'full-width': 0 }[mouth.walls];
  const covers = mouth.walls === 'none' ? 2 : 1;
  return { widthMm: mouth.widthMm + sides * mouth.wallMm, heightMm: mouth.heightMm + covers * mouth.wallMm };
}

/** The port for a system; a slot over the full width counts as along one wall: its side walls confine, not mirror. */
export function portOf(mouth: PortMouthCandidate, lengthMm: number): Port {
  const sizing = { by: 'length', lengthMm } as const;
  if (mouth.shape === 'round') {
    return {
      mouth: { shape: 'round', diameterMm: mouth.diameterMm },
      count: mouth.count,
      outerEnd: { kind: 'flanged', walls: 0, flareRadiusMm: mouth.outerFlareMm },
      innerEnd: { kind: 'free', walls: 0, flareRadiusMm: mouth.innerFlareMm },
      sizing,
      qp: null,
    };
  }
  const walls = ({ none: 0, 'one-wall': 1, corner: 2, 'full-width': 1 } as const)[mouth.walls];
  return {
    mouth: { shape: 'rectangular', widthMm: mouth.widthMm, heightMm: mouth.heightMm },
    count: mouth.count,
    outerEnd: { kind: 'flanged', walls: 0, flareRadiusMm: 0 },
    innerEnd: { kind: 'free', walls, flareRadiusMm: 0 },
    sizing,
    qp: null,
  };
}
