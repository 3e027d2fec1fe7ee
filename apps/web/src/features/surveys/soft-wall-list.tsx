'use client';

import { sketchCavity } from '@gusset/cargo';
import type { SectionForm } from '@gusset/contracts/cargo';
import type { SurveySoftWall } from '@gusset/contracts/survey';
import { useMemo } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import styles from './measuring-screen.module.css';

const MOST_CRUSH_MM = 100;
const START_CRUSH_MM = 5;

export type SoftWallListProps = {
  readonly form: SectionForm;
  readonly softWalls: readonly SurveySoftWall[];
  readonly onChange: (softWalls: readonly SurveySoftWall[]) => void;
  readonly isReadOnly: boolean;
};

/** Soft trim that a box may press in where it stays; never on the way in. */
export function SoftWallList({ form, softWalls, onChange, isReadOnly }: SoftWallListProps) {
  // The form draws itself unmeasured: its walls and their surfaces are there before any reading.
  const soft = useMemo(
    () => sketchCavity(form, []).walls.filter(({ surface, role }) => surface === 'soft' && role !== 'floor'),
    [form],
  );
  const free = soft.filter(({ id }) => !softWalls.some(({ wallId }) => wallId === id));
  if (soft.length === 0 && softWalls.length === 0) return null;
  return (
    <section className={styles.partList} aria-label="Trim that gives">
      <h2 className={`caption ${styles.groupTitle}`}>Trim that gives</h2>
      {softWalls.length === 0 ? (
        <p className={styles.hint}>
          Foam and seat faces that the box may press in where it stays. On the way in all trim counts as hard.
        </p>
      ) : null}
      {softWalls.map((wall) => (
        <div key={wall.id} className={styles.corner}>
          <LengthField
            label={`${wall.name} gives way by`}
            value={wall.crush}
            minMm={0}
            maxMm={MOST_CRUSH_MM}
            onCommit={(length) => {
              if (length === null) return;
              const { mm, typed, unit } = length;
              onChange(
                softWalls.map((each) =>
                  each.id === wall.id ? { ...each, crush: { mm, typed, unit } } : each,
                ),
              );
            }}
            isReadOnly={isReadOnly}
          />
          {isReadOnly ? null : (
            <Button
              look="quiet"
              aria-label={`${wall.name} gives no way`}
              onPress={() => onChange(softWalls.filter(({ id }) => id !== wall.id))}
            >
              Take out
            </Button>
          )}
        </div>
      ))}
      {isReadOnly || free.length === 0 ? null : (
        <Select
          label="A wall that gives"
          options={free.map(({ id, name }) => ({ id, label: name }))}
          value={null}
          onChange={(chosen) => {
            const wall = free.find(({ id }) => id === chosen);
            if (wall === undefined) return;
            const crush = { mm: START_CRUSH_MM, typed: `${START_CRUSH_MM} mm`, unit: 'mm' } as const;
            onChange([...softWalls, { id: crypto.randomUUID(), wallId: wall.id, name: wall.name, crush }]);
          }}
        />
      )}
    </section>
  );
}
