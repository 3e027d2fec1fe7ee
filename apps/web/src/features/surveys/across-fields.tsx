import type { SurveyExtras } from '@gusset/contracts/survey';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import styles from './measuring-screen.module.css';
import { SignedLength } from './outline-fields.tsx';

type Across = {
  readonly left: SurveyExtras['keepFree'][number]['left'];
  readonly right: SurveyExtras['keepFree'][number]['right'];
  readonly plusMinusMm: number;
};

/** From where to where it reaches across the vehicle, and how sure that is. */
export function AcrossFields({
  part,
  set,
  isReadOnly,
}: {
  readonly part: Across;
  readonly set: (changes: Partial<Across>) => void;
  readonly isReadOnly: boolean;
}) {
  const isCrossed = part.left.mm >= part.right.mm;
  return (
    <>
      <FieldGrid cellMinPx={150}>
        <SignedLength
          label="Left edge"
          hint="From the centre line; left is below 0"
          value={part.left}
          onCommit={(left) => set({ left })}
          isReadOnly={isReadOnly}
        />
        <SignedLength
          label="Right edge"
          value={part.right}
          onCommit={(right) => set({ right })}
          isReadOnly={isReadOnly}
        />
        <PlusMinusField
          value={part.plusMinusMm}
          onCommit={(plusMinusMm) => set({ plusMinusMm })}
          isReadOnly={isReadOnly}
        />
      </FieldGrid>
      {isCrossed ? (
        <p className={styles.refusal} role="alert">
          The right edge lies right of the left one. Looking forward from behind, left of the centre line is
          below 0.
        </p>
      ) : null}
    </>
  );
}

export function PlusMinusField({
  value,
  onCommit,
  isReadOnly,
}: {
  readonly value: number;
  readonly onCommit: (mm: number) => void;
  readonly isReadOnly: boolean;
}) {
  return (
    <LengthField
      label="±"
      value={{ mm: value, typed: null, unit: null }}
      minMm={0}
      maxMm={200}
      onCommit={(length) => {
        if (length !== null) onCommit(length.mm);
      }}
      isReadOnly={isReadOnly}
    />
  );
}
