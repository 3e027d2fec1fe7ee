'use client';

import type { SoundResult } from '@gusset/contracts/sound';
import { soundChart } from '@gusset/sheets';
import { useMemo } from 'react';
import { Switch } from '../../shared/controls/switch.tsx';
import { COARSE_POINTER, useMediaQuery } from '../../shared/shell/use-media-query.ts';
import { CursorChart } from './cursor-chart.tsx';
import { nearestPoint, readingAt } from './cursor-reading.ts';
import type { CurveView } from './curve-view.ts';
import styles from './sound-curves.module.css';

const HEIGHT_PT = 280;
const SHORT_HEIGHT_PT = 210; // on a phone, so that the settings under it keep most of the screen
/** Of the reading, the figures that are watched while dragging; the rest stands with the other curves. */
const WATCHED = 5;

export type LevelCurveProps = { readonly result: SoundResult; readonly view: CurveView };

/** The level, in sight while the settings under it are worked on, with what stands at its cursor. */
export function LevelCurve({ result, view }: LevelCurveProps) {
  const { cursorHz, onCursor, isFreeAir, onFreeAir, isSpread, onSpread, spread, letters, issued } = view;
  const isCoarse = useMediaQuery(COARSE_POINTER);
  const lettersKey = letters.join('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: letters are a new list each time and their key is not.
  const input = useMemo(
    () => soundChart('level', result, { isFreeAir, letters, issued, spread }),
    [result, isFreeAir, lettersKey, issued, spread],
  );
  const at = nearestPoint(result.curves.frequenciesHz, cursorHz);
  const figures = readingAt(result, at);
  const hz = `${(result.curves.frequenciesHz[at] ?? cursorHz).toFixed(1)} Hz`;
  return (
    <section className={styles.level} aria-label="Level">
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
      <CursorChart
        input={input}
        heightPt={isCoarse ? SHORT_HEIGHT_PT : HEIGHT_PT}
        cursorHz={cursorHz}
        onCursor={onCursor}
        cursorWords={`${hz}: ${figures.map(({ label, value }) => `${label} ${value}`).join(', ')}`}
      />
      <dl className={styles.watched} data-screen-only="">
        <div>
          <dt>At</dt>
          <dd className="figures">{hz}</dd>
        </div>
        {figures.slice(0, WATCHED).map(({ label, value }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd className="figures">{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
