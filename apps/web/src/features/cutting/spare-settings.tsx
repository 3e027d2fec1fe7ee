'use client';

import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import styles from './cutting-screen.module.css';
import type { SettingsProps } from './cutting-types.ts';

/** One more of a panel that is easily spoiled: the baffle, most often. */
export function SpareSettings({ sheet }: SettingsProps) {
  const { spares } = sheet.input;
  const panels = sheet.data.upstream.box?.box.panels ?? [];
  const setCount = (panelId: string, count: number) =>
    sheet.change({
      spares: [
        // A spare of a panel that has gone is dropped with the next change.
        ...spares.filter(
          (spare) => spare.panelId !== panelId && panels.some(({ id }) => id === spare.panelId),
        ),
        ...(count > 0 ? [{ panelId, count }] : []),
      ],
    });
  if (panels.length === 0) return <p className={styles.quiet}>Draw the box first: its panels stand here.</p>;
  return (
    <FieldGrid cellMinPx={150}>
      {panels.map(({ id, mark, name }) => (
        <NumberField
          key={id}
          label={`${mark} · ${name}`}
          value={spares.find(({ panelId }) => panelId === id)?.count ?? 0}
          min={0}
          max={20}
          digits={0}
          onCommit={(figure) => setCount(id, Math.round(figure?.value ?? 0))}
          isDisabled={!sheet.mayEdit}
        />
      ))}
    </FieldGrid>
  );
}
