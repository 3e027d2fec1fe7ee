'use client';

import type { SheetLayout } from '@gusset/contracts/cutting';
import type { CutBoard, CuttingResult } from '@gusset/contracts/cutting-sheet';
import { type SheetMapInput, sheetMap } from '@gusset/drawings';
import { partingCuts, sheetMaps } from '@gusset/sheets';
import { useMemo } from 'react';
import { classNames } from '../../shared/controls/class-names.ts';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import { PHONE_WIDTH, useMediaQuery } from '../../shared/shell/use-media-query.ts';
import styles from './cutting-screen.module.css';
import { boundWords, counted, cutWords } from './cutting-words.ts';

const WIDE = { widthPt: 780, textPt: 12 };
/** Wider than a phone and scrolled: at the saw every mark and size must be readable. */
const PHONE = { widthPt: 560, textPt: 12 };
/** An offcut is drawn smaller than a whole sheet, as it is. */
const OFFCUT = { widthPt: 460, textPt: 12 };
/** Room that the map keeps round the sheet for its dimensions. */
const ROUND_SHEET_PT = 62;
/** A square sheet would push its list off the screen. */
const TALLEST_SHARE = 0.72;

export type SheetMapsProps = { readonly result: CuttingResult; readonly rule: LengthRule };

/** Every sheet as it is to be cut, and the order of its cuts beside it. */
export function SheetMaps({ result, rule }: SheetMapsProps) {
  return result.boards.map((board) => (
    <section key={board.boardId} aria-label={`Layout of ${board.name}`} className={styles.board}>
      <h2 className={styles.boardName}>
        {board.name}, {rule.words(board.thicknessMm)}
        {board.isMeasured ? '' : ' nominal'} <span className={styles.quiet}>{boundWords(board)}</span>
      </h2>
      {sheetMaps(board, result.trimMm).map((map, index) => {
        const layout = board.layout.sheets[index];
        return layout === undefined ? null : (
          <OneSheet key={map.title} map={map} layout={layout} board={board} result={result} rule={rule} />
        );
      })}
    </section>
  ));
}

type OneSheetProps = SheetMapsProps & {
  readonly map: SheetMapInput;
  readonly layout: SheetLayout;
  readonly board: CutBoard;
};

function OneSheet({ map, layout, result, rule }: OneSheetProps) {
  const isPhone = useMediaQuery(PHONE_WIDTH);
  const size = isPhone ? PHONE : layout.isOffcut ? OFFCUT : WIDE;
  const scene = useMemo(() => {
    const ratio = Math.min(TALLEST_SHARE, map.heightMm / map.widthMm);
    const heightPt = Math.round((size.widthPt - ROUND_SHEET_PT) * ratio) + ROUND_SHEET_PT;
    return sheetMap(map, { ...size, heightPt, formatLength: rule.drawn });
  }, [map, size, rule]);
  const cuts = partingCuts(layout);
  return (
    <div className={classNames(styles.sheet, layout.isOffcut && styles.offcut)} data-keep-together="">
      <p className="caption">
        {map.title} · {rule.unit}
      </p>
      <SceneDrawing
        scene={scene}
        minWidthPx={isPhone ? PHONE.widthPt : 300}
        legend={
          <>
            <span className="caption">numbers in circles: order of the cuts</span>
            <span className="caption">hatched: offcut worth keeping</span>
            {layout.placements.some(({ turned }) => turned) ? (
              <span className="caption">↻ turned</span>
            ) : null}
          </>
        }
      />
      <details className={styles.order} open={cuts.length <= 8}>
        <summary>
          <strong>{counted(cuts.length, 'cut')}</strong> <span className={styles.quiet}>in this order</span>
        </summary>
        {result.trimMm > 0 ? (
          <p className={styles.quiet}>First take {rule.words(result.trimMm)} off each edge of the sheet.</p>
        ) : null}
        <div className={styles.scroll}>
          <table className={styles.table}>
            <thead>
              <tr>
                <th scope="col">Cut</th>
                <th scope="col">Way</th>
                <th scope="col">Piece in hand</th>
                <th scope="col">Fence</th>
              </tr>
            </thead>
            <tbody>
              {cuts.map((cut, index) => (
                <tr key={cut.order}>
                  <th scope="row" className="figures">
                    {index + 1}
                  </th>
                  <td>{cutWords(cut)}</td>
                  <td className="figures">
                    {rule.drawn(cut.piece.lengthMm)} × {rule.drawn(cut.piece.widthMm)}
                  </td>
                  <td className="figures">{rule.drawn(cut.fenceMm)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </div>
  );
}
