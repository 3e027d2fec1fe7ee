'use client';

import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { keptLength, type LengthRule } from '../../shared/job/length-rule.ts';
import type { SettingsProps } from './box-details.tsx';
import type { BoxJobSheet } from './box-types.ts';

const FACES = [
  { id: 'front', label: 'The front' },
  { id: 'back', label: 'The back' },
  { id: 'top', label: 'The top' },
  { id: 'bottom', label: 'The bottom' },
  { id: 'left', label: 'The left side' },
  { id: 'right', label: 'The right side' },
] as const;
const WHERE = [
  { id: 'baffle', label: 'In the baffle' },
  { id: 'divider', label: 'In the divider' },
] as const;
const MAGNETS = [
  { id: 'near', label: 'Between face and divider' },
  { id: 'far', label: 'Behind the divider' },
] as const;

export function dividerSummary({ input, result }: BoxJobSheet, { words }: LengthRule): string {
  const { divider } = input;
  if (divider === null) return 'one chamber';
  const face = FACES.find(({ id }) => id === divider.parallelTo)?.label.toLowerCase() ?? '';
  const nets = (result?.box.chambers ?? []).map(({ netLitres }) => `${netLitres.toFixed(1)} L`).join(' and ');
  const where = divider.clear === null ? '' : `, ${words(divider.clear.mm)} behind ${face}`;
  return `divided${where}${nets === '' ? '' : `: ${nets}`}`;
}

/** A wall inside, parallel to one of the faces. */
export function DividerSettings({ sheet, errorOf }: SettingsProps) {
  const { input, change, mayEdit } = sheet;
  const { divider } = input;
  const set = (changes: Partial<NonNullable<typeof divider>>) => {
    if (divider !== null) change({ divider: { ...divider, ...changes } });
  };
  return (
    <>
      <Checkbox
        isSelected={divider !== null}
        onChange={(isDivided) =>
          change({
            divider: isDivided
              ? { parallelTo: 'left', clear: null, drivers: 'baffle', magnets: 'far' }
              : null,
          })
        }
        isDisabled={!mayEdit}
        detail="Of the box’s own board, glued and sealed all round"
      >
        A wall inside makes two chambers
      </Checkbox>
      {divider === null ? null : (
        <FieldGrid cellMinPx={190}>
          <Select
            label="Parallel to"
            options={FACES}
            value={divider.parallelTo}
            onChange={(parallelTo) => set({ parallelTo })}
            isDisabled={!mayEdit}
            error={errorOf('divider.parallelTo')}
          />
          <LengthField
            label="Clear air before it"
            hint="From that face’s wood"
            value={divider.clear}
            maxMm={20_000}
            onCommit={(length) => set({ clear: keptLength(length) })}
            isReadOnly={!mayEdit}
            error={errorOf('divider.clear')}
          />
          <Select
            label="Drivers"
            options={WHERE}
            value={divider.drivers}
            onChange={(drivers) => set({ drivers })}
            isDisabled={!mayEdit}
            error={errorOf('divider.drivers')}
          />
          <Select
            label="Their magnets"
            options={MAGNETS}
            value={divider.magnets}
            onChange={(magnets) => set({ magnets })}
            isDisabled={!mayEdit}
          />
        </FieldGrid>
      )}
    </>
  );
}
