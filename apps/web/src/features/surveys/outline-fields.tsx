'use client';

import type { SurveyCorner, TypedMm } from '@gusset/contracts/survey';
import type { TypedLength } from '@gusset/units';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import styles from './measuring-screen.module.css';
import { boxSidesOf, cornersOfBox, withCorner } from './outline-parts.ts';

const REACH_MM = 5_000;
const FEWEST_CORNERS = 3;
const MOST_CORNERS = 12;

export type OutlineFieldsProps = {
  readonly corners: readonly SurveyCorner[];
  readonly onChange: (corners: SurveyCorner[]) => void;
  readonly isReadOnly: boolean;
};

/** An outline in the section: from here to there, or corner by corner where it is no box. */
export function OutlineFields({ corners, onChange, isReadOnly }: OutlineFieldsProps) {
  const sides = boxSidesOf(corners);
  const [showsCorners, setShowsCorners] = useState(sides === null);
  if (sides !== null && !showsCorners) {
    const set = (changes: Partial<typeof sides>) => onChange(cornersOfBox({ ...sides, ...changes }));
    return (
      <>
        <FieldGrid cellMinPx={150}>
          <SignedLength
            label="From the back wall"
            value={sides.near}
            onCommit={(near) => set({ near })}
            isReadOnly={isReadOnly}
          />
          <SignedLength
            label="To"
            value={sides.far}
            onCommit={(far) => set({ far })}
            isReadOnly={isReadOnly}
          />
          <SignedLength
            label="Above the floor, from"
            value={sides.low}
            onCommit={(low) => set({ low })}
            isReadOnly={isReadOnly}
          />
          <SignedLength
            label="Up to"
            value={sides.high}
            onCommit={(high) => set({ high })}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
        {isReadOnly ? null : (
          <Button look="quiet" onPress={() => setShowsCorners(true)}>
            It is no box: enter corners
          </Button>
        )}
      </>
    );
  }
  const put = (index: number, changes: Partial<SurveyCorner>) =>
    onChange(corners.map((corner, at) => (at === index ? { ...corner, ...changes } : corner)));
  return (
    <>
      {corners.map((corner, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: corners have no name but their place in the ring.
        <div key={index} className={styles.corner}>
          <SignedLength
            label={`Corner ${index + 1}, along`}
            value={corner.x}
            onCommit={(x) => put(index, { x })}
            isReadOnly={isReadOnly}
          />
          <SignedLength
            label="Up"
            value={corner.y}
            onCommit={(y) => put(index, { y })}
            isReadOnly={isReadOnly}
          />
          {isReadOnly || corners.length <= FEWEST_CORNERS ? null : (
            <Button
              look="quiet"
              aria-label={`Take out corner ${index + 1}`}
              onPress={() => onChange(corners.filter((_, at) => at !== index))}
            >
              Take out
            </Button>
          )}
        </div>
      ))}
      {isReadOnly || corners.length >= MOST_CORNERS ? null : (
        <Button look="quiet" onPress={() => onChange(withCorner(corners))}>
          Add a corner
        </Button>
      )}
    </>
  );
}

export type SignedLengthProps = {
  readonly label: string;
  readonly hint?: string;
  readonly value: TypedMm;
  readonly onCommit: (length: TypedMm) => void;
  readonly isReadOnly: boolean;
  readonly minMm?: number;
};

/** A length that may lie either side of its datum; emptying it leaves it as it was. */
export function SignedLength({
  label,
  hint,
  value,
  onCommit,
  isReadOnly,
  minMm = -REACH_MM,
}: SignedLengthProps) {
  const commit = (length: TypedLength | null) => {
    if (length !== null) onCommit({ mm: length.mm, typed: length.typed, unit: length.unit });
  };
  return (
    <LengthField
      label={label}
      hint={hint}
      value={value}
      minMm={minMm}
      maxMm={REACH_MM}
      onCommit={commit}
      isReadOnly={isReadOnly}
    />
  );
}
