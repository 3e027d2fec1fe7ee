// Sentences for saw, router and drill: setting by setting, as someone at the machine reads them.
import type {
  AskewCut,
  BenchWork,
  BevelSetUp,
  DrilledHoles,
  RoutedCircle,
  RoutedOpening,
  SawPlan,
  SawStep,
} from '@gusset/contracts/cutting';

type LengthWords = (mm: number) => string;

const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

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

/** One panel's work at router and drill: where, and what there. */
export type BenchLine = { readonly at: string; readonly words: readonly string[] };

export function benchLines(bench: BenchWork, panelId: string, length: LengthWords): readonly BenchLine[] {
  const of = <Item extends { readonly panelId: string }>(items: readonly Item[]) =>
    items.filter((item) => item.panelId === panelId);
  return [
    ...of(bench.circles).map(({ circles, ...at }) => ({
      at: point(at, length),
      words: circles.map((circle) => circleWords(circle, length)),
    })),
    ...of(bench.openings).map((opening) => ({
      at: point(opening, length),
      words: [openingWords(opening, length)],
    })),
    ...of(bench.holes).map((holes) => ({
      at: '',
      words: [`${holesWords(holes, length)}, ${holesPlace(holes, length)}`],
    })),
    ...of(bench.rebates).map((rebate) => ({
      at: '',
      words: [
        `Step along the edge of ${length(rebate.lengthMm)}: ${length(rebate.widthMm)} wide, ${length(rebate.depthMm)} deep in ${counted(rebate.passes, 'pass', 'passes')}, inner face`,
      ],
    })),
    ...of(bench.flushTrims).map((trim) => ({
      at: '',
      words: [
        `After glue-up: trim ${length(trim.oversizeMm)} flush along ${length(trim.lengthMm)}, bearing bit`,
      ],
    })),
  ];
}

/** The edges that one tilt and fence serve, mark by mark. */
export function bevelledEdges({ cuts, fenceMm }: BevelSetUp, length: LengthWords): string {
  const edges = cuts.map(
    ({ mark, lengthMm, pieces }) =>
      `${mark} edge of ${length(lengthMm)}${pieces > 1 ? `, ${pieces} off` : ''}`,
  );
  return `${fenceMm === null ? 'No edge across it: sled or guide rail. ' : ''}${edges.join('; ')}`;
}

/** A cut askew and its guide in one line, without its mark. */
export function askewLine(cut: AskewCut, length: LengthWords): string {
  const guide = guideWords(cut, length);
  return `${askewWords(cut, length)}${guide === null ? '' : `; ${guide}`}${cut.pieces > 1 ? `; ${cut.pieces} off` : ''}`;
}

export const SAW_PAGE_CAUTION =
  'Saw off at the wall before you set it; guard and riving knife on, push stick to hand, extraction running, eyes and ears protected. Check the first piece of each setting with a rule.';
export const ROUTER_PAGE_LEAD =
  'Each place is along / across from the panel’s lower left corner, outer face up. Mark a centre once and cut everything about it from that mark. Clamp the work, feed against the bit, both hands on the router.';
export const GLUE_PAGE_CAUTION =
  'Gloves and fresh air with polyurethane and solvents; cotton waste with glue or finish goes into a closed metal bin. Two people for any carcass above 20 kg.';
