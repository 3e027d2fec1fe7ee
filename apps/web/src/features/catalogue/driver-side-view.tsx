import { DrawingView } from '../../shared/sheet/drawing-view.tsx';
import { driverOutline, type MountingFigures, VIEW_HEIGHT, VIEW_WIDTH } from './driver-outline.ts';
import styles from './driver-side-view.module.css';

export type DriverSideViewProps = {
  readonly figures: MountingFigures;
  readonly show: (mm: number) => string;
};

const TICK = 5;
const OUTSIDE = 26;

/** The driver as the baffle meets it: flange, cut-out, depth, magnet, each with its dimension. */
export function DriverSideView({ figures, show }: DriverSideViewProps) {
  const view = driverOutline(figures);
  if (view === null) {
    return (
      <p className={styles.waiting}>
        The side view is drawn once overall diameter, cut-out and depth are typed.
      </p>
    );
  }
  const { frontX, faceX, backX, motorX, axisY, overallHalf, cutoutHalf, magnetHalf, ventHalf } = view;
  const bottomY = axisY + Math.max(overallHalf, magnetHalf);
  const basket = `M${faceX} ${axisY - cutoutHalf}L${motorX} ${axisY - magnetHalf * 0.82}V${axisY + magnetHalf * 0.82}L${faceX} ${axisY + cutoutHalf}Z`;
  const size = (mm: number | null | undefined) => (mm ? show(mm) : '');
  return (
    <DrawingView
      label="Side view of the driver"
      minWidthPx={280}
      legend={view.isGuessed ? 'Magnet or flange drawn as usual: no figure given' : undefined}
    >
      <svg className={styles.view} viewBox={`0 0 ${VIEW_WIDTH} ${VIEW_HEIGHT}`} aria-hidden="true">
        <path className={styles.axis} d={`M${frontX - 22} ${axisY}H${backX + 22}`} />
        <path className={styles.body} d={basket} />
        <rect
          className={styles.flange}
          x={frontX}
          y={axisY - overallHalf}
          width={faceX - frontX}
          height={2 * overallHalf}
        />
        <rect
          className={styles.motor}
          x={motorX}
          y={axisY - magnetHalf}
          width={backX - motorX}
          height={2 * magnetHalf}
        />
        {ventHalf > 0 ? (
          <path
            className={styles.hidden}
            d={`M${motorX} ${axisY - ventHalf}H${backX}M${motorX} ${axisY + ventHalf}H${backX}`}
          />
        ) : null}
        <Upright x={frontX - OUTSIDE} from={axisY - overallHalf} to={axisY + overallHalf} at={frontX} />
        <text className={styles.size} transform={`translate(${frontX - OUTSIDE - 7} ${axisY}) rotate(-90)`}>
          {`⌀ ${size(figures.overallDiaMm)}`}
        </text>
        <Upright x={backX + OUTSIDE} from={axisY - cutoutHalf} to={axisY + cutoutHalf} at={faceX} />
        <text className={styles.size} transform={`translate(${backX + OUTSIDE + 15} ${axisY}) rotate(-90)`}>
          {`cut-out ⌀ ${size(figures.cutoutDiaMm)}`}
        </text>
        <path
          className={styles.line}
          d={`M${faceX} ${bottomY + 6}V${bottomY + 34}M${backX} ${axisY + magnetHalf + 6}V${bottomY + 34}M${faceX} ${bottomY + 28}H${backX}`}
        />
        <path className={styles.tick} d={tick(faceX, bottomY + 28) + tick(backX, bottomY + 28)} />
        <text className={styles.size} x={(faceX + backX) / 2} y={bottomY + 46}>
          {`depth ${size(figures.mountingDepthMm)}`}
        </text>
        {figures.magnetDiaMm ? (
          <text className={styles.size} x={(motorX + backX) / 2} y={axisY - magnetHalf - 8}>
            {`⌀ ${show(figures.magnetDiaMm)}`}
          </text>
        ) : null}
      </svg>
    </DrawingView>
  );
}

const tick = (x: number, y: number): string => `M${x - TICK} ${y + TICK}L${x + TICK} ${y - TICK}`;

type UprightProps = {
  readonly x: number;
  readonly from: number;
  readonly to: number;
  /** Where its help lines come from. */
  readonly at: number;
};

function Upright({ x, from, to, at }: UprightProps) {
  const gap = x > at ? 6 : -6;
  const past = x > at ? 6 : -6;
  return (
    <>
      <path
        className={styles.line}
        d={`M${x} ${from}V${to}M${at + gap} ${from}H${x + past}M${at + gap} ${to}H${x + past}`}
      />
      <path className={styles.tick} d={tick(x, from) + tick(x, to)} />
    </>
  );
}
