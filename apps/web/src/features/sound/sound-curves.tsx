'use client';

import type { DesignLetter, SoundResult } from '@gusset/contracts/sound';
import { chartsOf, type SoundChart, soundChart } from '@gusset/sheets';
import { useMemo, useState } from 'react';
import { Switch } from '../../shared/controls/switch.tsx';
import { CursorChart } from './cursor-chart.tsx';
import { nearestPoint, readingAt } from './cursor-reading.ts';
import { CurveTable } from './curve-table.tsx';
import styles from './sound-curves.module.css';

const LEVEL_HEIGHT_PT = 330;
const SMALL_HEIGHT_PT = 230;
/** Where a reader looks first when the curve has no lower end. */
const START_HZ = 40;

export type SoundCurvesProps = {
  readonly result: SoundResult;
  /** The last issue, drawn beside a draft that differs from it. */
  readonly issued: SoundResult | null;
  /** Designs laid over the one that counts. */
  readonly letters: readonly DesignLetter[];
};

/** All curves of the sheet with one cursor: the level large, the others under it. */
export function SoundCurves({ result, issued, letters }: SoundCurvesProps) {
  const [isFreeAir, setIsFreeAir] = useState(false);
  const [cursorHz, setCursorHz] = useState(result.reachesHz ?? START_HZ);
  const charts = useMemo(() => {
    const choice = { isFreeAir, letters, issued };
    return chartsOf(result).map((chart) => ({ chart, input: soundChart(chart, result, choice) }));
  }, [result, issued, letters, isFreeAir]);
  const at = nearestPoint(result.curves.frequenciesHz, cursorHz);
  const figures = readingAt(result, at);
  const hz = `${(result.curves.frequenciesHz[at] ?? cursorHz).toFixed(1)} Hz`;
  const words = `${hz}: ${figures.map(({ label, value }) => `${label} ${value}`).join(', ')}`;
  const heightOf = (chart: SoundChart) => (chart === 'level' ? LEVEL_HEIGHT_PT : SMALL_HEIGHT_PT);
  const drawn = charts.map(({ chart, input }) => (
    <CursorChart
      key={chart}
      input={input}
      heightPt={heightOf(chart)}
      cursorHz={cursorHz}
      onCursor={setCursorHz}
      cursorWords={chart === 'level' ? words : null}
    />
  ));
  return (
    <section className={styles.curves} aria-label="Curves">
      <div className={styles.head}>
        <h2 className="caption">
          Level at {Math.round(result.driveWatts)} W{' '}
          {result.cabin === 'none' || isFreeAir ? 'outdoors' : 'in this car'}
        </h2>
        {result.cabin === 'none' ? null : (
          <Switch isSelected={isFreeAir} onChange={setIsFreeAir}>
            Outdoors
          </Switch>
        )}
      </div>
      {drawn[0]}
      <div className={styles.reading} data-screen-only="">
        <p className={styles.at}>
          <span className="caption">Read at</span> <span className="figures">{hz}</span>
        </p>
        <dl className={styles.figures}>
          {figures.map(({ label, value }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd className="figures">{value}</dd>
            </div>
          ))}
        </dl>
      </div>
      <div className={styles.small}>{drawn.slice(1)}</div>
      <details data-screen-only="">
        <summary>The curves as a table</summary>
        <CurveTable result={result} />
      </details>
    </section>
  );
}
