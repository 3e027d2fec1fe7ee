'use client';

import { Checkbox } from '../../shared/controls/checkbox.tsx';
import styles from './cutting-screen.module.css';
import type { SettingsProps } from './cutting-types.ts';
import { type ListedBoard, useBoards } from './use-boards.ts';

/** Which sizes of sheet each board may be cut from. */
export function SheetChoices({ sheet, errorOf, rule }: SettingsProps) {
  const boards = useBoards(sheet);
  const { sheetChoices } = sheet.input;
  const error = errorOf('sheetChoices');
  const chosenFor = (board: ListedBoard) =>
    sheetChoices.find(({ boardId }) => boardId === board.id)?.sheetIds ?? [board.id];
  const choose = (board: ListedBoard, sheetIds: string[]) =>
    sheet.changeNow({
      sheetChoices: [
        ...sheetChoices.filter(({ boardId }) => boardId !== board.id),
        { boardId: board.id, sheetIds },
      ],
    });
  return (
    <>
      {boards.cut.map((board) => {
        const chosen = chosenFor(board);
        return (
          <fieldset key={board.id} className={styles.choices}>
            <legend className="caption">{board.name}</legend>
            {boards.sizesFor(board).map((size) => (
              <Checkbox
                key={size.id}
                isSelected={chosen.includes(size.id)}
                isDisabled={!sheet.mayEdit}
                onChange={(isChosen) =>
                  choose(board, isChosen ? [...chosen, size.id] : chosen.filter((id) => id !== size.id))
                }
                detail={`${rule.drawn(size.lengthMm)} × ${rule.drawn(size.widthMm)}`}
              >
                {size.name}
              </Checkbox>
            ))}
          </fieldset>
        );
      })}
      {boards.cut.length === 0 ? (
        <p className={styles.quiet}>Draw the box first: it names its boards.</p>
      ) : null}
      {boards.isError ? (
        <p className={styles.fault}>The catalogue could not be read, so other sizes are not listed.</p>
      ) : null}
      {error === null ? null : <p className={styles.fault}>{error}</p>}
    </>
  );
}
