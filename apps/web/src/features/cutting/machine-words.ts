// Sentences for saw, router and drill: setting by setting, as someone at the machine reads them.
import type {
  AskewCut,
  BevelSetUp,
  DrilledHoles,
  RoutedCircle,
  RoutedOpening,
  SawPlan,
  SawStep,
} from '@gusset/contracts/cutting';
import { counted } from './cutting-words.ts';

type LengthWords = (mm: number) => string;

/** How often the fence is set, and how good that is. */
export function settingsWords({ fenceSettings, settingsMapByMap, leastSettings }: SawPlan): string {
  const count = counted(fenceSettings, 'fence setting');
  const saved = settingsMapByMap - fenceSettings;
  const against = saved > 0 ? `, ${settingsMapByMap} when sheet after sheet is cut up` : '';
  const bound =
    fenceSettings === leastSettings ? '; no order takes fewer' : `; ${leastSettings} at the least`;
  return `${count}${against}${bound}`;
}

/** `Sheet 2, across: 800 off 2428 × 606`. */
export function stepWords(step: SawStep, sheetNumber: number, length: LengthWords): string {
  const way = step.along === 'length' ? 'lengthwise' : 'across';
  const edge = step.against === 'low' ? '' : ', far edge on the fence';
  return `Sheet ${sheetNumber}, ${way}: from ${length(step.piece.lengthMm)} × ${length(step.piece.widthMm)}${edge}`;
}

export function bevelWords({ how, bevelDeg, tiltDeg }: BevelSetUp): string {
  if (how === 'flat') return `Blade at ${degrees(tiltDeg ?? 0)}, wider face down`;
  if (how === 'on-edge') {
    return `Bevel ${degrees(bevelDeg)} is more than the blade tilts: stand the panel on edge against a tall fence, blade at ${degrees(tiltDeg ?? 0)}`;
  }
  return `Bevel ${degrees(bevelDeg)} is beyond this saw flat and on edge: cut it on another machine or plane it to a line`;
}

export function askewWords(cut: AskewCut, length: LengthWords): string {
  const line = `${length(cut.lengthMm)} long at ${degrees(cut.angleDeg)}, from ${point(cut.from, length)} to ${point(cut.to, length)}`;
  const bevel = cut.bevelDeg > 0 ? `, blade at ${degrees(cut.bevelDeg)}` : '';
  const stops =
    cut.stopsAtStart || cut.stopsAtEnd ? '; stop before the hollow corner, finish by hand saw' : '';
  return `${line}${bevel}${stops}`;
}

/** Null where the guide is the line itself. */
export function guideWords(cut: AskewCut, length: LengthWords): string | null {
  const isOnLine = Math.hypot(cut.guideFrom.xMm - cut.from.xMm, cut.guideFrom.yMm - cut.from.yMm) < 0.01;
  return isOnLine
    ? null
    : `straightedge from ${point(cut.guideFrom, length)} to ${point(cut.guideTo, length)}`;
}

export function circleWords(circle: RoutedCircle, length: LengthWords): string {
  const depth = circle.depthMm === null ? 'through' : `${length(circle.depthMm)} deep`;
  const template = circle.templateDiaMm === null ? '' : `, template Ø ${length(circle.templateDiaMm)}`;
  return `Ø ${length(circle.diameterMm)} ${kind(circle.purpose)}, ${depth} in ${counted(circle.passes, 'pass', 'passes')}: pivot ${length(circle.pivotMm)}${template}`;
}

export function openingWords(opening: RoutedOpening, length: LengthWords): string {
  const depth = opening.depthMm === null ? 'through' : `${length(opening.depthMm)} deep`;
  const corner = opening.isCornerBelowBit ? ', corners left round by the bit' : '';
  const template =
    opening.templateMm === null
      ? ''
      : `, template ${length(opening.templateMm.lengthMm)} × ${length(opening.templateMm.widthMm)}`;
  return `${length(opening.lengthMm)} × ${length(opening.widthMm)} ${opening.purpose}, ${depth} in ${counted(opening.passes, 'pass', 'passes')}${corner}${template}`;
}

export function holesWords(holes: DrilledHoles, length: LengthWords): string {
  const depth = holes.depthMm === null ? 'through' : `${length(holes.depthMm)} deep`;
  const count = holes.centres.length;
  return `${count} × Ø ${length(holes.diameterMm)} ${holes.purpose}, ${depth}`;
}

/** Where they lie: on their circle, or one by one. */
export function holesPlace({ ring, centres }: DrilledHoles, length: LengthWords): string {
  const [first] = centres;
  if (ring === null || first === undefined) {
    return centres.map((centre) => point(centre, length)).join(', ');
  }
  return `on Ø ${length(ring.diameterMm)} about ${point(ring, length)}, the first at ${point(first, length)}`;
}

export function point(at: { readonly xMm: number; readonly yMm: number }, length: LengthWords): string {
  return `${length(at.xMm)} / ${length(at.yMm)}`;
}

function kind(purpose: string): string {
  return purpose.replace(/ of driver (\d+)$/u, ', driver $1');
}

function degrees(value: number): string {
  return `${value.toFixed(1)}°`;
}
