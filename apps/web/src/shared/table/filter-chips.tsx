'use client';

import { ToggleButton } from 'react-aria-components/ToggleButton';
import { ToggleButtonGroup } from 'react-aria-components/ToggleButtonGroup';
import type { FilterChip } from './data-column.ts';
import styles from './filter-chips.module.css';

export type FilterChipsProps<Row> = {
  readonly label: string;
  readonly chips: readonly FilterChip<Row>[];
  readonly on: ReadonlySet<string>;
  readonly onChange: (on: ReadonlySet<string>) => void;
};

/** Several may be on; a row must pass all of them. */
export function FilterChips<Row>({ label, chips, on, onChange }: FilterChipsProps<Row>) {
  return (
    <ToggleButtonGroup
      className={styles.chips}
      aria-label={label}
      selectionMode="multiple"
      selectedKeys={on}
      onSelectionChange={(keys) => onChange(new Set([...keys].map(String)))}
    >
      {chips.map((chip) => (
        <ToggleButton key={chip.id} id={chip.id} className={styles.chip}>
          {chip.label}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}
