import { Verdict } from '../marks/verdict.tsx';
import styles from './nominal-boards.module.css';
import { ThicknessField } from './thickness-field.tsx';

export type NominalBoard = { readonly boardId: string; readonly name: string; readonly thicknessMm: number };

export type NominalBoardsProps = {
  /** Boards that nobody has measured yet. */
  readonly boards: readonly NominalBoard[];
  readonly length: (mm: number) => string;
  /** `JobSheet.reread` */
  readonly reread: () => Promise<void>;
};

/** One tap from draft to settled: the real thickness of each board that is still taken as sold. */
export function NominalBoards({ boards, length, reread }: NominalBoardsProps) {
  if (boards.length === 0) return null;
  return (
    <Verdict tone="check" words="Draft until the real sheet is measured">
      {boards.map(({ boardId, name, thicknessMm }) => (
        <div key={boardId} className={styles.board}>
          <p>
            {name} is sold as {length(thicknessMm)}. A few tenths move every size.
          </p>
          <div data-screen-only="">
            <ThicknessField boardId={boardId} name={name} reread={reread} />
          </div>
        </div>
      ))}
    </Verdict>
  );
}
