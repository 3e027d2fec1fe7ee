'use client';

import type { AlignmentStrength } from '@gusset/contracts/acoustics';
import { Button } from '../../../shared/controls/button.tsx';
import type { SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';
import { type Suggestion, suggestionsFor } from './suggested-boxes.ts';

/** Named by what they do; the textbook's name stands small beside them. */
const STRENGTH_WORDS: Readonly<Record<AlignmentStrength, string>> = {
  flattest: 'Flattest',
  deepest: 'Deepest',
  gentlest: 'Gentlest fall',
  'shortest-ringing': 'Shortest ringing',
  smallest: 'Smallest',
};

/** The boxes that theory knows for these drivers: one press sets volume and tuning. */
export function Suggestions({ sheet }: SettingPageProps) {
  const { input, data, change, mayEdit } = sheet;
  const offered = mayEdit ? suggestionsFor(input, data.facts.driver) : [];
  if (offered.length === 0) return null;
  const choose = ({ netLitres, tuningHz }: Suggestion) => {
    const targetNet = { litres: netLitres, typed: netLitres.toFixed(1) };
    if (tuningHz === null) {
      change({ targetNet });
      return;
    }
    const tuning = { value: tuningHz, typed: tuningHz.toFixed(1) };
    change({ targetNet, port: { ...input.port, by: 'tuning', tuning } });
  };
  return (
    <fieldset className={styles.aims} aria-label="Box by aim">
      {offered.map((suggestion) => (
        <Button key={suggestion.key} onPress={() => choose(suggestion)}>
          {suggestion.strengths.map((strength) => STRENGTH_WORDS[strength]).join(', ')} ·{' '}
          {suggestion.netLitres.toFixed(1)} L
          {suggestion.tuningHz === null ? '' : `, ${suggestion.tuningHz.toFixed(1)} Hz`}{' '}
          <small>
            {suggestion.textbook}, −3 dB at {suggestion.f3Hz.toFixed(0)} Hz
          </small>
        </Button>
      ))}
    </fieldset>
  );
}
