'use client';

import type { SearchKind } from '@gusset/contracts/acoustics';
import { type CSSProperties, type KeyboardEvent, useMemo, useRef } from 'react';
import { useWidth } from '../use-width.ts';
import { DesignList } from './design-list.tsx';
import { chartedDesigns, type FrontChart, frontChart, markPath, steppedMark } from './front-marks.ts';
import styles from './front-view.module.css';
import {
  boxWords,
  designId,
  driversWords,
  type FoundDesign,
  frontWords,
  KIND_WORDS,
  outputWords,
  reachWords,
  type SearchAnswer,
} from './search-words.ts';

export type FrontViewProps = {
  readonly answer: SearchAnswer;
  readonly chosen: FoundDesign;
  readonly onChoose: (design: FoundDesign) => void;
};

const HEIGHT = 320;
/** The first of the ranking carry their place. */
const NUMBERED = 3;
/** Small marks are still easy to hit. */
const LEAST_REACH_PX = 12;

/** Lower, louder, smaller, cheaper: designs that nothing beats in all four. One stop of the Tab key, arrows inside. */
export function FrontView({ answer, chosen, onChoose }: FrontViewProps) {
  const designs = useMemo(() => chartedDesigns(answer), [answer]);
  const [ref, width] = useWidth<HTMLDivElement>(760);
  const chart = useMemo(
    () => frontChart(designs, { width, height: HEIGHT, numbered: answer.ranked.slice(0, NUMBERED) }),
    [designs, width, answer],
  );
  const kinds = useMemo(() => [...new Set(designs.map(({ kind }) => kind))].sort(), [designs]);
  const marks = useRef<(HTMLDivElement | null)[]>([]);
  const at = designs.findIndex((design) => designId(design) === designId(chosen));
  const step = (event: KeyboardEvent<HTMLDivElement>, from: number) => {
    const next = steppedMark(event.key, from, designs.length);
    const design = next === null ? undefined : designs[next];
    if (next === null || design === undefined) return;
    event.preventDefault();
    onChoose(design);
    marks.current[next]?.focus();
  };
  return (
    <section className={styles.front} aria-label="What is traded for what">
      <h3 className="caption">What is traded for what</h3>
      <p className={styles.words}>
        {'Lower is left, louder is up, a larger mark is a larger box; numbers are the best by your aim. '}
        {frontWords(answer)}
      </p>
      <div ref={ref} className={styles.view} style={{ blockSize: HEIGHT }}>
        <ChartDrawing chart={chart} at={at} />
        <div role="listbox" aria-label="Designs by low corner and output" className={styles.list}>
          {chart.marks.map(({ design, x, y, radius }, i) => (
            <div
              key={designId(design)}
              ref={(element) => {
                marks.current[i] = element;
              }}
              role="option"
              aria-selected={i === at}
              aria-label={`${driversWords(design)}, ${boxWords(design)}: holds down to ${reachWords(design.lowCornerHz)}, plays ${outputWords(design.outputDb)}`}
              tabIndex={i === Math.max(at, 0) ? 0 : -1}
              className={styles.place}
              style={
                { left: x, top: y, '--reach': `${2 * Math.max(radius, LEAST_REACH_PX)}px` } as CSSProperties
              }
              onKeyDown={(event) => step(event, i)}
              onClick={() => onChoose(design)}
              onFocus={() => {
                if (i !== at) onChoose(design);
              }}
            />
          ))}
        </div>
      </div>
      <ul className={styles.legend}>
        {kinds.map((kind) => (
          <li key={kind}>
            <KindMark kind={kind} />
            {KIND_WORDS[kind]}
          </li>
        ))}
      </ul>
      <details className={styles.twin}>
        <summary>The same as a table</summary>
        <DesignList caption="By how low they reach" designs={designs} chosen={chosen} onChoose={onChoose} />
      </details>
    </section>
  );
}

type ChartDrawingProps = { readonly chart: FrontChart; readonly at: number };

/** The ink alone: what is read out and pressed lies over it. */
function ChartDrawing({
  chart: { width, height, box, marks, numbers, hertz, decibels },
  at,
}: ChartDrawingProps) {
  const chosen = marks[at];
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      aria-hidden="true"
      className={styles.chart}
    >
      <g className={styles.rules}>
        {decibels.map(({ at: y, label }) => (
          <g key={label}>
            <path d={`M${box.left} ${y}H${box.right}`} />
            <text x={box.left - 6} y={y + 4} textAnchor="end">
              {label}
            </text>
          </g>
        ))}
        {hertz.map(({ at: x, label }) => (
          <g key={label}>
            <path d={`M${x} ${box.top}V${box.bottom}`} />
            <text x={x} y={box.bottom + 16} textAnchor="middle">
              {label}
            </text>
          </g>
        ))}
        <rect x={box.left} y={box.top} width={box.right - box.left} height={box.bottom - box.top} />
        <text x={box.right} y={box.bottom + 33} textAnchor="end" className={styles.axis}>
          Holds down to, Hz
        </text>
        <text x={box.left + 6} y={box.top + 16} className={styles.axis}>
          Plays, dB
        </text>
      </g>
      <g className={styles.marks}>
        {marks.map(({ design, path }) => (
          <path key={designId(design)} d={path} />
        ))}
      </g>
      <g className={styles.numbers}>
        {numbers.map(({ x, y, label }) => (
          <text key={label} x={x} y={y}>
            {label}
          </text>
        ))}
      </g>
      {chosen === undefined ? null : (
        <g className={styles.chosen}>
          <path d={chosen.path} />
          <circle cx={chosen.x} cy={chosen.y} r={chosen.radius + 6} />
        </g>
      )}
    </svg>
  );
}

function KindMark({ kind }: { readonly kind: SearchKind }) {
  return (
    <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" className={styles.marks}>
      <path d={markPath(kind, 9, 9, 6)} />
    </svg>
  );
}
