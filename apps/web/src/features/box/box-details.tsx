'use client';

import type { ReactNode } from 'react';
import { TextArea } from '../../shared/controls/text-area.tsx';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import styles from './box-screen.module.css';
import type { BoxJobSheet } from './box-types.ts';
import { BraceSettings, braceSummary } from './brace-settings.tsx';
import { DividerSettings, dividerSummary } from './divider-settings.tsx';
import { DriverSettings, driverSummary } from './driver-settings.tsx';
import { FinishSettings, finishSummary } from './finish-settings.tsx';
import { JointSettings, jointSummary } from './joint-settings.tsx';
import { PlaceSettings, placeSummary } from './place-settings.tsx';
import { TerminalSettings, terminalSummary } from './terminal-settings.tsx';

export type SettingsProps = {
  readonly sheet: BoxJobSheet;
  readonly errorOf: (field: string) => string | null;
  readonly rule: LengthRule;
};

/** What is decided once and rarely looked at: folded away under what it says now. */
export function BoxDetails(props: SettingsProps) {
  const { sheet, rule } = props;
  return (
    <div data-screen-only="">
      <Fold title="Drivers in the baffle" now={driverSummary(sheet, rule)}>
        <DriverSettings {...props} />
      </Fold>
      <Fold title="Braces and corner blocks" now={braceSummary(sheet, rule)}>
        <BraceSettings {...props} />
      </Fold>
      <Fold title="Joints and edges" now={jointSummary(sheet, rule)}>
        <JointSettings {...props} />
      </Fold>
      <Fold title="Two chambers" now={dividerSummary(sheet, rule)}>
        <DividerSettings {...props} />
      </Fold>
      <Fold title="Terminal cup" now={terminalSummary(sheet)}>
        <TerminalSettings {...props} />
      </Fold>
      <Fold title="Finish" now={finishSummary(sheet)}>
        <FinishSettings {...props} />
      </Fold>
      <Fold title="Where it stands" now={placeSummary(sheet, rule)}>
        <PlaceSettings {...props} />
      </Fold>
      <Fold title="Notes" now={sheet.input.notes === '' ? 'none' : 'for the shop'}>
        <TextArea
          label="Notes"
          isOptional
          hint="For the shop only"
          rows={3}
          value={sheet.input.notes}
          onChange={(notes) => sheet.change({ notes })}
          isReadOnly={!sheet.mayEdit}
          error={props.errorOf('notes')}
        />
      </Fold>
    </div>
  );
}

type FoldProps = { readonly title: string; readonly now: string; readonly children: ReactNode };

function Fold({ title, now, children }: FoldProps) {
  return (
    <details className={styles.fold}>
      <summary>
        <strong>{title}</strong>
        <span className={styles.summaryWords}>{now}</span>
      </summary>
      <div>{children}</div>
    </details>
  );
}
