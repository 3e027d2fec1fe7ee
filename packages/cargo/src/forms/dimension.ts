// Short ways to write a form's lettered dimensions.
import type { AngleDimension, Dimension, DrawingView, LengthDimension } from '@gusset/contracts/cargo';

/** Letters for dimensions in order; I and O are left out, they read as 1 and 0. */
export const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

const DEGREE_RAD = Math.PI / 180;

type Written = {
  readonly key: string;
  readonly letter: string;
  readonly label: string;
  readonly hint: string;
  readonly need?: Dimension['need'];
  readonly tighter?: Dimension['tighter'];
  readonly onSoftTrim?: boolean;
  readonly view?: DrawingView;
  readonly highlights: readonly string[];
};

const base = (it: Written) => ({
  key: it.key,
  letter: it.letter,
  label: it.label,
  hint: it.hint,
  need: it.need ?? 'required',
  tighter: it.tighter ?? 'smaller',
  onSoftTrim: it.onSoftTrim ?? false,
  drawing: { view: it.view ?? 'section', highlights: it.highlights },
});

export function lengthDimension(
  it: Written & {
    readonly rangeMm: readonly [number, number];
    readonly typicalMm: number;
    readonly assumed?: LengthDimension['assumed'];
  },
): LengthDimension {
  return {
    ...base(it),
    unit: 'length',
    minMm: it.rangeMm[0],
    maxMm: it.rangeMm[1],
    typicalMm: it.typicalMm,
    assumed: it.assumed ?? null,
  };
}

/** Written in degrees, kept in radians. */
export function angleDimension(
  it: Written & {
    readonly rangeDegrees: readonly [number, number];
    readonly typicalDegrees: number;
    readonly assumed?: AngleDimension['assumed'];
  },
): AngleDimension {
  return {
    ...base(it),
    unit: 'angle',
    minRad: it.rangeDegrees[0] * DEGREE_RAD,
    maxRad: it.rangeDegrees[1] * DEGREE_RAD,
    typicalRad: it.typicalDegrees * DEGREE_RAD,
    assumed: it.assumed ?? null,
  };
}
