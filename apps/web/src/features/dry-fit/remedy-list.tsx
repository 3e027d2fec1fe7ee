'use client';

import type { BoxInput } from '@gusset/contracts/box';
import type { BoxLoadingRemedy } from '@gusset/sheets';
import { formatVolume } from '@gusset/units';
import { Button } from '../../shared/controls/button.tsx';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import styles from './loading-panel.module.css';
import { remedyWords } from './loading-words.ts';

export type RemedyListProps = {
  readonly remedies: readonly BoxLoadingRemedy[];
  readonly rule: LengthRule;
  readonly mayEdit: boolean;
  /** Of an earlier box: nothing is taken over from it. */
  readonly isStale: boolean;
  readonly onTake: (input: BoxInput) => void;
  readonly onTurnOver: () => void;
};

/** What would make it go in, each tried, with its cost before it is taken; the cheapest first. */
export function RemedyList({ remedies, rule, mayEdit, isStale, onTake, onTurnOver }: RemedyListProps) {
  const litres = (value: number) => formatVolume(value, 'metric');
  return (
    <section className={styles.remedies} aria-label="What would make it go in">
      <p className="caption">What would make it go in</p>
      <ul>
        {remedies.toSorted(byCost).map((remedy) => {
          const { act, cost } = remedyWords(remedy, rule.words, litres);
          const { input } = remedy;
          const take = input !== null ? () => onTake(input) : remedy.kind === 'turn-over' ? onTurnOver : null;
          return (
            <li key={`${remedy.kind} ${remedy.part ?? ''}`}>
              {take === null || !mayEdit ? (
                <span>{act}</span>
              ) : (
                <Button onPress={take} isDisabled={isStale}>
                  {act}
                </Button>
              )}
              <span className={styles.cost}>{cost}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

const byCost = (a: BoxLoadingRemedy, b: BoxLoadingRemedy) => a.costLitres - b.costLitres;
