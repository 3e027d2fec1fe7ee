'use client';

import type { ReactNode } from 'react';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { RadioGroup } from '../../shared/controls/radio-group.tsx';
import { TextArea } from '../../shared/controls/text-area.tsx';
import { keptLength } from '../../shared/job/length-rule.ts';
import styles from './cutting-screen.module.css';
import type { SettingsProps } from './cutting-types.ts';
import { counted } from './cutting-words.ts';
import { GlueSettings, glueWords } from './glue-settings.tsx';
import { HandPartRows } from './hand-part-rows.tsx';
import { MachineSettings, machineWords } from './machine-settings.tsx';
import { OffcutRows } from './offcut-rows.tsx';
import { SheetChoices } from './sheet-choices.tsx';
import { SpareSettings } from './spare-settings.tsx';

/** What is decided once and rarely looked at: folded away under what it says now. */
export function CuttingSettings(props: SettingsProps) {
  const { sheet, errorOf } = props;
  const { input } = sheet;
  const spares = input.spares.reduce((sum, { count }) => sum + count, 0);
  return (
    <div data-screen-only="">
      <Fold title="Sheets to cut from" now={chosenWords(props)}>
        <SheetChoices {...props} />
      </Fold>
      <Fold
        title="Offcuts in the rack"
        now={input.offcuts.length === 0 ? 'none' : counted(input.offcuts.length, 'kind')}
      >
        <OffcutRows {...props} />
      </Fold>
      <Fold
        title="Parts by hand"
        now={input.handParts.length === 0 ? 'none' : counted(input.handParts.length, 'row')}
      >
        <HandPartRows {...props} />
      </Fold>
      <Fold title="Spare parts" now={spares === 0 ? 'none' : counted(spares, 'spare')}>
        <SpareSettings {...props} />
      </Fold>
      <Fold title="Saw" now={sawWords(props)}>
        <SawSettings {...props} />
      </Fold>
      <Fold title="Router and straightedge" now={machineWords(props)}>
        <MachineSettings {...props} />
      </Fold>
      <Fold title="Glue" now={glueWords(props)}>
        <GlueSettings {...props} />
      </Fold>
      <Fold title="Notes" now={input.notes === '' ? 'none' : 'for the shop'}>
        <TextArea
          label="Notes"
          isOptional
          hint="For the shop only"
          rows={3}
          value={input.notes}
          onChange={(notes) => sheet.change({ notes })}
          isReadOnly={!sheet.mayEdit}
          error={errorOf('notes')}
        />
      </Fold>
    </div>
  );
}

function SawSettings({ sheet, errorOf, rule }: SettingsProps) {
  const { input, change, mayEdit, data } = sheet;
  const { saw } = data.facts;
  return (
    <>
      <FieldGrid cellMinPx={170}>
        <LengthField
          label="Kerf"
          isOptional
          hint={`Empty = the shop’s saw, ${rule.words(saw.kerfMm)}`}
          value={input.kerf}
          onCommit={(kerf) => change({ kerf: keptLength(kerf) })}
          maxMm={50}
          isReadOnly={!mayEdit}
          error={errorOf('kerf')}
        />
        <LengthField
          label="Trim each edge"
          isOptional
          hint={`Empty = as the shop trims, ${rule.words(saw.trimMm)}`}
          value={input.trim}
          onCommit={(trim) => change({ trim: keptLength(trim) })}
          maxMm={200}
          isReadOnly={!mayEdit}
          error={errorOf('trim')}
        />
        <LengthField
          label="Cut larger to trim flush"
          isOptional
          hint="Empty = cut to size"
          value={input.oversize}
          onCommit={(oversize) => change({ oversize: keptLength(oversize) })}
          maxMm={10}
          isReadOnly={!mayEdit}
          error={errorOf('oversize')}
        />
      </FieldGrid>
      <RadioGroup
        label="What counts first"
        isRow
        value={input.aim}
        onChange={(aim) => change({ aim })}
        isDisabled={!mayEdit}
        options={[
          { id: 'fewest-sheets', label: 'Fewest sheets' },
          { id: 'least-board', label: 'Least board' },
          { id: 'largest-offcut', label: 'One large offcut' },
        ]}
      />
      <Checkbox
        isSelected={input.mayTurn}
        onChange={(mayTurn) => change({ mayTurn })}
        isDisabled={!mayEdit}
        detail="Where the grain allows it"
      >
        Parts may be turned on the sheet
      </Checkbox>
    </>
  );
}

function sawWords({ sheet, rule }: SettingsProps): string {
  const { input, data } = sheet;
  const kerf = rule.words(input.kerf?.mm ?? data.facts.saw.kerfMm);
  const trim = rule.words(input.trim?.mm ?? data.facts.saw.trimMm);
  return `kerf ${kerf}, trim ${trim}${input.mayTurn ? '' : ', parts not turned'}`;
}

function chosenWords({ sheet }: SettingsProps): string {
  const added = sheet.input.sheetChoices.reduce(
    (sum, { boardId, sheetIds }) => sum + sheetIds.filter((id) => id !== boardId).length,
    0,
  );
  return added === 0 ? 'the boards of the box' : `${counted(added, 'other size')} allowed`;
}

type FoldProps = { readonly title: string; readonly now: string; readonly children: ReactNode };

function Fold({ title, now, children }: FoldProps) {
  return (
    <details className={styles.fold}>
      <summary>
        <strong>{title}</strong>
        <span className={styles.quiet}>{now}</span>
      </summary>
      <div>{children}</div>
    </details>
  );
}
