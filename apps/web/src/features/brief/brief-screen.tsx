'use client';

import {
  type BriefInput,
  type BriefResult,
  LISTENING_AIM_WORDS,
  LISTENING_AIMS,
} from '@gusset/contracts/brief';
import { DateField } from '../../shared/controls/date-field.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { MoneyField } from '../../shared/controls/money-field.tsx';
import { RadioGroup } from '../../shared/controls/radio-group.tsx';
import { TextArea } from '../../shared/controls/text-area.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { fieldError } from '../../shared/data/shop-error.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobSheetPage, useTitleCells } from '../../shared/job/job-sheet-page.tsx';
import { type JobSheet, useJobSheet } from '../../shared/job/use-job-sheet.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import styles from './brief-screen.module.css';
import { BroughtParts } from './brought-parts.tsx';
import { KeepFreeList } from './keep-free-list.tsx';

const FIELD_WORDS: Readonly<Record<keyof BriefInput, string>> = {
  wish: 'What it should do',
  aim: 'What matters most',
  place: 'Where it may stand',
  keepFree: 'What must stay free',
  freeDepth: 'Floor depth to leave free',
  budgetMinor: 'Budget',
  wishedOn: 'Wished for',
  broughtParts: 'Who brings what',
  notes: 'Notes',
};

export type BriefScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['sheet']['brief']['read'];
};

const readBriefInputDraft = async (kept: unknown): Promise<BriefInput | null> => {
  const { briefInputSchema } = await import('@gusset/contracts/brief');
  return briefInputSchema.safeParse(kept).data ?? null;
};

/** Sheet 01: what the customer wants, in their words, and what the design must respect. */
export function BriefScreen({ opened, start }: BriefScreenProps) {
  const { job } = opened;
  const { shop } = useDisplay();
  const sheet = useJobSheet<BriefInput, null, null, BriefResult>({
    kind: 'brief',
    jobId: job.id,
    jobNumber: job.number,
    start,
    procedures: useTRPCClient().sheet.brief,
    readDraft: readBriefInputDraft,
  });
  const { input, change, mayEdit } = sheet;
  const problem = (field: keyof BriefInput) => fieldError(sheet.autosave.error, `input.${field}`);
  const titleBlock = useTitleCells(opened, sheet);
  const isReadOnly = !mayEdit;
  return (
    <JobSheetPage opened={opened} sheet={sheet} fieldWords={FIELD_WORDS}>
      <SheetFrame
        titleBlock={titleBlock}
        notesFirst
        notes={
          <div>
            <BriefNotes sheet={sheet} />
          </div>
        }
      >
        <div className={styles.questions}>
          <TextArea
            label={FIELD_WORDS.wish}
            hint="In the customer’s own words. It stands on the quote."
            rows={4}
            value={input.wish}
            onChange={(wish) => change({ wish })}
            isReadOnly={isReadOnly}
            error={problem('wish')}
          />
          <RadioGroup
            label={FIELD_WORDS.aim}
            value={input.aim}
            onChange={(aim) => change({ aim })}
            isDisabled={isReadOnly}
            options={LISTENING_AIMS.map((aim) => {
              const [label = aim, detail = ''] = LISTENING_AIM_WORDS[aim].split(': ');
              return { id: aim, label, detail };
            })}
          />
          <FieldGrid cellMinPx={260}>
            <TextField
              label={FIELD_WORDS.place}
              hint="Boot floor, behind the seat, spare-wheel well"
              value={input.place}
              onChange={(place) => change({ place })}
              isReadOnly={isReadOnly}
              error={problem('place')}
            />
            <LengthField
              label={FIELD_WORDS.freeDepth}
              isOptional
              hint="In front of the box, along the floor"
              value={input.freeDepth}
              minMm={0}
              maxMm={5000}
              onCommit={(length) =>
                change({
                  freeDepth:
                    length === null ? null : { mm: length.mm, typed: length.typed, unit: length.unit },
                })
              }
              isReadOnly={isReadOnly}
              error={problem('freeDepth')}
            />
            <MoneyField
              label={FIELD_WORDS.budgetMinor}
              isOptional
              hint="What the customer said, tax in"
              value={
                input.budgetMinor === null ? null : { minor: input.budgetMinor, currency: shop.currency }
              }
              onCommit={(amount) => change({ budgetMinor: amount?.minor ?? null })}
              isReadOnly={isReadOnly}
              error={problem('budgetMinor')}
            />
            <DateField
              label={FIELD_WORDS.wishedOn}
              isOptional
              value={input.wishedOn}
              onChange={(wishedOn) => change({ wishedOn })}
              isDisabled={isReadOnly}
              error={problem('wishedOn')}
            />
          </FieldGrid>
          <KeepFreeList
            value={input.keepFree}
            onChange={(keepFree) => change({ keepFree })}
            isReadOnly={isReadOnly}
          />
          <BroughtParts
            value={input.broughtParts}
            onChange={(broughtParts) => change({ broughtParts })}
            isReadOnly={isReadOnly}
          />
          <TextArea
            label={FIELD_WORDS.notes}
            isOptional
            hint="For the shop only"
            rows={3}
            value={input.notes}
            onChange={(notes) => change({ notes })}
            isReadOnly={isReadOnly}
            error={problem('notes')}
          />
        </div>
      </SheetFrame>
    </JobSheetPage>
  );
}

type BriefSheet = Pick<JobSheet<BriefInput, null, null, BriefResult>, 'outcome' | 'isDraft'>;

function BriefNotes({ sheet }: { readonly sheet: BriefSheet }) {
  const { outcome } = sheet;
  if (outcome.state === 'ready') {
    return (
      <Verdict tone="pass" words="Clear enough to design from">
        {sheet.isDraft
          ? 'Issue the sheet; sound and parts read it.'
          : 'Issued: sound and parts read it as it stands.'}
      </Verdict>
    );
  }
  const missing = outcome.state === 'incomplete' ? outcome.missing : [];
  return (
    <Verdict tone="check" words="Still to ask">
      <ul>
        {missing.map(({ field, what }) => (
          <li key={field}>{what}</li>
        ))}
      </ul>
    </Verdict>
  );
}
