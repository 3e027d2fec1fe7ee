'use client';

import type { SurveyObstruction, SurveySwing, TypedMm } from '@gusset/contracts/survey';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import styles from './measuring-screen.module.css';
import { SignedLength } from './outline-fields.tsx';

const MOST_DEGREES = 360;

export type MovingFieldsProps = {
  readonly part: SurveyObstruction;
  readonly set: (changes: Partial<SurveyObstruction>) => void;
  readonly isReadOnly: boolean;
};

/** Whether a part moves, turns about a pin, or stands there in some states only. */
export function MovingFields({ part, set, isReadOnly }: MovingFieldsProps) {
  const { swing } = part;
  return (
    <>
      <Checkbox
        isSelected={part.moves}
        onChange={(moves) => set({ moves })}
        isDisabled={isReadOnly}
        detail="Hinge, strut or seat frame: wants 15 mm at least"
      >
        It moves
      </Checkbox>
      <Checkbox
        isSelected={swing !== undefined}
        onChange={(swings) => set({ swing: swings ? startingSwing(part) : undefined })}
        isDisabled={isReadOnly}
        detail="All that it sweeps is in the way; the drawing shows it"
      >
        It turns about a pin
      </Checkbox>
      {swing === undefined ? null : (
        <SwingFields swing={swing} onChange={(next) => set({ swing: next })} isReadOnly={isReadOnly} />
      )}
      <OffAsMeasured part={part} set={set} isReadOnly={isReadOnly} />
    </>
  );
}

/** For a folded seat back or the arms of a closing lid: only the states that name it have it. */
export function OffAsMeasured({
  part,
  set,
  isReadOnly,
}: {
  readonly part: { readonly offAsMeasured?: boolean | undefined };
  readonly set: (changes: { offAsMeasured?: boolean | undefined }) => void;
  readonly isReadOnly: boolean;
}) {
  return (
    <Checkbox
      isSelected={part.offAsMeasured ?? false}
      onChange={(isOff) => set({ offAsMeasured: isOff ? true : undefined })}
      isDisabled={isReadOnly}
      detail="Tick it in the states of seats and floor that have it"
    >
      Not there as measured
    </Checkbox>
  );
}

type SwingFieldsProps = {
  readonly swing: SurveySwing;
  readonly onChange: (swing: SurveySwing) => void;
  readonly isReadOnly: boolean;
};

function SwingFields({ swing, onChange, isReadOnly }: SwingFieldsProps) {
  const { pivot, fromDegrees, toDegrees } = swing;
  const turn = (changes: Partial<SurveySwing>) => onChange({ ...swing, ...changes });
  const why = refusalOf(swing);
  return (
    <>
      <FieldGrid cellMinPx={150}>
        <SignedLength
          label="Pin, from the back wall"
          value={pivot.x}
          onCommit={(x) => turn({ pivot: { ...pivot, x } })}
          isReadOnly={isReadOnly}
        />
        <SignedLength
          label="Pin, above the floor"
          value={pivot.y}
          onCommit={(y) => turn({ pivot: { ...pivot, y } })}
          isReadOnly={isReadOnly}
        />
        <NumberField
          label="Turns from, degrees"
          hint="0 = as drawn; above 0 toward the seat back"
          value={fromDegrees}
          min={-MOST_DEGREES}
          max={MOST_DEGREES}
          onCommit={(figure) => (figure === null ? undefined : turn({ fromDegrees: figure.value }))}
          isReadOnly={isReadOnly}
        />
        <NumberField
          label="To, degrees"
          value={toDegrees}
          min={-MOST_DEGREES}
          max={MOST_DEGREES}
          onCommit={(figure) => (figure === null ? undefined : turn({ toDegrees: figure.value }))}
          isReadOnly={isReadOnly}
        />
      </FieldGrid>
      {why === null ? null : (
        <p className={styles.refusal} role="alert">
          {why}
        </p>
      )}
    </>
  );
}

function refusalOf({ fromDegrees, toDegrees }: SurveySwing): string | null {
  if (fromDegrees > toDegrees) return 'The end of the swing is not below its beginning.';
  return toDegrees - fromDegrees > MOST_DEGREES ? 'A part swings through 360° at most.' : null;
}

/** About its first corner, through a right angle: something to type over. */
function startingSwing({ corners }: SurveyObstruction): SurveySwing {
  const zero: TypedMm = { mm: 0, typed: '0 mm', unit: 'mm' };
  return { pivot: corners[0] ?? { x: zero, y: zero }, fromDegrees: 0, toDegrees: 90 };
}
