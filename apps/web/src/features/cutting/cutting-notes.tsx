'use client';

import type { CuttingNote, CuttingResult } from '@gusset/contracts/cutting-sheet';
import { sheetName } from '@gusset/sheets';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import { NominalBoards } from '../../shared/job/nominal-boards.tsx';
import { UnreadyVerdict } from '../../shared/job/unready-verdict.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import styles from './cutting-screen.module.css';
import type { CuttingJobSheet } from './cutting-types.ts';
import { areaBalance, cuttingHeadline, noteWords } from './cutting-words.ts';
import { TestFitTick } from './test-fit-tick.tsx';

export type CuttingNotesProps = {
  readonly sheet: CuttingJobSheet;
  readonly result: CuttingResult | null;
  readonly rule: LengthRule;
};

/** Verdict first, then what keeps it a draft, the sheets, what is left, and what to mind at the saw. */
export function CuttingNotes({ sheet, result, rule }: CuttingNotesProps) {
  return (
    <div className={styles.notes}>
      {sheet.outcome.state === 'ready' ? (
        <Headline result={sheet.outcome.result} />
      ) : (
        <UnreadyVerdict outcome={sheet.outcome} refused="That cannot be laid out" />
      )}
      {result === null ? null : (
        <>
          {sheet.data.draftUpstream.includes('box') ? (
            <Verdict tone="note" words="Laid out from a box that is still a draft">
              Issue sheet 04 before this one.
            </Verdict>
          ) : null}
          <Thickness sheet={sheet} notes={result.notes} rule={rule} />
          <TestFitTick sheet={sheet} />
          <SheetsNeeded result={result} rule={rule} />
          <Offcuts result={result} rule={rule} />
          <Balance result={result} />
          <Minded notes={result.notes} rule={rule} />
        </>
      )}
      <Caution>
        Disconnect the saw before setting it; guard, riving knife and push stick in use. Extraction on and a
        fitted respirator: wood dust harms. Eyes and ears protected.
      </Caution>
    </div>
  );
}

function Headline({ result }: { readonly result: CuttingResult }) {
  const { tone, words, lines } = cuttingHeadline(result);
  return (
    <Verdict tone={tone} words={words}>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </Verdict>
  );
}

type OfNotes = { readonly notes: readonly CuttingNote[]; readonly rule: LengthRule };

/** What keeps the sizes from being settled: a board taken as sold, or measured after the box was drawn. */
function Thickness({ sheet, notes, rule }: OfNotes & { readonly sheet: CuttingJobSheet }) {
  const nominal = notes.filter((note) => note.code === 'thickness-nominal');
  const moved = notes.filter((note) => note.code === 'thickness-moved');
  return (
    <>
      <NominalBoards boards={nominal} length={rule.words} reread={sheet.reread} />
      {moved.length === 0 ? null : (
        <Verdict tone="check" words="The box was drawn before its board was measured">
          {moved.map(({ boardId, name, drawnMm, measuredMm }) => (
            <p key={boardId}>
              {name} measures {rule.words(measuredMm)}, the box is drawn with {rule.words(drawnMm)}. Issue
              sheet 04 again; this list then follows.
            </p>
          ))}
        </Verdict>
      )}
    </>
  );
}

type OfResult = { readonly result: CuttingResult };

function SheetsNeeded({ result, rule }: OfResult & { readonly rule: LengthRule }) {
  return (
    <Rows title="Sheets">
      {result.boards.flatMap((board) =>
        board.sheets.map(({ stockId, name, lengthMm, widthMm, count, massKg }) => (
          <Row
            key={`${board.boardId} ${stockId}`}
            label={`${name}, ${rule.drawn(lengthMm)} × ${rule.drawn(widthMm)}, ${massKg.toFixed(1)} kg each`}
          >
            {count}
          </Row>
        )),
      )}
      <Row label="Least that any layout needs">
        {result.boards.reduce((sum, { layout }) => sum + layout.lowerBoundSheets, 0)}
      </Row>
      <Row label="Kerf">{rule.words(result.kerfMm)}</Row>
      <Row label="Trim each edge">{rule.words(result.trimMm)}</Row>
      <Row label="Mass of the parts" isTotal>
        {result.massKg.toFixed(1)} kg
      </Row>
    </Rows>
  );
}

/** What goes back to the rack, largest first. */
function Offcuts({ result, rule }: OfResult & { readonly rule: LengthRule }) {
  const offcuts = result.boards.flatMap((board) =>
    board.layout.sheets.flatMap((sheet, index) =>
      sheet.offcuts.map((offcut, at) => ({
        ...offcut,
        key: `${board.boardId} ${index} ${at}`,
        from: `${sheetName(board, sheet)}, sheet ${index + 1}`,
      })),
    ),
  );
  if (offcuts.length === 0) return null;
  return (
    <Rows title="Offcuts worth keeping">
      {offcuts.map(({ key, from, lengthMm, widthMm }) => (
        <Row key={key} label={from}>
          {rule.drawn(lengthMm)} × {rule.drawn(widthMm)}
        </Row>
      ))}
    </Rows>
  );
}

function Balance({ result }: OfResult) {
  const lines = areaBalance(result);
  return (
    <Rows title="Where the board goes">
      {lines.map(({ label, areaM2, percent }) => (
        <Row key={label} label={label}>
          {areaM2.toFixed(2)} m² · {percent.toFixed(1)} %
        </Row>
      ))}
      <Row label="Sheets and offcuts" isTotal>
        {lines.reduce((sum, { areaM2 }) => sum + areaM2, 0).toFixed(2)} m²
      </Row>
    </Rows>
  );
}

function Minded({ notes, rule }: OfNotes) {
  const lines = notes.map((note) => noteWords(note, rule.words)).filter((line) => line !== null);
  if (lines.length === 0) return null;
  return (
    <section aria-label="To mind">
      <h2 className="caption">To mind</h2>
      <ul className={styles.findings}>
        {[...new Set(lines)].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
