'use client';

import { solveTimeResponse } from '@gusset/acoustics';
import type { SoundFacts, SoundInput } from '@gusset/contracts/sound';
import { type TimeChartInput, timeChart } from '@gusset/drawings';
import { soundSystem } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useMemo, useState } from 'react';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import styles from './sound-curves.module.css';
import { useWidth } from './use-width.ts';

const HEIGHT_PT = 240;
const SHOWN = { fromMs: -10, toMs: 150 };
/** Where a lumped box has no more to say: the edge is as fast as this. */
const FLAT_TO_HZ = 300;

export type StepResponseProps = { readonly input: SoundInput; readonly facts: SoundFacts };

/** How fast the design answers a step and how long it rings; worked out only once it is opened. */
export function StepResponse({ input, facts }: StepResponseProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details data-screen-only="" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>How it rings: the step response</summary>
      {isOpen ? <StepCurve input={input} facts={facts} /> : null}
    </details>
  );
}

function StepCurve({ input, facts }: StepResponseProps) {
  const [ref, widthPt] = useWidth<HTMLDivElement>(720);
  const answer = useMemo(() => {
    const system = soundSystem(input, facts);
    const found =
      system === null ? null : solveTimeResponse(system, { durationMs: SHOWN.toMs, flatToHz: FLAT_TO_HZ });
    return found === null || isRefusal(found) ? null : found;
  }, [input, facts]);
  const scene = useMemo(() => {
    const chart: TimeChartInput = {
      title: 'Step response',
      description: 'Pressure after a step of the source, over time in milliseconds.',
      quantity: 'Pressure after a step of the source · Pa',
      ...SHOWN,
      points: (answer?.timesMs ?? []).map((ms, i) => [ms, answer?.stepPa[i] ?? 0] as const),
    };
    return timeChart(chart, { widthPt, heightPt: HEIGHT_PT });
  }, [answer, widthPt]);
  return (
    <div ref={ref}>
      {answer === null ? (
        <p className={styles.assumed}>The step is drawn once the design is complete.</p>
      ) : (
        <>
          <SceneDrawing scene={scene} minWidthPx={0} />
          <p className={styles.assumed}>
            Whole up to {answer.flatToHz} Hz, faded out by {answer.goneByHz}
            {answer.isSettled ? '.' : '; it still rings at the end of the record, read the tail with care.'}
          </p>
        </>
      )}
    </div>
  );
}
