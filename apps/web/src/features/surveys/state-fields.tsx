'use client';

import type { SectionForm } from '@gusset/contracts/cargo';
import type { Reading, SurveyExtras, SurveyState } from '@gusset/contracts/survey';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { OtherReadings } from '../../shared/survey/other-readings.tsx';

export type StateFieldsProps = {
  readonly state: SurveyState;
  readonly form: SectionForm;
  /** As measured, without any state. */
  readonly readings: readonly Reading[];
  readonly extras: Pick<SurveyExtras, 'obstructions' | 'keepFree'>;
  readonly set: (changes: Partial<SurveyState>) => void;
  readonly isReadOnly: boolean;
};

/** The space with a seat folded or a panel out: which letters read otherwise, what is gone then and what has come. */
export function StateFields({ state, form, readings, extras, set, isReadOnly }: StateFieldsProps) {
  const { replaced, absent, present = [] } = state;
  const parts = [...extras.obstructions, ...extras.keepFree];
  const switched = (ids: readonly string[], id: string, isOn: boolean) =>
    isOn ? [...ids, id] : ids.filter((each) => each !== id);
  return (
    <>
      <OtherReadings
        form={form}
        measured={readings}
        replaced={replaced}
        onChange={(next) => set({ replaced: next })}
        label="A letter that reads otherwise"
        hint="It starts as measured; type over it"
        isReadOnly={isReadOnly}
      />
      {parts.map(({ id, name, offAsMeasured = false }) =>
        offAsMeasured ? (
          <Checkbox
            key={id}
            isSelected={present.includes(id)}
            onChange={(isThere) => set({ present: switched(present, id, isThere) })}
            isDisabled={isReadOnly}
          >
            {name} is there then
          </Checkbox>
        ) : (
          <Checkbox
            key={id}
            isSelected={absent.includes(id)}
            onChange={(isGone) => set({ absent: switched(absent, id, isGone) })}
            isDisabled={isReadOnly}
          >
            {name} is gone then
          </Checkbox>
        ),
      )}
    </>
  );
}
