'use client';

import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { RadioGroup } from '../../shared/controls/radio-group.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { keptLength, type LengthRule } from '../../shared/job/length-rule.ts';
import type { SettingsProps } from './box-details.tsx';
import type { BoxJobSheet } from './box-types.ts';

const DEGREES_PER_RAD = 180 / Math.PI;
const OFFSETS = { minMm: -20_000, maxMm: 20_000 };
const BACKS = [
  { id: 'usual', label: 'The wall behind it' },
  { id: 'seat-back', label: 'Seat back' },
  { id: 'cab-wall', label: 'Cab wall' },
  { id: 'other', label: 'Another wall' },
] as const;

export function placeSummary({ input, data }: BoxJobSheet, { words }: LengthRule): string {
  const { place } = input;
  if (place.by === 'pose')
    return `${words(place.x.mm)} along, ${words(place.y.mm)} up, ${place.tiltDeg}° tilted`;
  const gap =
    place.gap === null ? `${words(data.facts.clearances.seatBackMm)} and the ±` : words(place.gap.mm);
  const back = BACKS.find(({ id }) => id === (place.back ?? 'usual'))?.label.toLowerCase() ?? '';
  return `on the floor, ${gap} off ${back}`;
}

export function PlaceSettings({ sheet, errorOf, rule }: SettingsProps) {
  const { input, change, mayEdit, data, result } = sheet;
  const { place } = input;
  const lengthOf = (mm: number) => {
    const kept = Number(mm.toFixed(1));
    return { mm: kept, typed: rule.write(kept), unit: rule.unit };
  };
  const byHand = () => {
    const pose = result?.place?.pose ?? { xMm: 0, yMm: 0, thetaRad: 0 };
    const tiltDeg = Number((pose.thetaRad * DEGREES_PER_RAD).toFixed(2));
    change({ place: { by: 'pose', x: lengthOf(pose.xMm), y: lengthOf(pose.yMm), tiltDeg } });
  };
  return (
    <>
      <RadioGroup
        label="Put there"
        isRow
        value={place.by}
        onChange={(by) => {
          if (by === 'pose') byHand();
          else change({ place: { by: 'rest', back: null, gap: null } });
        }}
        isDisabled={!mayEdit}
        options={[
          { id: 'rest', label: 'On the floor, against a wall' },
          { id: 'pose', label: 'By hand' },
        ]}
      />
      {place.by === 'rest' ? (
        <FieldGrid cellMinPx={190}>
          <Select
            label="Against"
            options={BACKS}
            value={place.back ?? 'usual'}
            onChange={(back) => change({ place: { ...place, back: back === 'usual' ? null : back } })}
            isDisabled={!mayEdit}
            error={errorOf('place.back')}
          />
          <LengthField
            label="Gap behind it"
            isOptional
            hint={`Empty = ${rule.words(data.facts.clearances.seatBackMm)} as the shop wants, and the ± of the wall`}
            value={place.gap}
            maxMm={5_000}
            onCommit={(length) => change({ place: { ...place, gap: keptLength(length) } })}
            isReadOnly={!mayEdit}
            error={errorOf('place.gap')}
          />
        </FieldGrid>
      ) : (
        <FieldGrid cellMinPx={170}>
          <LengthField
            label="Along, from the foot of the back wall"
            value={place.x}
            {...OFFSETS}
            onCommit={(length) => {
              const x = keptLength(length);
              if (x !== null) change({ place: { ...place, x } });
            }}
            isReadOnly={!mayEdit}
          />
          <LengthField
            label="Up, from the floor"
            value={place.y}
            {...OFFSETS}
            onCommit={(length) => {
              const y = keptLength(length);
              if (y !== null) change({ place: { ...place, y } });
            }}
            isReadOnly={!mayEdit}
          />
          <NumberField
            label="Tilt, nose up, degrees"
            value={place.tiltDeg}
            min={-180}
            max={180}
            digits={2}
            onCommit={(figure) => {
              if (figure !== null) change({ place: { ...place, tiltDeg: figure.value } });
            }}
            isReadOnly={!mayEdit}
          />
        </FieldGrid>
      )}
    </>
  );
}
