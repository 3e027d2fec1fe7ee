'use client';

import type { CuttingResult } from '@gusset/contracts/cutting-sheet';
import {
  askewLine,
  type BoardWork,
  benchLines,
  bevelledEdges,
  bevelWords,
  machineWork,
  markOf,
  ROUTER_PAGE_LEAD,
  SAW_PAGE_CAUTION,
  settingsWords,
  stepWords,
} from '@gusset/sheets';
import { useMemo } from 'react';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import { Caution } from '../../shared/marks/caution.tsx';
import type { CuttingJobSheet } from './cutting-types.ts';
import styles from './machine-pages.module.css';

export type MachinePagesProps = {
  readonly sheet: CuttingJobSheet;
  readonly result: CuttingResult;
  readonly rule: LengthRule;
};

/** What each machine is set to, one page a machine: the fence as seldom moved as can be, router and drill from a datum. */
export function MachinePages({ sheet, result, rule }: MachinePagesProps) {
  const { machines } = sheet.input;
  const { facts } = sheet.data;
  const works = useMemo(() => machineWork(result, { machines }, facts), [result, machines, facts]);
  const hasBenchWork = works.some(({ bench }) => isAny(bench));
  return (
    <>
      <section aria-labelledby="saw-page" className={styles.page}>
        <h2 id="saw-page" className={styles.title}>
          At the saw, setting by setting
        </h2>
        <Caution>{SAW_PAGE_CAUTION}</Caution>
        {works.map((work) => (
          <SawOfBoard key={work.board.boardId} work={work} trimMm={result.trimMm} rule={rule} />
        ))}
      </section>
      {hasBenchWork ? (
        <section aria-labelledby="router-page" className={styles.page}>
          <h2 id="router-page" className={styles.title}>
            Router and drill
          </h2>
          <p className={styles.quiet}>{ROUTER_PAGE_LEAD}</p>
          {works
            .filter(({ bench }) => isAny(bench))
            .map((work) => (
              <BenchOfBoard key={work.board.boardId} work={work} rule={rule} />
            ))}
        </section>
      ) : null}
    </>
  );
}

function isAny(bench: BoardWork['bench']): boolean {
  return Object.values(bench).some((list) => list.length > 0);
}

type OfBoard = { readonly work: BoardWork; readonly rule: LengthRule };

function SawOfBoard({ work, trimMm, rule }: OfBoard & { readonly trimMm: number }) {
  const { board, saw, bevels, askew } = work;
  const numberOf = ({ stockId, copy }: { stockId: string; copy: number }) =>
    board.layout.sheets.findIndex((sheet) => sheet.stockId === stockId && sheet.copy === copy) + 1;
  const settings = saw.setUps.filter(({ fenceMm }) => fenceMm !== null);
  return (
    <div className={styles.board}>
      <h3 className={styles.name}>
        {board.name}, {rule.words(board.thicknessMm)}{' '}
        <span className={styles.quiet}>{settingsWords(saw)}</span>
      </h3>
      {trimMm > 0 && saw.setUps.length > 0 ? (
        <p className={styles.quiet}>First take {rule.words(trimMm)} off each edge of every sheet.</p>
      ) : null}
      <ol className={styles.settings}>
        {settings.map((setUp) => (
          <li key={setUp.order} className={styles.setting}>
            <span className={styles.fence}>
              <span className="caption">Fence</span>
              <strong className="figures">{rule.drawn(setUp.fenceMm ?? 0)}</strong>
            </span>
            <ul className={styles.steps}>
              {setUp.steps.map((step) => (
                <li key={step.order}>
                  {stepWords(step, numberOf(step.sheet), rule.drawn)}
                  {step.freesPartIds.length > 0 ? (
                    <strong className={styles.frees}>
                      {' '}
                      → {step.freesPartIds.map((partId) => markOf(board, partId)).join(', ')}
                    </strong>
                  ) : null}
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ol>
      {bevels.length > 0 ? (
        <>
          <h4 className="caption">Bevels</h4>
          <ol className={styles.settings}>
            {bevels.map((setUp) => (
              <li key={`${setUp.how} ${setUp.bevelDeg} ${setUp.fenceMm}`} className={styles.setting}>
                <span className={styles.fence}>
                  <span className="caption">Fence</span>
                  <strong className="figures">
                    {setUp.fenceMm === null ? 'none' : rule.drawn(setUp.fenceMm)}
                  </strong>
                </span>
                <div>
                  <p>{bevelWords(setUp)}</p>
                  <p>{bevelledEdges(setUp, rule.drawn)}</p>
                </div>
              </li>
            ))}
          </ol>
        </>
      ) : null}
      {askew.length > 0 ? (
        <>
          <h4 className="caption">Sled, guide rail or straightedge</h4>
          <p className={styles.quiet}>
            Lay the guide on the wood that stays and clamp it at both ends. Corners of the blank are along /
            across.
          </p>
          <ul className={styles.steps}>
            {askew.map((cut) => (
              <li key={`${cut.panelId} ${cut.edge}`}>
                <strong>{cut.mark}</strong> {askewLine(cut, rule.drawn)}
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </div>
  );
}

function BenchOfBoard({ work, rule }: OfBoard) {
  const { bench, board } = work;
  const lines = board.rows.flatMap((row) => {
    const found = benchLines(bench, row.panelId, rule.drawn);
    return found.length === 0 ? [] : [{ row, found }];
  });
  return (
    <div className={styles.board}>
      <h3 className={styles.name}>
        {board.name}, {rule.words(board.thicknessMm)}
      </h3>
      <ul className={styles.panels}>
        {lines.map(({ row, found }) => (
          <li key={row.panelId} className={styles.panel}>
            <strong className={styles.mark}>{row.mark}</strong>
            <div>
              <span>
                {row.name}
                {row.quantity > 1 ? `, ${row.quantity} off` : ''}
              </span>
              <ul className={styles.steps}>
                {found.map(({ at, words }) => (
                  <li key={`${at} ${words.join()}`}>
                    {at === '' ? null : <strong className="figures">{at} </strong>}
                    {words.map((line) => (
                      <span key={line} className={styles.line}>
                        {line}
                      </span>
                    ))}
                  </li>
                ))}
              </ul>
            </div>
          </li>
        ))}
      </ul>
    </div>
  );
}
