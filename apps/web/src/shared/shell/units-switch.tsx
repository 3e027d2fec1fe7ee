'use client';

import { ToggleButton } from 'react-aria-components/ToggleButton';
import { ToggleButtonGroup } from 'react-aria-components/ToggleButtonGroup';
import { LENGTH_UNITS } from './display.ts';
import { useDisplay } from './display-provider.tsx';
import styles from './units-switch.module.css';

const UNIT_NAMES = { mm: 'millimetres', in: 'inches' } as const;

/** in | mm for the whole app, on this device. */
export function UnitsSwitch() {
  const { lengthUnit, change } = useDisplay();
  return (
    <ToggleButtonGroup
      className={styles.switch}
      aria-label="Lengths in"
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[lengthUnit]}
      onSelectionChange={(keys) => {
        const unit = LENGTH_UNITS.find((known) => keys.has(known));
        if (unit) change({ unit });
      }}
    >
      {[...LENGTH_UNITS].reverse().map((unit) => (
        <ToggleButton key={unit} id={unit} className={styles.unit} aria-label={UNIT_NAMES[unit]}>
          {unit}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}
