'use client';

import { soundSystem } from '@gusset/sheets';
import { useMemo, useState } from 'react';
import { Button } from '../../../shared/controls/button.tsx';
import type { SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';
import { evenestInCar, suggestionsFor } from './suggested-boxes.ts';

/** Boxes by what they do: one press sets volume and tuning, and the curves show what came of it. */
export function Suggestions({ sheet }: SettingPageProps) {
  const { input, data, change, mayEdit, result } = sheet;
  const [hasNone, setHasNone] = useState(false);
  const system = useMemo(() => soundSystem(input, data.facts), [input, data.facts]);
  if (!mayEdit || system === null) return null;
  const offered = suggestionsFor(input, system);
  const isLookedFor = input.enclosure === 'closed' || input.enclosure === 'vented';
  const hasCabin = result !== null && result.cabin !== 'none';
  const take = () => {
    const changes = evenestInCar(input, system);
    setHasNone(changes === null);
    if (changes !== null) change(changes);
  };
  if (offered.length === 0 && !(isLookedFor && hasCabin)) return null;
  return (
    <fieldset className={styles.aims} aria-label="Box by aim">
      {isLookedFor && hasCabin ? (
        <Button onPress={take}>
          Evenest in this car <small>30 to 80 Hz, looked for by the curve</small>
        </Button>
      ) : null}
      {offered.map(({ key, words, detail, changes }) => (
        <Button key={key} onPress={() => change(changes)}>
          {words} <small>{detail}</small>
        </Button>
      ))}
      {hasNone ? (
        <p className={styles.hint} role="status">
          No box between 5 and 150 L can be built with this opening: take a larger one.
        </p>
      ) : null}
    </fieldset>
  );
}
