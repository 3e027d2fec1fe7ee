'use client';

import type { CutBoard, CutRow, CuttingResult } from '@gusset/contracts/cutting-sheet';
import { notchWords, rowWords } from '@gusset/sheets';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import { PHONE_WIDTH, useMediaQuery } from '../../shared/shell/use-media-query.ts';
import styles from './cutting-screen.module.css';
import { holeWords, isCutLarger } from './cutting-words.ts';

export type CutListProps = { readonly result: CuttingResult; readonly rule: LengthRule };

/** What hangs at the saw: one row a panel, board by board. A table on a desk, cards on a phone. */
export function CutList({ result, rule }: CutListProps) {
  const isPhone = useMediaQuery(PHONE_WIDTH);
  return (
    <section aria-label="Cut list" className={styles.list}>
      {result.boards.map((board) => (
        <div key={board.boardId} className={styles.listBoard}>
          <h2 className="caption">
            Cut list · {board.name} · finished sizes · {rule.unit}
          </h2>
          {isPhone ? <Cards board={board} rule={rule} /> : <Table board={board} rule={rule} />}
        </div>
      ))}
    </section>
  );
}

type OfBoard = { readonly board: CutBoard; readonly rule: LengthRule };

function Table({ board, rule }: OfBoard) {
  return (
    <div className={styles.scroll}>
      <table className={styles.cutTable}>
        <thead>
          <tr>
            <th scope="col">Mark</th>
            <th scope="col">Part</th>
            <th scope="col">Off</th>
            <th scope="col">Length</th>
            <th scope="col">Width</th>
            <th scope="col">Mass</th>
          </tr>
        </thead>
        <tbody>
          {board.rows.map((row) => (
            <tr key={row.panelId}>
              <th scope="row" className={styles.mark}>
                {row.mark}
              </th>
              <td>
                {row.name}
                <RowNotes row={row} rule={rule} />
              </td>
              <td className="figures">{row.quantity}</td>
              <td className={`figures ${styles.size}`}>{rule.drawn(row.finishedLengthMm)}</td>
              <td className={`figures ${styles.size}`}>{rule.drawn(row.finishedWidthMm)}</td>
              <td className="figures">{row.totalMassKg.toFixed(2)} kg</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={2}>
              Together
            </th>
            <td className="figures">{board.pieces}</td>
            <td />
            <td />
            <td className="figures">{board.massKg.toFixed(2)} kg</td>
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

function Cards({ board, rule }: OfBoard) {
  return (
    <ul className={styles.cards}>
      {board.rows.map((row) => (
        <li key={row.panelId} className={styles.card}>
          <span className={styles.mark}>{row.mark}</span>
          <span className={styles.cardName}>
            {row.name}
            {row.quantity > 1 ? ` × ${row.quantity}` : ''}
          </span>
          <span className={`figures ${styles.cardSize}`}>
            {rule.drawn(row.finishedLengthMm)} × {rule.drawn(row.finishedWidthMm)}
          </span>
          <span className={styles.cardNotes}>
            <RowNotes row={row} rule={rule} />
          </span>
        </li>
      ))}
    </ul>
  );
}

function RowNotes({ row, rule }: { readonly row: CutRow; readonly rule: LengthRule }) {
  const edges = rowWords(row);
  const lines = [
    ...(isCutLarger(row)
      ? [`cut ${rule.drawn(row.blankLengthMm)} × ${rule.drawn(row.blankWidthMm)}, trim flush after glue-up`]
      : []),
    ...(edges === '' ? [] : [edges]),
    ...notchWords(row.outline, rule.drawn),
    ...holeWords(row.holes, rule.drawn),
  ];
  return lines.map((line) => (
    <span key={line} className={styles.rowNote}>
      {line}
    </span>
  ));
}
