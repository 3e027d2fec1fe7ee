'use client';

import type { SoundResult } from '@gusset/contracts/sound';
import { useMemo } from 'react';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import { delayScene, impedanceScene, levelScene, phaseScene, travelScene } from './sound-charts.ts';
import styles from './sound-screen.module.css';

const TABLE_HZ = [20, 25, 31.5, 40, 50, 63, 80, 100, 125] as const;

export type SoundCurvesProps = {
  readonly result: SoundResult;
  /** The last issue, drawn beside a draft that differs from it. */
  readonly compared: SoundResult | null;
};

export function SoundCurves({ result, compared }: SoundCurvesProps) {
  const level = useMemo(() => levelScene(result, compared), [result, compared]);
  const small = useMemo(
    () => [travelScene(result), impedanceScene(result), delayScene(result), phaseScene(result)],
    [result],
  );
  return (
    <>
      <SceneDrawing scene={level} />
      <div className={styles.small}>
        {small.map((scene) => (
          <SceneDrawing key={scene.title} scene={scene} minWidthPx={320} />
        ))}
      </div>
      <details>
        <summary>The curves as a table</summary>
        <CurveTable result={result} />
      </details>
    </>
  );
}

/** The same facts for those who cannot see the curves, and for a pencil. */
function CurveTable({ result }: { readonly result: SoundResult }) {
  const { curves } = result;
  const rows = TABLE_HZ.map((hz) => nearest(curves.frequenciesHz, hz));
  return (
    <table className={styles.table}>
      <thead>
        <tr>
          <th scope="col">Frequency</th>
          <th scope="col">Level, dB</th>
          <th scope="col">Outdoors, dB</th>
          <th scope="col">Travel, mm</th>
          <th scope="col">Load, Ω</th>
          <th scope="col">Delay, ms</th>
        </tr>
      </thead>
      <tbody className="figures">
        {rows.map((at) => (
          <tr key={at}>
            <th scope="row">{(curves.frequenciesHz[at] ?? 0).toFixed(1)} Hz</th>
            <td>{(curves.splDb[at] ?? 0).toFixed(1)}</td>
            <td>{(curves.splFreeDb[at] ?? 0).toFixed(1)}</td>
            <td>{(curves.excursionMm[at] ?? 0).toFixed(2)}</td>
            <td>{(curves.impedanceOhm[at] ?? 0).toFixed(2)}</td>
            <td>{(curves.groupDelayMs[at] ?? 0).toFixed(1)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function nearest(frequenciesHz: readonly number[], hz: number): number {
  return frequenciesHz.reduce(
    (best, at, i) =>
      Math.abs(Math.log(at / hz)) < Math.abs(Math.log((frequenciesHz[best] ?? 1) / hz)) ? i : best,
    0,
  );
}
