'use client';

import type { HandOffcut } from '@gusset/contracts/cutting-sheet';
import { Button } from '../../shared/controls/button.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import styles from './cutting-screen.module.css';
import { keptLength, type SettingsProps } from './cutting-types.ts';
import { boardOptions, useBoards } from './use-boards.ts';

const MOST_OFFCUTS = 30;

/** Leftovers at hand, used before a full sheet is cut. */
export function OffcutRows({ sheet, errorOf }: SettingsProps) {
  const boards = useBoards(sheet);
  const { offcuts } = sheet.input;
  const isDisabled = !sheet.mayEdit;
  const edit = (key: string, changes: Partial<HandOffcut>) =>
    sheet.change({ offcuts: offcuts.map((row) => (row.key === key ? { ...row, ...changes } : row)) });
  const add = () =>
    sheet.change({
      offcuts: [
        ...offcuts,
        {
          key: crypto.randomUUID(),
          boardId: boards.cut[0]?.id ?? null,
          length: null,
          width: null,
          count: 1,
        },
      ],
    });
  return (
    <>
      <p className={styles.quiet}>
        Taken to be as thick as the board itself. Length lies along the grain where the board has one.
      </p>
      {offcuts.map((row, index) => (
        <div key={row.key} className={styles.row}>
          <Select
            label="Board"
            options={boardOptions(boards.cut)}
            value={row.boardId}
            onChange={(boardId) => edit(row.key, { boardId })}
            isDisabled={isDisabled}
            error={errorOf(`offcuts.${index}.boardId`)}
          />
          <LengthField
            label="Length"
            value={row.length}
            onCommit={(length) => edit(row.key, { length: keptLength(length) })}
            minMm={0.1}
            maxMm={5_000}
            isReadOnly={isDisabled}
            error={errorOf(`offcuts.${index}.length`)}
          />
          <LengthField
            label="Width"
            value={row.width}
            onCommit={(width) => edit(row.key, { width: keptLength(width) })}
            minMm={0.1}
            maxMm={5_000}
            isReadOnly={isDisabled}
            error={errorOf(`offcuts.${index}.width`)}
          />
          <NumberField
            label="How many"
            value={row.count}
            min={1}
            max={40}
            digits={0}
            onCommit={(figure) => edit(row.key, { count: Math.round(figure?.value ?? 1) })}
            isDisabled={isDisabled}
          />
          {isDisabled ? null : (
            <Button
              look="quiet"
              aria-label={`Take out offcut ${index + 1}`}
              onPress={() => sheet.change({ offcuts: offcuts.filter(({ key }) => key !== row.key) })}
            >
              Take out
            </Button>
          )}
        </div>
      ))}
      {isDisabled || offcuts.length >= MOST_OFFCUTS ? null : (
        <div>
          <Button onPress={add}>Add an offcut</Button>
        </div>
      )}
    </>
  );
}
