'use client';

import type { SoundResult } from '@gusset/contracts/sound';
import { chartsOf, designName, soundChart } from '@gusset/sheets';
import { useMemo } from 'react';
import { CursorChart } from './cursor-chart.tsx';
import { comparedReading, nearestPoint, readingAt } from './cursor-reading.ts';
import { CurveTable } from './curve-table.tsx';
import type { CurveView } from './curve-view.ts';
import { DesignLine } from './design-line.tsx';
import styles from './sound-curves.module.css';

const HEIGHT_PT = 230;

export type SoundCurvesProps = { readonly result: SoundResult; readonly view: CurveView };

/** Everything beside the level: travel, air, load, delay; all read at the same cursor. */
export function SoundCurves({ result, view }: SoundCurvesProps) {
  const { cursorHz, onCursor, letters, issued } = view;
  const lettersKey = letters.join('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: letters are a new list each time and their key is not.
  const charts = useMemo(
    () =>
      chartsOf(result)
        .filter((chart) => chart !== 'level')
        .map((chart) => ({
          chart,
          input: soundChart(chart, result, {
            isFreeAir: false,
            isBrief: true,
            letters,
            issued,
            spread: null,
          }),
        })),
    [result, lettersKey, issued],
  );
  return (
    <section className={styles.curves} aria-label="Other curves">
      <div className={styles.small}>
        {charts.map(({ chart, input }) => (
          <CursorChart
            key={chart}
            input={input}
            heightPt={HEIGHT_PT}
            cursorHz={cursorHz}
            onCursor={onCursor}
            cursorWords={null}
          />
        ))}
      </div>
      <Reading result={result} view={view} />
      <details data-screen-only="">
        <summary>The curves as a table</summary>
        <CurveTable result={result} />
      </details>
    </section>
  );
}

/** Every figure at the cursor, and the designs beside it in one line each. */
function Reading({ result, view }: SoundCurvesProps) {
  const { cursorHz, letters, isFreeAir } = view;
  const at = nearestPoint(result.curves.frequenciesHz, cursorHz);
  return (
    <div className={styles.reading} data-screen-only="">
      <p className={styles.at}>
        <span className="caption">Read at</span>{' '}
        <span className="figures">{(result.curves.frequenciesHz[at] ?? cursorHz).toFixed(1)} Hz</span>
      </p>
      <dl className={styles.figures}>
        {readingAt(result, at).map(({ label, value }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd className="figures">{value}</dd>
          </div>
        ))}
        {result.variants.map((variant) =>
          variant.state === 'ready' && letters.includes(variant.letter) ? (
            <div key={variant.letter} className={styles.compared}>
              <dt>
                <DesignLine letter={variant.letter} isChosen={false} /> {designName(variant, variant.design)}
              </dt>
              <dd className="figures">{comparedReading(variant.design.curves, cursorHz, isFreeAir)}</dd>
            </div>
          ) : null,
        )}
      </dl>
    </div>
  );
}
