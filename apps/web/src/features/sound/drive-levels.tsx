'use client';

import { estimateHotCoil, levelsAtDrives, solveResponse } from '@gusset/acoustics';
import type { SoundFacts, SoundInput } from '@gusset/contracts/sound';
import { soundSystem } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useMemo, useState } from 'react';
import styles from './sound-curves.module.css';

const TABLE_HZ = [20, 25, 31.5, 40, 50, 63, 80, 100];
/** Bass music, average over peak power: a middle of the 0.05 to 0.3 that programmes have. */
const MUSIC_SHARE = 0.15;

export type DriveLevelsProps = { readonly input: SoundInput; readonly facts: SoundFacts };

/** The level at one watt and at the given power, and what heat takes of it; worked out only once it is opened. */
export function DriveLevels(props: DriveLevelsProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details data-screen-only="" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>At one watt, and once the coil is warm</summary>
      {isOpen ? <DriveTable {...props} /> : null}
    </details>
  );
}

function DriveTable({ input, facts }: DriveLevelsProps) {
  const answer = useMemo(() => driveAnswer(input, facts), [input, facts]);
  if (answer === null)
    return <p className={styles.assumed}>The levels follow once the design is complete.</p>;
  const { oneWatt, given, heat } = answer;
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key. */}
      <section className={styles.scroll} aria-label="Levels by power" tabIndex={0}>
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Frequency</th>
              <th scope="col">At one watt</th>
              <th scope="col">At this power</th>
              {heat === null ? null : <th scope="col">Heat takes, about</th>}
            </tr>
          </thead>
          <tbody className="figures">
            {TABLE_HZ.map((hz, i) => (
              <tr key={hz}>
                <th scope="row">{hz} Hz</th>
                <td>{(oneWatt[i] ?? 0).toFixed(1)} dB</td>
                <td>{(given[i] ?? 0).toFixed(1)} dB</td>
                {heat === null ? null : <td>{(heat.compressionDb[i] ?? 0).toFixed(1)} dB</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className={styles.assumed}>
        Levels as in the curve above; one watt is into the resistance of all coils together.{' '}
        {heat === null
          ? 'What heat takes is not told: the driver’s power is not stated.'
          : `An estimate of heat after long play of bass music: the coil about ${Math.round(heat.coilCelsius)} °C, ${heat.coldReOhm.toFixed(2)} Ω cold, ${heat.hotReOhm.toFixed(2)} Ω warm.`}
        {heat?.isBeyondCoil ? ' That is more than the glue of most coils stands.' : ''}
      </p>
    </>
  );
}

function driveAnswer(input: SoundInput, facts: SoundFacts) {
  const system = soundSystem(input, facts);
  if (system === null) return null;
  const asked = { ...system, frequenciesHz: TABLE_HZ };
  const result = solveResponse(asked);
  if (isRefusal(result)) return null;
  const oneWatt = levelsAtDrives(result).find(({ drive }) => drive === 'one-watt')?.splDb;
  if (oneWatt === undefined) return null;
  const heat = estimateHotCoil(asked, { averageShare: MUSIC_SHARE });
  return { oneWatt, given: result.splDb, heat: isRefusal(heat) ? null : heat };
}
