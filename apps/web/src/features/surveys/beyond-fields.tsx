'use client';

import type { SurveyBeyond, TypedMm } from '@gusset/contracts/survey';
import type { ReactNode } from 'react';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { PlusMinusField } from './across-fields.tsx';
import styles from './measuring-screen.module.css';
import { SignedLength } from './outline-fields.tsx';

const plain = (mm: number): TypedMm => ({ mm, typed: `${mm} mm`, unit: 'mm' });
const NOTHING: SurveyBeyond = { lid: null, bumper: null, ground: null };

/** Something to type over, of usual size. */
const START = {
  lid: { length: plain(700), thickness: plain(80), openDegrees: 30, plusMinusMm: 20 },
  bumper: { out: plain(120), below: plain(150), plusMinusMm: 5 },
  ground: { below: plain(650), plusMinusMm: 20 },
} as const;

export type BeyondFieldsProps = {
  readonly beyond: SurveyBeyond | undefined;
  readonly onChange: (beyond: SurveyBeyond | undefined) => void;
  readonly isReadOnly: boolean;
};

/** What a box meets on its way in before it reaches the opening. */
export function BeyondFields({ beyond = NOTHING, onChange, isReadOnly }: BeyondFieldsProps) {
  const { lid, bumper, ground } = beyond;
  const set = (changes: Partial<SurveyBeyond>) => {
    const next = { ...beyond, ...changes };
    onChange(next.lid === null && next.bumper === null && next.ground === null ? undefined : next);
  };
  return (
    <section className={styles.partList} aria-label="Beyond the opening">
      <h2 className={`caption ${styles.groupTitle}`}>Beyond the opening</h2>
      <p className={styles.hint}>What nobody measured here is taken as free on the way in.</p>
      <Part
        title="Lid, raised"
        isMeasured={lid !== null}
        onSwitch={(isOn) => set({ lid: isOn ? START.lid : null })}
        isReadOnly={isReadOnly}
      >
        {lid === null ? null : (
          <>
            <SignedLength
              label="Hinge to its free end"
              value={lid.length}
              minMm={1}
              onCommit={(length) => set({ lid: { ...lid, length } })}
              isReadOnly={isReadOnly}
            />
            <SignedLength
              label="How thick"
              value={lid.thickness}
              minMm={1}
              onCommit={(thickness) => set({ lid: { ...lid, thickness } })}
              isReadOnly={isReadOnly}
            />
            <NumberField
              label="Underside, degrees"
              hint="From level; above 0 where its free end is higher"
              value={lid.openDegrees}
              min={-90}
              max={180}
              onCommit={(figure) =>
                figure === null ? undefined : set({ lid: { ...lid, openDegrees: figure.value } })
              }
              isReadOnly={isReadOnly}
            />
            <PlusMinusField
              value={lid.plusMinusMm}
              onCommit={(plusMinusMm) => set({ lid: { ...lid, plusMinusMm } })}
              isReadOnly={isReadOnly}
            />
          </>
        )}
      </Part>
      <Part
        title="Bumper"
        isMeasured={bumper !== null}
        onSwitch={(isOn) => set({ bumper: isOn ? START.bumper : null })}
        isReadOnly={isReadOnly}
      >
        {bumper === null ? null : (
          <>
            <SignedLength
              label="Out from the lip, level"
              value={bumper.out}
              minMm={1}
              onCommit={(out) => set({ bumper: { ...bumper, out } })}
              isReadOnly={isReadOnly}
            />
            <SignedLength
              label="Its top below the lip"
              value={bumper.below}
              minMm={0}
              onCommit={(below) => set({ bumper: { ...bumper, below } })}
              isReadOnly={isReadOnly}
            />
            <PlusMinusField
              value={bumper.plusMinusMm}
              onCommit={(plusMinusMm) => set({ bumper: { ...bumper, plusMinusMm } })}
              isReadOnly={isReadOnly}
            />
          </>
        )}
      </Part>
      <Part
        title="Ground"
        isMeasured={ground !== null}
        onSwitch={(isOn) => set({ ground: isOn ? START.ground : null })}
        isReadOnly={isReadOnly}
      >
        {ground === null ? null : (
          <>
            <SignedLength
              label="Lip down to the ground"
              value={ground.below}
              minMm={1}
              onCommit={(below) => set({ ground: { ...ground, below } })}
              isReadOnly={isReadOnly}
            />
            <PlusMinusField
              value={ground.plusMinusMm}
              onCommit={(plusMinusMm) => set({ ground: { ...ground, plusMinusMm } })}
              isReadOnly={isReadOnly}
            />
          </>
        )}
      </Part>
    </section>
  );
}

type PartProps = {
  readonly title: string;
  readonly isMeasured: boolean;
  readonly onSwitch: (isOn: boolean) => void;
  readonly isReadOnly: boolean;
  readonly children: ReactNode;
};

function Part({ title, isMeasured, onSwitch, isReadOnly, children }: PartProps) {
  return (
    <>
      <Checkbox isSelected={isMeasured} onChange={onSwitch} isDisabled={isReadOnly}>
        {title} is measured
      </Checkbox>
      {isMeasured ? <FieldGrid cellMinPx={150}>{children}</FieldGrid> : null}
    </>
  );
}
