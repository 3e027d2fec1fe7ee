'use client';

import { portTable } from '@gusset/acoustics';
import type { PortRow } from '@gusset/contracts/acoustics';
import { soundSystem } from '@gusset/sheets';
import { formatLength, isRefusal } from '@gusset/units';
import { useMemo } from 'react';
import { Button } from '../../../shared/controls/button.tsx';
import { useDisplay } from '../../../shared/shell/display-provider.tsx';
import { changeIn, type SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';

/** Pipes that are sold everywhere, inside, mm; each alone and in pairs. */
const BORES_MM = [50, 68, 75, 100, 125, 150, 200] as const;
const COUNTS = [1, 2] as const;

/** A pipe that takes more of the box than this is no choice. */
const MOST_OF_THE_BOX = 0.4;

const AIR_WORDS: Readonly<Partial<Record<PortRow['findings'][number]['code'], string>>> = {
  'port-quiet': 'quiet with plain edges',
  'port-needs-rounding': 'round both ends over',
  'port-needs-flares': 'flare both ends',
  'port-chuffs': 'will be heard',
  'mouth-too-small': 'cannot tune so high',
  'port-takes-the-air': 'takes too much of the box',
};

export type PortChoiceProps = SettingPageProps & { readonly field: 'port' | 'rearPort' };

/** What usual pipes come out as for this tuning: how long, how fast the air, how much of the box they take. */
export function PortChoice({ sheet, field }: PortChoiceProps) {
  const { input, data, result, mayEdit } = sheet;
  const { lengthUnit, shop } = useDisplay();
  const length = (mm: number) =>
    formatLength(mm, { unit: lengthUnit, denominator: shop.inchDenominator, style: 'drawing' });
  const tuningHz = (field === 'port' ? result?.tuningHz : result?.rearTuningHz) ?? null;
  const table = useMemo(() => {
    const system = soundSystem(input, data.facts);
    const isFront = field === 'port' && input.enclosure !== 'vented';
    const air = isFront ? input.front.net : input.targetNet;
    if (system === null || tuningHz === null || air === null) return null;
    const { frequenciesHz: _frequencies, ...asked } = system;
    const role = input.enclosure === 'vented' ? 'port' : field === 'port' ? 'front-port' : 'rear-port';
    const found = portTable({
      system: asked,
      role,
      tuningHz,
      air: { by: 'net', litres: air.litres },
      mouths: COUNTS.flatMap((count) =>
        BORES_MM.map((diameterMm) => ({ shape: 'round' as const, diameterMm, count })),
      ),
    });
    if (isRefusal(found)) return null;
    const most = air.litres * MOST_OF_THE_BOX;
    const rows = found.rows.filter(({ built }) => built !== null && built.displacedLitres <= most);
    return { rows, leastArea: found.leastArea };
  }, [input, data.facts, field, tuningHz]);
  if (table === null) return null;
  const { rows } = table;
  return (
    <details>
      <summary>
        Usual pipes for {tuningHz?.toFixed(1)} Hz; quiet flared from {table.leastArea.areaCm2.toFixed(0)} cm²
        up
      </summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key. */}
      <section className={styles.scroll} aria-label="Usual pipes" tabIndex={0}>
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Pipe</th>
              <th scope="col">Length</th>
              <th scope="col">Air</th>
              <th scope="col">Takes</th>
              <th scope="col">So</th>
              {mayEdit ? (
                <th scope="col">
                  <span className="unseen">Take it</span>
                </th>
              ) : null}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ mouth, built, findings }) => {
              if (built === null || mouth.shape !== 'round') return null;
              const { diameterMm, count = 1 } = mouth;
              const name = `${count} × ⌀ ${length(diameterMm)}`;
              return (
                <tr key={name}>
                  <th scope="row" className="figures">
                    {name}
                  </th>
                  <td className="figures">{length(built.lengthMm)}</td>
                  <td className="figures">{built.peakSpeedMps.toFixed(1)} m/s</td>
                  <td className="figures">{built.displacedLitres.toFixed(1)} L</td>
                  <td>{findings.flatMap(({ code }) => AIR_WORDS[code] ?? []).join(', ')}</td>
                  {mayEdit ? (
                    <td>
                      <Button
                        look="quiet"
                        aria-label={`Take ${name}`}
                        onPress={() =>
                          changeIn(sheet, field, {
                            shape: 'round',
                            count,
                            diameter: { mm: diameterMm, typed: String(diameterMm), unit: 'mm' },
                            by: 'tuning',
                            tuning: {
                              value: Number((tuningHz ?? 0).toFixed(1)),
                              typed: (tuningHz ?? 0).toFixed(1),
                            },
                          })
                        }
                      >
                        Take
                      </Button>
                    </td>
                  ) : null}
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
    </details>
  );
}
