'use client';

import type { FreeCorner, WallRole, WallSurface } from '@gusset/contracts/cargo';
import type { FreeSection } from '@gusset/contracts/survey';
import { surveyForm } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { freeCornerAfter, stationAfter } from './free-sections.ts';
import styles from './measuring-screen.module.css';

const ROLE_WORDS: Readonly<Record<WallRole, string>> = {
  floor: 'Floor',
  'seat-back': 'Seat back',
  'cab-wall': 'Cab wall',
  sill: 'Sill',
  shelf: 'Shelf',
  roof: 'Roof',
  header: 'Header',
  'seat-underside': 'Under the seat',
  opening: 'Opening',
  other: 'Something else',
};
const SURFACE_WORDS: Readonly<Record<WallSurface, string>> = {
  hard: 'hard',
  soft: 'soft trim',
  open: 'open',
};
const FEWEST_CORNERS = 3;

export type FreeOutlineProps = {
  readonly free: FreeSection;
  readonly isReadOnly: boolean;
  /** Only with an outline that holds together: one opening, stations that rise. */
  readonly onChange: (free: FreeSection) => void;
};

/** How a free section is taken: its corners and the walls that begin there, or where the straightedge is read. */
export function FreeOutline({ free, isReadOnly, onChange }: FreeOutlineProps) {
  const [refusal, setRefusal] = useState<string | null>(null);
  const change = (next: FreeSection) => {
    const form = surveyForm('free-section', next);
    if (isRefusal(form)) {
      setRefusal(`${form.refusal.why}. Accepted: ${form.refusal.allowed}.`);
      return;
    }
    setRefusal(null);
    onChange(next);
  };
  return (
    <section className={styles.partList} aria-label="How the outline is taken">
      <h2 className={`caption ${styles.groupTitle}`}>
        {free.by === 'points' ? 'Corners and walls' : 'Stations along the straightedge'}
      </h2>
      {free.by === 'points' ? (
        <CornerList
          corners={free.corners}
          isReadOnly={isReadOnly}
          onChange={(corners) => change({ by: 'points', corners })}
        />
      ) : (
        <StationList
          stations={free.stations}
          isReadOnly={isReadOnly}
          onChange={(stations) => change({ by: 'stations', stations })}
        />
      )}
      {refusal === null ? null : (
        <p className={styles.refusal} role="alert">
          {refusal}
        </p>
      )}
    </section>
  );
}

type CornerListProps = {
  readonly corners: readonly FreeCorner[];
  readonly isReadOnly: boolean;
  readonly onChange: (corners: FreeCorner[]) => void;
};

function CornerList({ corners, isReadOnly, onChange }: CornerListProps) {
  const set = (index: number, changes: Partial<FreeCorner>) =>
    onChange(corners.map((corner, at) => (at === index ? { ...corner, ...changes } : corner)));
  return (
    <>
      {corners.map((corner, index) => (
        <details key={corner.id} className={styles.part}>
          <summary>
            Corner {index + 1}: {corner.wallName} begins
          </summary>
          <div className={styles.partBody}>
            <TextField
              label="Wall from here"
              value={corner.wallName}
              onChange={(wallName) => (wallName === '' ? undefined : set(index, { wallName }))}
              isReadOnly={isReadOnly}
            />
            <Select
              label="What the wall is"
              options={Object.entries(ROLE_WORDS).map(([id, label]) => ({ id, label }))}
              value={corner.role}
              onChange={(chosen) => {
                const role = (Object.keys(ROLE_WORDS) as WallRole[]).find((each) => each === chosen);
                if (role !== undefined)
                  set(index, {
                    role,
                    surface:
                      role === 'opening' ? 'open' : corner.surface === 'open' ? 'hard' : corner.surface,
                  });
              }}
              isDisabled={isReadOnly}
            />
            {corner.role === 'opening' ? null : (
              <Select
                label="Its surface"
                options={(['hard', 'soft'] as const).map((id) => ({ id, label: SURFACE_WORDS[id] }))}
                value={corner.surface === 'soft' ? 'soft' : 'hard'}
                onChange={(surface) => set(index, { surface })}
                isDisabled={isReadOnly}
              />
            )}
            {isReadOnly ? null : (
              <>
                <Button
                  look="quiet"
                  onPress={() =>
                    onChange([
                      ...corners.slice(0, index + 1),
                      freeCornerAfter(corners),
                      ...corners.slice(index + 1),
                    ])
                  }
                >
                  Add a corner after this one
                </Button>
                {corners.length > FEWEST_CORNERS ? (
                  <Button look="quiet" onPress={() => onChange(corners.filter((_, at) => at !== index))}>
                    Take this corner out, with its readings
                  </Button>
                ) : null}
              </>
            )}
          </div>
        </details>
      ))}
    </>
  );
}

type StationListProps = {
  readonly stations: Extract<FreeSection, { by: 'stations' }>['stations'];
  readonly isReadOnly: boolean;
  readonly onChange: (stations: Extract<FreeSection, { by: 'stations' }>['stations']) => void;
};

function StationList({ stations, isReadOnly, onChange }: StationListProps) {
  return (
    <>
      <p className={styles.hint}>
        The straightedge lies level on the floor from the back wall, unless Lx, Ly and La say where it begins
        and how it is tilted. Readings stay at their distance.
      </p>
      {stations.map((station, index) => (
        <div key={`${station.mm}`} className={styles.corner}>
          <LengthField
            label={`Station ${index + 1}`}
            value={station}
            minMm={0}
            maxMm={10_000}
            isReadOnly={isReadOnly || index === 0}
            onCommit={(length) => {
              if (length === null) return;
              const { mm, typed, unit } = length;
              onChange(
                stations
                  .map((each, at) => (at === index ? { mm, typed, unit } : each))
                  .sort((a, b) => a.mm - b.mm),
              );
            }}
          />
          {isReadOnly || index === 0 || stations.length <= 2 ? null : (
            <Button
              look="quiet"
              aria-label={`Take out station ${index + 1}`}
              onPress={() => onChange(stations.filter((_, at) => at !== index))}
            >
              Take out
            </Button>
          )}
        </div>
      ))}
      {isReadOnly ? null : (
        <Button onPress={() => onChange([...stations, stationAfter(stations)])}>Add a station</Button>
      )}
    </>
  );
}
