'use client';

import type { HandOffcut } from '@gusset/contracts/cutting-sheet';
import { Select } from '../../shared/controls/select.tsx';
import { CutRows, SizeFields, withRow } from './cut-rows.tsx';
import styles from './cutting-screen.module.css';
import type { SettingsProps } from './cutting-types.ts';
import { RackList } from './rack-list.tsx';
import { boardOptions, useBoards } from './use-boards.ts';

const MOST_OFFCUTS = 30;
const MOST_ALIKE = 40;

/** Leftovers at hand, used before a full sheet is cut. */
export function OffcutRows({ sheet, errorOf, rule }: SettingsProps) {
  const boards = useBoards(sheet);
  const { offcuts } = sheet.input;
  const isReadOnly = !sheet.mayEdit;
  const edit = (key: string, changes: Partial<HandOffcut>) =>
    sheet.change({ offcuts: withRow(offcuts, key, changes) });
  return (
    <>
      <RackList sheet={sheet} errorOf={errorOf} rule={rule} />
      <p className={styles.quiet}>
        Taken to be as thick as the board itself. Length lies along the grain where the board has one.
      </p>
      <CutRows
        rows={offcuts}
        most={MOST_OFFCUTS}
        nameOf={(index) => `offcut ${index + 1}`}
        addWords="Add an offcut"
        isReadOnly={isReadOnly}
        make={(): HandOffcut => ({
          key: crypto.randomUUID(),
          boardId: boards.cut[0]?.id ?? null,
          length: null,
          width: null,
          count: 1,
          offcutId: null,
        })}
        onChange={(rows) => sheet.change({ offcuts: rows })}
      >
        {(row, index) => (
          <>
            <Select
              label="Board"
              options={boardOptions(boards.cut)}
              value={row.boardId}
              onChange={(boardId) => edit(row.key, { boardId })}
              isDisabled={isReadOnly}
              error={errorOf(`offcuts.${index}.boardId`)}
            />
            <SizeFields
              length={row.length}
              width={row.width}
              count={row.count}
              mostOf={MOST_ALIKE}
              isReadOnly={isReadOnly}
              errorOf={(field) => errorOf(`offcuts.${index}.${field}`)}
              onLength={(length) => edit(row.key, { length })}
              onWidth={(width) => edit(row.key, { width })}
              onCount={(count) => edit(row.key, { count })}
            />
          </>
        )}
      </CutRows>
    </>
  );
}
