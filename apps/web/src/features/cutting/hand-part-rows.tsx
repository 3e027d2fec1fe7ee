'use client';

import type { HandPart } from '@gusset/contracts/cutting-sheet';
import { Button } from '../../shared/controls/button.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import styles from './cutting-screen.module.css';
import { keptLength, type SettingsProps } from './cutting-types.ts';
import { boardOptions, useBoards } from './use-boards.ts';

const MOST_PARTS = 60;
const GRAINS = [
  { id: 'none', label: 'May turn' },
  { id: 'length', label: 'Along its length' },
  { id: 'width', label: 'Along its width' },
] as const;

/** What the box does not know of: an amplifier board, a false floor, a jig. */
export function HandPartRows({ sheet, errorOf }: SettingsProps) {
  const boards = useBoards(sheet);
  const { handParts } = sheet.input;
  const isDisabled = !sheet.mayEdit;
  const edited = (key: string, changes: Partial<HandPart>) => ({
    handParts: handParts.map((row) => (row.key === key ? { ...row, ...changes } : row)),
  });
  const edit = (key: string, changes: Partial<HandPart>) => sheet.change(edited(key, changes));
  const add = () =>
    sheet.change({
      handParts: [
        ...handParts,
        {
          key: crypto.randomUUID(),
          name: '',
          boardId: boards.cut[0]?.id ?? null,
          length: null,
          width: null,
          quantity: 1,
          grain: 'none',
        },
      ],
    });
  return (
    <>
      {handParts.map((row, index) => (
        <div key={row.key} className={styles.row}>
          <TextField
            label={`X${index + 1} · name`}
            value={row.name}
            maxLength={60}
            onChange={(name) => edit(row.key, { name })}
            isReadOnly={isDisabled}
            error={errorOf(`handParts.${index}.name`)}
          />
          <Select
            label="Board"
            options={boardOptions(boards.all)}
            value={row.boardId}
            onChange={(boardId) => sheet.changeNow(edited(row.key, { boardId }))}
            isDisabled={isDisabled}
            error={errorOf(`handParts.${index}.boardId`)}
          />
          <LengthField
            label="Length"
            value={row.length}
            onCommit={(length) => edit(row.key, { length: keptLength(length) })}
            minMm={0.1}
            maxMm={5_000}
            isReadOnly={isDisabled}
            error={errorOf(`handParts.${index}.length`)}
          />
          <LengthField
            label="Width"
            value={row.width}
            onCommit={(width) => edit(row.key, { width: keptLength(width) })}
            minMm={0.1}
            maxMm={5_000}
            isReadOnly={isDisabled}
            error={errorOf(`handParts.${index}.width`)}
          />
          <NumberField
            label="How many"
            value={row.quantity}
            min={1}
            max={100}
            digits={0}
            onCommit={(figure) => edit(row.key, { quantity: Math.round(figure?.value ?? 1) })}
            isDisabled={isDisabled}
          />
          <Select
            label="Grain"
            options={GRAINS}
            value={row.grain}
            onChange={(grain) => edit(row.key, { grain })}
            isDisabled={isDisabled}
            error={errorOf(`handParts.${index}.grain`)}
          />
          {isDisabled ? null : (
            <Button
              look="quiet"
              aria-label={`Take out X${index + 1}`}
              onPress={() => sheet.change({ handParts: handParts.filter(({ key }) => key !== row.key) })}
            >
              Take out
            </Button>
          )}
        </div>
      ))}
      {isDisabled || handParts.length >= MOST_PARTS ? null : (
        <div>
          <Button onPress={add}>Add a part</Button>
        </div>
      )}
    </>
  );
}
