'use client';

import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { keptLength, type LengthRule } from '../../shared/job/length-rule.ts';
import type { SettingsProps } from './box-details.tsx';
import type { BoxJobSheet } from './box-types.ts';

const BRACES = ['none', 'suggested', '1', '2', '3', '4', '5', '6'] as const;
type BraceChoice = (typeof BRACES)[number];
const SEAMS = [
  { id: 'none', label: 'None' },
  { id: 'across', label: 'Between the walls' },
  { id: 'sides', label: 'Round both sides' },
  { id: 'all', label: 'In all seams' },
] as const;
const LININGS = [
  { id: 'none', label: 'Not lined' },
  { id: 'walls', label: 'Walls lined' },
  { id: 'filled', label: 'Filled' },
] as const;
const USUAL_LEG_MM = 20;

export function braceSummary({ input, result }: BoxJobSheet, { words }: LengthRule): string {
  const { bracing, cornerBlocks } = input;
  const built = result?.box.braces.zMm.length ?? null;
  const suggested = built === null ? 'as suggested' : `as suggested: ${built === 0 ? 'none' : built}`;
  const braces =
    bracing.kind === 'none' ? 'no braces' : bracing.kind === 'count' ? `${bracing.count} braces` : suggested;
  const blocks = cornerBlocks === null ? 'no corner blocks' : `corner blocks ${words(cornerBlocks.leg.mm)}`;
  return `${braces}, ${blocks}, ${input.lining === 'none' ? 'not lined' : 'lined'}`;
}

const braceWords = (choice: BraceChoice): string => {
  if (choice === 'none') return 'None';
  if (choice === 'suggested') return 'As many as the walls need';
  return choice === '1' ? 'One' : choice;
};

export function BraceSettings({ sheet, errorOf, rule }: SettingsProps) {
  const { input, change, mayEdit } = sheet;
  const { bracing, cornerBlocks } = input;
  const chosen: BraceChoice =
    bracing.kind === 'count'
      ? (BRACES.find((choice) => choice === String(bracing.count)) ?? '1')
      : bracing.kind;
  return (
    <FieldGrid cellMinPx={190}>
      <Select
        label="Window braces"
        options={BRACES.map((id) => ({ id, label: braceWords(id) }))}
        value={chosen}
        onChange={(choice) =>
          change({
            bracing:
              choice === 'none' || choice === 'suggested'
                ? { kind: choice }
                : { kind: 'count', count: Number(choice) },
          })
        }
        isDisabled={!mayEdit}
        error={errorOf('bracing') ?? errorOf('bracing.count')}
      />
      <Select
        label="Corner blocks"
        options={SEAMS}
        value={cornerBlocks?.seams ?? 'none'}
        onChange={(seams) => {
          const leg = cornerBlocks?.leg ?? {
            mm: USUAL_LEG_MM,
            typed: rule.write(USUAL_LEG_MM),
            unit: rule.unit,
          };
          change({ cornerBlocks: seams === 'none' ? null : { leg, seams } });
        }}
        isDisabled={!mayEdit}
      />
      {cornerBlocks === null ? null : (
        <LengthField
          label="Leg of the blocks"
          value={cornerBlocks.leg}
          maxMm={1_000}
          onCommit={(length) => {
            const leg = keptLength(length);
            if (leg !== null) change({ cornerBlocks: { ...cornerBlocks, leg } });
          }}
          isReadOnly={!mayEdit}
          error={errorOf('cornerBlocks.leg')}
        />
      )}
      <Select
        label="Lining"
        options={LININGS}
        value={input.lining}
        onChange={(lining) => change({ lining })}
        isDisabled={!mayEdit}
      />
    </FieldGrid>
  );
}
