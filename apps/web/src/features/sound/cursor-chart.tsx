'use client';

import { type ResponseChartInput, responseChart, responseChartPlace } from '@gusset/drawings';
import { type KeyboardEvent, memo, type PointerEvent, useMemo } from 'react';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import styles from './cursor-chart.module.css';
import { useWidth } from './use-width.ts';

const STEP_PER_OCTAVE = 24;
const FAST_STEPS = 8; // a third of an octave with Shift

export type CursorChartProps = {
  readonly input: ResponseChartInput;
  readonly heightPt: number;
  readonly cursorHz: number;
  readonly onCursor: (hz: number) => void;
  /** What stands at the cursor, read out; null = this chart only shows the cursor of another. */
  readonly cursorWords: string | null;
};

/** A chart with a cursor that follows mouse, finger and arrow keys; all charts of the sheet share its frequency. */
export const CursorChart = memo(function CursorChart({
  input,
  heightPt,
  cursorHz,
  onCursor,
  cursorWords,
}: CursorChartProps) {
  const [ref, widthPx] = useWidth<HTMLDivElement>(720);
  const view = useMemo(() => ({ widthPt: widthPx, heightPt }), [widthPx, heightPt]);
  const scene = useMemo(() => responseChart(input, view), [input, view]);
  const place = useMemo(() => responseChartPlace(input, view), [input, view]);
  const { box } = place;
  const x = place.at([cursorHz, 0]).x;
  const dots = input.curves.flatMap(({ name, points }) => {
    const value = valueAt(points, cursorHz);
    const y = value === null ? null : place.at([cursorHz, value]).y;
    return y === null || y < box.top || y > box.bottom ? [] : [{ name, y }];
  });

  const follow = (event: PointerEvent<HTMLDivElement>) => {
    const { left, width } = event.currentTarget.getBoundingClientRect();
    const share = (event.clientX - left) / width;
    onCursor(place.frequencyAt(box.left + share * (box.right - box.left)));
  };
  const step = (event: KeyboardEvent<HTMLDivElement>) => {
    const next = steppedHz(event, cursorHz, input);
    if (next === null) return;
    event.preventDefault();
    onCursor(next);
  };
  const pane = {
    insetInlineStart: `${(box.left / widthPx) * 100}%`,
    insetBlockStart: `${(box.top / heightPt) * 100}%`,
    inlineSize: `${((box.right - box.left) / widthPx) * 100}%`,
    blockSize: `${((box.bottom - box.top) / heightPt) * 100}%`,
  };
  const overlay = (
    <>
      <svg className={styles.line} viewBox={`0 0 ${widthPx} ${heightPt}`} aria-hidden="true">
        <path d={`M${x} ${box.top}V${box.bottom}`} />
        {dots.map(({ name, y }) => (
          <circle key={name} cx={x} cy={y} r={3} />
        ))}
      </svg>
      {cursorWords === null ? (
        <div
          className={styles.pane}
          style={pane}
          aria-hidden="true"
          onPointerDown={follow}
          onPointerMove={follow}
        />
      ) : (
        <div
          className={styles.pane}
          style={pane}
          role="slider"
          tabIndex={0}
          aria-label={`${input.title}: frequency to read at`}
          aria-valuemin={input.fromHz}
          aria-valuemax={input.toHz}
          aria-valuenow={Math.round(cursorHz)}
          aria-valuetext={cursorWords}
          onKeyDown={step}
          onPointerDown={follow}
          onPointerMove={follow}
        />
      )}
    </>
  );
  return (
    <div ref={ref} className={styles.chart}>
      <StillDrawing scene={scene} minWidthPx={0} />
      {overlay}
    </div>
  );
});

/** The cursor moves far more often than the lines do. */
const StillDrawing = memo(SceneDrawing);

function steppedHz(
  { key, shiftKey }: KeyboardEvent,
  hz: number,
  { fromHz, toHz }: ResponseChartInput,
): number | null {
  const steps = shiftKey ? FAST_STEPS : 1;
  const held = (next: number) => Math.min(Math.max(next, fromHz), toHz);
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return held(hz * 2 ** (steps / STEP_PER_OCTAVE));
    case 'ArrowLeft':
    case 'ArrowDown':
      return held(hz * 2 ** (-steps / STEP_PER_OCTAVE));
    case 'Home':
      return fromHz;
    case 'End':
      return toHz;
    default:
      return null;
  }
}

/** Straight between the two neighbours over the logarithm of frequency; null outside of the curve. */
function valueAt(points: ResponseChartInput['curves'][number]['points'], hz: number): number | null {
  const next = points.findIndex(([at]) => at >= hz);
  const above = points[next];
  if (above === undefined) return null;
  const below = points[next - 1];
  if (below === undefined) return above[0] === hz ? above[1] : null;
  const share = Math.log(hz / below[0]) / Math.log(above[0] / below[0]);
  return below[1] + share * (above[1] - below[1]);
}
