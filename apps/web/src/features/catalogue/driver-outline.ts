// The side view of a driver from the figures a carpenter needs, at the scale of its place. Pure.
// Across: depth, the mounting face at 0, the flange in front of it. Down: diameters, about the axis.

export type MountingFigures = {
  readonly overallDiaMm?: number | null;
  readonly cutoutDiaMm?: number | null;
  readonly flangeThicknessMm?: number | null;
  readonly mountingDepthMm?: number | null;
  readonly magnetDiaMm?: number | null;
  readonly poleVentDiaMm?: number | null;
};

export type DriverOutline = {
  /** Pixels for a millimetre. */
  readonly scale: number;
  readonly faceX: number;
  readonly frontX: number;
  readonly backX: number;
  /** Where the basket ends and the motor begins; drawn by habit, no figure says it. */
  readonly motorX: number;
  readonly axisY: number;
  readonly overallHalf: number;
  readonly cutoutHalf: number;
  readonly magnetHalf: number;
  readonly ventHalf: number;
  /** True where magnet or flange were not given and stand as usual. */
  readonly isGuessed: boolean;
};

export const VIEW_WIDTH = 340;
export const VIEW_HEIGHT = 340;
/** Room for dimension lines on each side. */
const MARGIN_X = 66;
const MARGIN_TOP = 28;
const MARGIN_BOTTOM = 56;

/** Shares of the usual driver, only for drawing what no figure gives. */
const USUAL_MAGNET_SHARE = 0.55;
const USUAL_FLANGE_SHARE = 0.03;
const MOTOR_SHARE = 0.36;

/** Null until the three figures that a baffle needs are known. */
export function driverOutline(figures: MountingFigures): DriverOutline | null {
  const { overallDiaMm, cutoutDiaMm, mountingDepthMm, magnetDiaMm, flangeThicknessMm, poleVentDiaMm } =
    figures;
  if (!overallDiaMm || !cutoutDiaMm || !mountingDepthMm) return null;
  const flangeMm = flangeThicknessMm ?? overallDiaMm * USUAL_FLANGE_SHARE;
  const magnetMm = magnetDiaMm ?? cutoutDiaMm * USUAL_MAGNET_SHARE;
  const tallestMm = Math.max(overallDiaMm, cutoutDiaMm, magnetMm);
  const scale = Math.min(
    (VIEW_WIDTH - 2 * MARGIN_X) / (mountingDepthMm + flangeMm),
    (VIEW_HEIGHT - MARGIN_TOP - MARGIN_BOTTOM) / tallestMm,
  );
  const frontX = (VIEW_WIDTH - (mountingDepthMm + flangeMm) * scale) / 2;
  const faceX = frontX + flangeMm * scale;
  return {
    scale,
    frontX,
    faceX,
    backX: faceX + mountingDepthMm * scale,
    motorX: faceX + mountingDepthMm * (1 - MOTOR_SHARE) * scale,
    axisY: MARGIN_TOP + (tallestMm * scale) / 2,
    overallHalf: (overallDiaMm * scale) / 2,
    cutoutHalf: (cutoutDiaMm * scale) / 2,
    magnetHalf: (magnetMm * scale) / 2,
    ventHalf: ((poleVentDiaMm ?? 0) * scale) / 2,
    isGuessed: !magnetDiaMm || !flangeThicknessMm,
  };
}

/** What cannot be so, in words: shown beside the drawing. */
export function mountingDoubts(figures: MountingFigures): readonly string[] {
  const { overallDiaMm, cutoutDiaMm, magnetDiaMm, flangeThicknessMm, mountingDepthMm } = figures;
  const doubts: string[] = [];
  if (overallDiaMm && cutoutDiaMm && cutoutDiaMm >= overallDiaMm)
    doubts.push('The cut-out is as wide as the driver: the flange would have nothing to rest on.');
  if (magnetDiaMm && cutoutDiaMm && magnetDiaMm >= cutoutDiaMm)
    doubts.push('The magnet is wider than the cut-out: it does not go in from the front.');
  if (flangeThicknessMm && mountingDepthMm && flangeThicknessMm >= mountingDepthMm)
    doubts.push('The flange is thicker than the whole driver is deep.');
  return doubts;
}
