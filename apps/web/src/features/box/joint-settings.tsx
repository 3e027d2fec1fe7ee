'use client';

import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { keptLength, type LengthRule } from '../../shared/job/length-rule.ts';
import type { SettingsProps } from './box-details.tsx';
import type { BoxJobSheet } from './box-types.ts';

const CORNERS = [
  { id: 'butt', label: 'Butted' },
  { id: 'rabbet', label: 'Rabbeted' },
  { id: 'mitre', label: 'Mitred' },
] as const;
const SIDES = [
  { id: 'butt', label: 'Butted' },
  { id: 'rabbet', label: 'Rabbeted all round' },
] as const;
const EDGES = [
  { id: 'none', label: 'Sharp' },
  { id: 'sides', label: 'Round both sides' },
  { id: 'across', label: 'Across the box' },
  { id: 'all', label: 'All of them' },
] as const;
const USUAL_RADIUS_MM = 9.5;

export function jointSummary({ input }: BoxJobSheet, { words }: LengthRule): string {
  const { joints, baffleSetBack, roundOver } = input;
  const corners = CORNERS.find(({ id }) => id === joints.corners)?.label.toLowerCase() ?? '';
  return [
    `corners ${corners}`,
    ...(joints.sides === 'rabbet' ? ['sides rabbeted'] : []),
    baffleSetBack === null ? 'baffle flush' : `baffle ${words(baffleSetBack.mm)} back`,
    roundOver === null ? 'edges sharp' : `edges rounded ${words(roundOver.radius.mm)}`,
  ].join(', ');
}

/** How the boards meet, and what is done to the edges afterwards. */
export function JointSettings({ sheet, errorOf, rule }: SettingsProps) {
  const { input, change, mayEdit } = sheet;
  const { joints, roundOver } = input;
  return (
    <FieldGrid cellMinPx={190}>
      <Select
        label="Corners between walls"
        hint="Leaning ones are butted, flat ones mitred"
        options={CORNERS}
        value={joints.corners}
        onChange={(corners) => change({ joints: { ...joints, corners } })}
        isDisabled={!mayEdit}
        error={errorOf('joints')}
      />
      <Select
        label="Walls to sides"
        options={SIDES}
        value={joints.sides}
        onChange={(sides) => change({ joints: { ...joints, sides } })}
        isDisabled={!mayEdit}
      />
      <LengthField
        label="Baffle set back"
        isOptional
        hint="Empty = flush"
        value={input.baffleSetBack}
        maxMm={500}
        onCommit={(length) => change({ baffleSetBack: keptLength(length) })}
        isReadOnly={!mayEdit}
        error={errorOf('baffleSetBack')}
      />
      <Select
        label="Outer edges rounded"
        options={EDGES}
        value={roundOver?.edges ?? 'none'}
        onChange={(edges) => {
          const radius = roundOver?.radius ?? {
            mm: USUAL_RADIUS_MM,
            typed: rule.write(USUAL_RADIUS_MM),
            unit: rule.unit,
          };
          change({ roundOver: edges === 'none' ? null : { radius, edges } });
        }}
        isDisabled={!mayEdit}
      />
      {roundOver === null ? null : (
        <LengthField
          label="Radius"
          value={roundOver.radius}
          maxMm={100}
          onCommit={(length) => {
            const radius = keptLength(length);
            if (radius !== null) change({ roundOver: { ...roundOver, radius } });
          }}
          isReadOnly={!mayEdit}
          error={errorOf('roundOver.radius')}
        />
      )}
    </FieldGrid>
  );
}
