'use client';

import { subsonicCorner } from '@gusset/acoustics';
import { soundSystem } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useMemo } from 'react';
import { Button } from '../../../shared/controls/button.tsx';
import type { SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';

const ORDER = 4;

/** The high-pass that keeps the cone in its travel at this power, and what it costs. */
export function SubsonicHelp({ sheet }: SettingPageProps) {
  const { input, data, change, mayEdit } = sheet;
  const answer = useMemo(() => {
    const system = soundSystem({ ...input, highPass: null }, data.facts);
    if (system === null) return null;
    const { frequenciesHz: _frequencies, ...asked } = system;
    const found = subsonicCorner({ system: asked, order: ORDER });
    return isRefusal(found) ? null : found;
  }, [input, data.facts]);
  if (answer === null || answer.code === 'not-needed') return null;
  const worst = `${answer.worst.travelMm.toFixed(1)} of ${answer.worst.limitMm.toFixed(1)} mm at ${answer.worst.frequencyHz.toFixed(0)} Hz`;
  if (answer.code === 'turn-down') {
    return (
      <p className={styles.hint}>
        No high-pass keeps the cone in its travel ({worst}): only less than {answer.mostVrms.toFixed(1)} V
        does.
      </p>
    );
  }
  const corner = { value: Number(answer.cornerHz.toFixed(1)), typed: answer.cornerHz.toFixed(1) };
  return (
    <div className={styles.offer}>
      <p className={styles.hint}>
        Without one the cone goes {worst}. At {corner.typed} Hz it stays within; the sound then reaches{' '}
        {answer.lowCornerAfterHz.toFixed(0)} instead of {answer.lowCornerBeforeHz.toFixed(0)} Hz.
        {answer.stillOver === null
          ? ''
          : ` Above it the travel is still too much over ${answer.stillOver.mostVrms.toFixed(1)} V.`}
      </p>
      {mayEdit ? (
        <Button onPress={() => change({ highPass: { alignment: 'butterworth', order: ORDER, corner } })}>
          Protect the cone: {corner.typed} Hz
        </Button>
      ) : null}
    </div>
  );
}
