'use client';

import type { HandPart } from '@gusset/contracts/cutting-sheet';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { CutRows, SizeFields, withRow } from './cut-rows.tsx';
import type { SettingsProps } from './cutting-types.ts';
import { boardOptions, useBoards } from './use-boards.ts';

const MOST_PARTS = 60;
const MOST_ALIKE = 100;
const GRAINS = [
  { id: 'none', label: 'May turn' },
  { id: 'length', label: 'Along its length' },
  { id: 'width', label: 'Along its width' },
] as const;

/** What the box does not know of: an amplifier board, a false floor, a jig. */
export function HandPartRows({ sheet, errorOf }: SettingsProps) {
  const boards = useBoards(sheet);
  const { handParts } = sheet.input;
  const isReadOnly = !sheet.mayEdit;
  const edited = (key: string, changes: Partial<HandPart>) => ({
    handParts: withRow(handParts, key, changes),
  });
  const edit = (key: string, changes: Partial<HandPart>) => sheet.change(edited(key, changes));
  return (
    <CutRows
      rows={handParts}
      most={MOST_PARTS}
      nameOf={(index) => `X${index + 1}`}
      addWords="Add a part"
      isReadOnly={isReadOnly}
      make={(): HandPart => ({
        key: crypto.randomUUID(),
        name: '',
        boardId: boards.cut[0]?.id ?? null,
        length: null,
        width: null,
        quantity: 1,
        grain: 'none',
      })}
      onChange={(rows) => sheet.change({ handParts: rows })}
    >
      {(row, index) => (
        <>
          <TextField
            label={`X${index + 1} · name`}
            value={row.name}
            maxLength={60}
            onChange={(name) => edit(row.key, { name })}
            isReadOnly={isReadOnly}
            error={errorOf(`handParts.${index}.name`)}
          />
          <Select
            label="Board"
            options={boardOptions(boards.all)}
            value={row.boardId}
            onChange={(boardId) => sheet.changeNow(edited(row.key, { boardId }))}
            isDisabled={isReadOnly}
            error={errorOf(`handParts.${index}.boardId`)}
          />
          <SizeFields
            length={row.length}
            width={row.width}
            count={row.quantity}
            mostOf={MOST_ALIKE}
            isReadOnly={isReadOnly}
            errorOf={(field) => errorOf(`handParts.${index}.${field}`)}
            onLength={(length) => edit(row.key, { length })}
            onWidth={(width) => edit(row.key, { width })}
            onCount={(quantity) => edit(row.key, { quantity })}
          />
          <Select
            label="Grain"
            options={GRAINS}
            value={row.grain}
            onChange={(grain) => edit(row.key, { grain })}
            isDisabled={isReadOnly}
            error={errorOf(`handParts.${index}.grain`)}
          />
        </>
      )}
    </CutRows>
  );
}
