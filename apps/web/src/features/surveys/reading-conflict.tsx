'use client';

import type { SectionForm } from '@gusset/contracts/cargo';
import { readingSchema } from '@gusset/contracts/survey';
import { ConflictDialog } from '../../shared/overlays/conflict-dialog.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { METHOD_WORDS, plusMinusWords, valueWords } from '../../shared/survey/reading-words.ts';
import { dimensionOf, type SurveyAct } from './survey-acts.ts';

export type ReadingConflictProps = {
  readonly form: SectionForm;
  readonly acts: readonly SurveyAct[];
  /** The letter whose two readings are compared; null = none. */
  readonly dimensionKey: string | null;
  readonly onClose: () => void;
  readonly onKeepTheirs: (act: SurveyAct) => void;
  readonly onKeepMine: (act: SurveyAct, overVersion: number) => void;
};

/** Two people took the same letter: both readings side by side. */
export function ReadingConflict({
  form,
  acts,
  dimensionKey,
  onClose,
  onKeepTheirs,
  onKeepMine,
}: ReadingConflictProps) {
  const { lengthUnit, shop } = useDisplay();
  const act = acts.find((each) => each.trouble?.kind === 'conflict' && dimensionOf(each) === dimensionKey);
  const dimension = form.dimensions.find(({ key }) => key === dimensionKey);
  if (act?.trouble?.kind !== 'conflict' || dimension === undefined) return null;
  const { conflict } = act.trouble;
  const manner = { unit: lengthUnit, denominator: shop.inchDenominator };
  const words = (value: unknown): string => {
    const read = readingSchema.loose().safeParse(value);
    if (!read.success) return 'no reading';
    const { value: taken, plusMinus, method } = read.data;
    return `${valueWords(dimension, taken, manner)} ${plusMinusWords(dimension, plusMinus, manner)} · ${METHOD_WORDS[method]}`;
  };
  const [difference] = conflict.differences;
  return (
    <ConflictDialog
      otherPerson={conflict.savedBy ?? 'Someone else'}
      isOpen
      onClose={onClose}
      fields={[
        {
          field: dimension.key,
          label: `${dimension.letter} · ${dimension.label}`,
          mine: words(difference?.yours),
          theirs: words(difference?.theirs),
        },
      ]}
      onResolve={(choice) => {
        if (choice[dimension.key] === 'theirs') onKeepTheirs(act);
        else onKeepMine(act, conflict.currentVersion);
        onClose();
      }}
    />
  );
}
