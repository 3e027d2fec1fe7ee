// The chart of the front as geometry: low corner across (over its logarithm), output up, a mark's area by its litres,
// its shape by the kind of box.
import type { SearchKind } from '@gusset/contracts/acoustics';
import { scaleLinear, scaleLog } from 'd3-scale';
import { designId, type FoundDesign, type SearchAnswer } from './search-words.ts';

export type FrontMark = {
  readonly design: FoundDesign;
  readonly x: number;
  readonly y: number;
  readonly path: string;
  /** From the middle to the outermost ink. */
  readonly radius: number;
};

export type AxisTick = { readonly at: number; readonly label: string };

export type FrontChart = {
  readonly width: number;
  readonly height: number;
  readonly box: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly marks: readonly FrontMark[];
  /** Places of the ranking beside their marks. */
  readonly numbers: readonly { readonly x: number; readonly y: number; readonly label: string }[];
  readonly hertz: readonly AxisTick[];
  readonly decibels: readonly AxisTick[];
};

const MARGIN = { left: 46, right: 14, top: 12, bottom: 40 };
const RADIUS = { least: 3.5, most: 13 };
/** A little air, so that no mark stands on the frame. */
const AIR = { hertz: 1.06, decibels: 0.8 };
const HERTZ_RULES = [8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 70, 80];

export type ChartFrame = {
  readonly width: number;
  readonly height: number;
  /** Best first. */
  readonly numbered: readonly FoundDesign[];
};

/** The front and the winners together, by corner: what stands on the chart. */
export function chartedDesigns({ ranked, front }: Pick<SearchAnswer, 'ranked' | 'front'>): FoundDesign[] {
  const all = new Map([...front, ...ranked].map((design) => [designId(design), design]));
  return [...all.values()].sort(
    (a, b) => a.lowCornerHz - b.lowCornerHz || b.outputDb - a.outputDb || a.netLitres - b.netLitres,
  );
}

/** `designs` in the order in which the keys go through them. */
export function frontChart(
  designs: readonly FoundDesign[],
  { width, height, numbered }: ChartFrame,
): FrontChart {
  const box = {
    left: MARGIN.left,
    right: width - MARGIN.right,
    top: MARGIN.top,
    bottom: height - MARGIN.bottom,
  };
  const corners = designs.map(({ lowCornerHz }) => lowCornerHz);
  const outputs = designs.map(({ outputDb }) => outputDb);
  const from = Math.min(...corners, 80) / AIR.hertz;
  const to = Math.max(...corners, from * 1.5) * AIR.hertz;
  const across = scaleLog([from, to], [box.left, box.right]);
  const up = scaleLinear(
    [Math.min(...outputs) - AIR.decibels, Math.max(...outputs) + AIR.decibels],
    [box.bottom, box.top],
  ).nice(6);
  const mostLitres = Math.max(...designs.map(({ netLitres }) => netLitres), 1);
  const marks = designs.map((design) => {
    const radius = markRadius(design.netLitres, mostLitres);
    const [x, y] = [across(design.lowCornerHz), up(design.outputDb)];
    return { design, x, y, radius, path: markPath(design.kind, x, y, radius) };
  });
  return {
    width,
    height,
    box,
    marks,
    numbers: numbered.flatMap((design, i) => {
      const mark = marks.find((one) => designId(one.design) === designId(design));
      return mark === undefined
        ? []
        : [{ x: mark.x + 0.7 * mark.radius + 2, y: mark.y - 0.7 * mark.radius - 2, label: String(i + 1) }];
    }),
    hertz: HERTZ_RULES.filter((hz) => hz >= from && hz <= to).map((hz) => ({
      at: across(hz),
      label: String(hz),
    })),
    decibels: up.ticks(6).map((db) => ({ at: up(db), label: String(db) })),
  };
}

/** Area by litres: twice the air, twice the ink. */
export function markRadius(netLitres: number, mostLitres: number): number {
  return Math.max(RADIUS.least, RADIUS.most * Math.sqrt(netLitres / mostLitres));
}

/** Shapes of about one area, told apart without colour. */
export function markPath(kind: SearchKind, x: number, y: number, radius: number): string {
  switch (kind) {
    case 'closed': {
      const side = radius * 0.86;
      return `M${x - side} ${y - side}h${2 * side}v${2 * side}h${-2 * side}Z`;
    }
    case 'vented':
      return `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z`;
    case 'single-tuned-bandpass': {
      const reach = radius * 1.2;
      return `M${x} ${y - reach}L${x + reach} ${y}L${x} ${y + reach}L${x - reach} ${y}Z`;
    }
    case 'passive-radiator': {
      const reach = radius * 1.2;
      return `M${x} ${y - reach}L${x + reach} ${y + reach * 0.8}H${x - reach}Z`;
    }
    case 'infinite-baffle': {
      const reach = Math.max(radius, 6);
      return `M${x} ${y - reach}V${y + reach}M${x - reach} ${y}H${x + reach}`;
    }
  }
}

/** Which mark a key leads to from the one in hand; null = the key means nothing here. */
export function steppedMark(key: string, from: number, count: number): number | null {
  if (count === 0) return null;
  if (key === 'ArrowRight' || key === 'ArrowDown') return Math.min(from + 1, count - 1);
  if (key === 'ArrowLeft' || key === 'ArrowUp') return Math.max(from - 1, 0);
  if (key === 'Home') return 0;
  return key === 'End' ? count - 1 : null;
}
