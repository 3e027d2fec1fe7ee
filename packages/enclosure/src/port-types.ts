// What a port is once it has its place, whatever it is made of.
import type { PlacedPort, Vector, WallFace } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import type { Board } from './board.ts';
import type { Channel } from './slot-channel.ts';
import type { Weighted } from './vector.ts';

/** A mouth between two corners of the side view: the boards of wall `faceIndex` stop `insetMm` off wall `alongIndex`
 * between these two places across the box. */
export type Mouth = {
  readonly faceIndex: number;
  readonly alongIndex: number;
  readonly insetMm: number;
  readonly zFromMm: number;
  readonly zToMm: number;
};

/** A mouth beside a side, over the whole height of wall `faceIndex`. */
export type SideMouth = {
  readonly faceIndex: number;
  readonly side: 'left' | 'right';
  readonly widthMm: number;
};

/** A stretch across the box that a port takes for itself. */
export type Stretch = { readonly fromMm: number; readonly toMm: number };

/** One pipe, straight in from its face. */
export type Tube = {
  readonly faceMm: Vector;
  readonly inward: Vector;
  readonly outerRadiusMm: number;
  readonly lengthMm: number;
};

export type LaidPort = {
  readonly placed: PlacedPort;
  readonly askedMm: number;
  readonly roomMm: number;
  readonly boards: readonly Board[];
  /** Of what it takes, the mouth in doublers inside: no chamber's air. */
  readonly inDoublersLitres: number;
  readonly mouth: Mouth | null;
  readonly sideMouth: SideMouth | null;
  readonly channel: Channel | null;
  /** Across the box, panels included; null = from side to side. */
  readonly stretch: Stretch | null;
  readonly tubes: readonly Tube[];
  /** Inside seams that it covers: corners of the side view by index, and walls against a side. */
  readonly coversCorners: readonly number[];
  readonly coversSeams: readonly { readonly face: WallFace; readonly side: 'left' | 'right' }[];
  /** In the side view, from the innermost wood of the face: channel and panels; null for pipes. */
  readonly taken: readonly PointMm[] | null;
  readonly weights: readonly Weighted[];
};
