'use client';

import type { BoxSheetResult } from '@gusset/contracts/box';
import type { SheetKind } from '@gusset/contracts/sheet';
import type { SoundResult } from '@gusset/contracts/sound';
import { cornerInBox, type SheetOutcome } from '@gusset/sheets';
import { formatVolume } from '@gusset/units';
import { type NominalBoard, NominalBoards } from '../../shared/job/nominal-boards.tsx';
import { UnreadyVerdict } from '../../shared/job/unready-verdict.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import styles from './box-screen.module.css';
import {
  boxHeadline,
  deductionWords,
  draftHeadline,
  findingWords,
  type Headline,
  type LengthWords,
  liftHeadline,
  noteWords,
  openingHeadline,
  otherFindings,
} from './box-words.ts';

export type BoxNotesProps = {
  readonly outcome: SheetOutcome<BoxSheetResult>;
  readonly result: BoxSheetResult | null;
  readonly sound: SoundResult | null;
  /** Sheets it reads that are not issued yet. */
  readonly drafts: readonly SheetKind[];
  readonly length: LengthWords;
  /** `JobSheet.reread` */
  readonly reread: () => Promise<void>;
};

/** Verdict first, then the air, the weight, and what to mind. */
export function BoxNotes({ outcome, result, sound, drafts, length, reread }: BoxNotesProps) {
  const isCurrent = outcome.state === 'ready';
  const lift = result === null ? null : liftHeadline(result);
  return (
    <div className={styles.notes}>
      {outcome.state === 'ready' ? (
        <Say {...boxHeadline(outcome.result, length)} />
      ) : (
        <UnreadyVerdict outcome={outcome} refused="Such a box cannot be" />
      )}
      {isCurrent && outcome.result.place !== null ? (
        <Say {...openingHeadline(outcome.result.place, length)} />
      ) : null}
      {drafts.length === 0 ? null : <Say {...draftHeadline(drafts)} />}
      {result === null ? null : (
        <>
          <NominalBoards boards={nominalBoards(result)} length={length} reread={reread} />
          <VolumeLedger result={result} sound={sound} />
          <Weight result={result} />
          {lift === null ? null : <Say {...lift} />}
          <div className={styles.notes} data-screen-only="">
            <OtherFindings result={result} length={length} />
            <BoxCaution />
          </div>
        </>
      )}
    </div>
  );
}

/** Taken as sold; a baffle of the box's own board is one board. */
function nominalBoards({ carcass, baffle }: BoxSheetResult): readonly NominalBoard[] {
  const boards = baffle.partId === carcass.partId ? [carcass] : [carcass, baffle];
  return boards
    .filter(({ isMeasured }) => !isMeasured)
    .map(({ partId, name, thicknessMm }) => ({ boardId: partId, name, thicknessMm }));
}

/** Where the notes stand under the drawings, the verdict still comes first: in one line above them. */
export function VerdictStrip({ outcome, length }: Pick<BoxNotesProps, 'outcome' | 'length'>) {
  const { tone, words } = shortHeadline(outcome, length);
  const volumes = outcome.state === 'ready' ? outcome.result.box.volumes : null;
  const over = volumes?.overTargetLitres ?? null;
  return (
    <div className={styles.strip} data-screen-only="">
      <Verdict tone={tone} words={words}>
        {volumes === null ? null : (
          <p>
            Net {litres(volumes.netLitres)}
            {over === null ? '' : `, ${signed(over)} to what is wanted`}
          </p>
        )}
      </Verdict>
    </div>
  );
}

function shortHeadline(
  outcome: BoxNotesProps['outcome'],
  length: LengthWords,
): Pick<Headline, 'tone' | 'words'> {
  if (outcome.state === 'ready') return boxHeadline(outcome.result, length);
  if (outcome.state === 'refused')
    return { tone: 'fail', words: outcome.refusals[0]?.why ?? 'Such a box cannot be' };
  const count = outcome.missing.length;
  return {
    tone: 'check',
    words: count === 1 ? 'One thing is still missing' : `${count} things are still missing`,
  };
}

/** On paper too, there under the drawings. */
export function BoxCaution() {
  return <Caution>Keep belts, tethers, airbags and vents clear, and lift with two.</Caution>;
}

function Say({ tone, words, lines }: Headline) {
  return (
    <Verdict tone={tone} words={words}>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </Verdict>
  );
}

const litres = (value: number) => formatVolume(value, 'metric');
const signed = (value: number) => `${value < 0 ? '−' : '+'}${litres(Math.abs(value))}`;

function VolumeLedger({ result, sound }: Pick<BoxNotesProps, 'sound'> & { readonly result: BoxSheetResult }) {
  const { volumes } = result.box;
  const { netLitres, targetNetLitres, overTargetLitres } = volumes;
  const corner = sound === null ? null : cornerInBox(sound, netLitres);
  return (
    <>
      <Rows title="Volume">
        <Row label="Gross inside">{litres(volumes.grossLitres)}</Row>
        {volumes.deductions.map((deduction) => (
          <Row
            key={`${deduction.code} ${deduction.label ?? ''}`}
            label={deductionWords(deduction)}
            tone={deduction.source === 'missing' ? 'brass' : 'plain'}
          >
            {signed(-deduction.litres)}
          </Row>
        ))}
        {(result.box.chambers ?? []).map((chamber) => (
          <Row
            key={chamber.place}
            label={chamber.place === 'near' ? 'Chamber before the divider' : 'Chamber behind it'}
          >
            {litres(chamber.netLitres)}
          </Row>
        ))}
        <Row label="Net" isTotal>
          {`${litres(netLitres)} · ${formatVolume(netLitres, 'imperial')}`}
        </Row>
        {targetNetLitres === null || overTargetLitres === null ? null : (
          <Row label={`Wanted ${litres(targetNetLitres)}`} tone="mark">
            {signed(overTargetLitres)}
          </Row>
        )}
      </Rows>
      {corner === null ? null : (
        <Rows title="In this air, about">
          <Row label="Corner, −3 dB outdoors">{corner.f3Hz.toFixed(1)} Hz</Row>
          <Row label="System Q">{corner.qtc.toFixed(2)}</Row>
        </Rows>
      )}
    </>
  );
}

function Weight({ result }: { readonly result: BoxSheetResult }) {
  const { mass } = result.box;
  return (
    <Rows title="Mass, without finish and glue">
      <Row label="Empty">{mass.emptyKg.toFixed(1)} kg</Row>
      <Row label="With drivers" isTotal>
        {mass.withDriversKg.toFixed(1)} kg
      </Row>
      {result.payloadKg === null ? null : (
        <Row label="The car may carry">{result.payloadKg.toFixed(0)} kg</Row>
      )}
      {result.finishTotals.map(({ partId, name, areaM2 }) => (
        <Row key={partId} label={name}>
          {areaM2.toFixed(2)} m²
        </Row>
      ))}
    </Rows>
  );
}

export function OtherFindings({
  result,
  length,
}: {
  readonly result: BoxSheetResult;
  readonly length: LengthWords;
}) {
  const { findings, notes } = otherFindings(result);
  const lines = [
    ...notes.map((note) => noteWords(note, length)),
    ...findings.map((finding) => findingWords(finding, length)),
  ];
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
