'use client';

import type { SoundResult } from '@gusset/contracts/sound';
import { chartAssumptions, soundChart } from '@gusset/sheets';
import { useMemo } from 'react';
import { Switch } from '../../shared/controls/switch.tsx';
import { useMediaQuery } from '../../shared/shell/use-media-query.ts';
import { CursorChart } from './cursor-chart.tsx';
import { nearestPoint, readingAt } from './cursor-reading.ts';
import type { CurveView } from './curve-view.ts';
import styles from './sound-curves.module.css';

const HEIGHT_PT = 280;
/** On a phone, so that the settings under it keep most of the screen. */
const NARROW = '(max-width: 719px)';
const NARROW_HEIGHT_PT = 190;
/** Of the reading, the figures that are watched while dragging; the rest stands with the other curves. */
const WATCHED = 5;
const NARROW_WATCHED = 2;

export type LevelCurveProps = { readonly result: SoundResult; readonly view: CurveView };

/** The level, in sight while the settings under it are worked on, with what stands at its cursor. */
export function LevelCurve({ result, view }: LevelCurveProps) {
  const { cursorHz, onCursor, isFreeAir, onFreeAir, isSpread, onSpread, spread, letters, issued } = view;
  const isNarrow = useMediaQuery(NARROW);
  const lettersKey = letters.join('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: letters are a new list each time and their key is not.
  const input = useMemo(
    () => ({
      ...soundChart('level', result, { isFreeAir, isBrief: isNarrow, letters, issued, spread }),
      assumptions: '', // they stand under the chart, where they may take two lines
    }),
    [result, isFreeAir, isNarrow, lettersKey, issued, spread],
  );
  const at = nearestPoint(result.curves.frequenciesHz, cursorHz);
  const figures = readingAt(result, at);
  const hz = `${(result.curves.frequenciesHz[at] ?? cursorHz).toFixed(1)} Hz`;
  return (
    <>
      <div className={styles.head}>
        <h2 className="caption">{input.title}</h2>
        <div className={styles.toggles} data-screen-only="">
          <Switch isSelected={isSpread} onChange={onSpread}>
            Tolerances
          </Switch>
          {result.cabin === 'none' ? null : (
            <Switch isSelected={isFreeAir} onChange={onFreeAir}>
              Outdoors
            </Switch>
          )}
        </div>
      </div>
      <section className={styles.level} aria-label="Level">
        <CursorChart
          input={input}
          heightPt={isNarrow ? NARROW_HEIGHT_PT : HEIGHT_PT}
          cursorHz={cursorHz}
          onCursor={onCursor}
          cursorWords={`${hz}: ${figures.map(({ label, value }) => `${label} ${value}`).join(', ')}`}
        />
        <dl className={styles.watched} data-screen-only="">
          <div>
            <dt>At</dt>
            <dd className="figures">{hz}</dd>
          </div>
          {figures.slice(0, isNarrow ? NARROW_WATCHED : WATCHED).map(({ label, value }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd className="figures">{value}</dd>
            </div>
          ))}
        </dl>
      </section>
      <p className={styles.assumed}>{chartAssumptions(result)}</p>
    </>
  );
}
