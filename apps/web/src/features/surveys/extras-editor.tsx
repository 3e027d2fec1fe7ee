'use client';

import { keepFreeKindSchema, type SectionForm } from '@gusset/contracts/cargo';
import { type SurveyExtras, surveyExtrasSchema } from '@gusset/contracts/survey';
import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import { useAutosave } from '../../shared/data/use-autosave.ts';
import { Caution } from '../../shared/marks/caution.tsx';
import { SaveState } from '../../shared/marks/save-state.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { usePerson } from '../../shared/shell/person.tsx';
import { AcrossFields, PlusMinusField } from './across-fields.tsx';
import { BeyondFields } from './beyond-fields.tsx';
import { ExtrasList } from './extras-list.tsx';
import { FreeOutline } from './free-outline.tsx';
import styles from './measuring-screen.module.css';
import { MovingFields, OffAsMeasured } from './moving-fields.tsx';
import { OutlineFields, SignedLength } from './outline-fields.tsx';
import { newKeepFree, newNarrowing, newObstruction, newState } from './outline-parts.ts';
import type { SurveyAnswer } from './photo-upload.ts';
import { SoftWallList } from './soft-wall-list.tsx';
import { StateFields } from './state-fields.tsx';

const KEEP_FREE_WORDS: Readonly<Record<SurveyExtras['keepFree'][number]['kind'], string>> = {
  'seat-belt': 'Seat belt',
  'child-seat-tether': 'Child-seat tether',
  airbag: 'Airbag',
  'spare-wheel': 'Spare wheel',
  jack: 'Jack and tools',
  vent: 'Vent',
  'release-handle': 'Release handle inside',
  exit: 'Way out for people',
  other: 'Something else',
};
const APPLIES_WORDS: Readonly<Record<SurveyExtras['obstructions'][number]['appliesTo'], string>> = {
  fit: 'The box in its place',
  motion: 'The way in only',
  both: 'Both',
};

export type ExtrasEditorProps = {
  readonly form: SectionForm;
  readonly survey: SurveyAnswer;
  readonly isReadOnly: boolean;
  readonly onAnswer: (survey: SurveyAnswer) => void;
};

/** What stands in the space beside its walls. Starts anew when someone else changed it and nothing is typed here. */
export function ExtrasEditor(props: ExtrasEditorProps) {
  const { survey } = props;
  // The version that this screen itself saved last: only a later one is somebody else's.
  const own = useRef(survey.version);
  const shown = useRef({ version: survey.version, generation: 0 });
  const isIdle = useRef(true);
  if (survey.version !== shown.current.version) {
    const isForeign = survey.version !== own.current && isIdle.current;
    shown.current = { version: survey.version, generation: shown.current.generation + (isForeign ? 1 : 0) };
  }
  return <OpenExtras key={`${survey.id} ${shown.current.generation}`} {...props} own={own} isIdle={isIdle} />;
}

type OpenExtrasProps = ExtrasEditorProps & {
  readonly own: { current: number };
  readonly isIdle: { current: boolean };
};

function OpenExtras({ form, survey, isReadOnly, onAnswer, own, isIdle }: OpenExtrasProps) {
  const person = usePerson();
  const client = useTRPCClient();
  const trpc = useTRPC();
  const queries = useQueryClient();
  const [surveyId] = useState(survey.id);
  const autosave = useAutosave<SurveyExtras>({
    key: { userId: person.userId, shopId: person.shopId, document: `survey extras ${surveyId}` },
    start: { value: survey.extras, version: survey.version },
    readDraft: (kept) => surveyExtrasSchema.safeParse(kept).data ?? null,
    async save(extras, version) {
      const answer = await client.survey.setExtras.mutate({ surveyId, version, extras });
      own.current = answer.version;
      queries.setQueryData(trpc.survey.read.queryKey({ surveyId: answer.id }), answer);
      onAnswer(answer);
      return answer;
    },
  });
  isIdle.current = autosave.status.kind === 'idle' || autosave.status.kind === 'saved';
  const extras = autosave.value;
  const change = (changes: Partial<SurveyExtras>) => {
    const next = { ...extras, ...changes };
    autosave.change(next);
    // The drawing follows what is typed, not what has been answered.
    queries.setQueryData<SurveyAnswer>(trpc.survey.read.queryKey({ surveyId: survey.id }), (now) =>
      now === undefined || next.free !== now.extras.free ? now : { ...now, extras: next },
    );
  };
  const { conflict } = autosave;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: leaving any field sends what was typed; nothing to press.
    <div className={styles.extras} onBlur={autosave.onBlur}>
      <SaveState status={autosave.status} onResolve={() => autosave.resolve(extras)} />
      {conflict === null ? null : (
        <Verdict
          tone="check"
          words={`${conflict.savedBy ?? 'Someone else'} changed what stands in the space meanwhile`}
        >
          <Button
            onPress={() => {
              const theirs = Object.fromEntries(
                conflict.differences.map(({ field, theirs: value }) => [field, value]),
              );
              const kept = surveyExtrasSchema.safeParse({ ...extras, ...theirs });
              if (kept.success) autosave.resolve(kept.data);
            }}
          >
            Keep theirs
          </Button>{' '}
          <Button onPress={() => autosave.resolve(extras)}>Keep mine</Button>
        </Verdict>
      )}
      {autosave.error === null ? null : <Verdict tone="fail" words={autosave.error.message} />}
      {extras.free === null ? null : (
        <FreeOutline free={extras.free} isReadOnly={isReadOnly} onChange={(free) => change({ free })} />
      )}
      <ExtrasList
        title="In the way"
        empty="Hinge arms, struts, the wheel-well edge: what a box would meet."
        addWords="Add something in the way"
        parts={extras.obstructions}
        isReadOnly={isReadOnly}
        onChange={(obstructions) => change({ obstructions })}
        make={newObstruction}
      >
        {(part, set) => (
          <>
            <OutlineFields
              corners={part.corners}
              onChange={(corners) => set({ corners })}
              isReadOnly={isReadOnly}
            />
            <AcrossFields part={part} set={set} isReadOnly={isReadOnly} />
            <Select
              label="Counts for"
              options={(['fit', 'motion', 'both'] as const).map((id) => ({ id, label: APPLIES_WORDS[id] }))}
              value={part.appliesTo}
              onChange={(appliesTo) => set({ appliesTo })}
              isDisabled={isReadOnly}
            />
            <MovingFields part={part} set={set} isReadOnly={isReadOnly} />
          </>
        )}
      </ExtrasList>
      <ExtrasList
        title="Keep free"
        empty="Belts, tethers, airbags, vents, spare wheel, release handle: what must work afterwards."
        addWords="Add a zone to keep free"
        parts={extras.keepFree}
        isReadOnly={isReadOnly}
        onChange={(keepFree) => change({ keepFree })}
        make={newKeepFree}
        foot={
          <Caution>
            Nothing of seats, belts, airbags and child-seat anchors is moved, loaded or covered.
          </Caution>
        }
      >
        {(part, set) => (
          <>
            <Select
              label="What it is"
              options={keepFreeKindSchema.options.map((id) => ({ id, label: KEEP_FREE_WORDS[id] }))}
              value={part.kind}
              onChange={(kind) => set({ kind })}
              isDisabled={isReadOnly}
            />
            <OutlineFields
              corners={part.corners}
              onChange={(corners) => set({ corners })}
              isReadOnly={isReadOnly}
            />
            <AcrossFields part={part} set={set} isReadOnly={isReadOnly} />
            <OffAsMeasured part={part} set={set} isReadOnly={isReadOnly} />
          </>
        )}
      </ExtrasList>
      <ExtrasList
        title="Narrower places"
        empty="Where trim or a side pocket stands in further than the widths above say."
        addWords="Add a narrower place"
        parts={extras.narrowings}
        isReadOnly={isReadOnly}
        onChange={(narrowings) => change({ narrowings })}
        make={newNarrowing}
      >
        {(part, set) => (
          <>
            <OutlineFields
              corners={part.corners}
              onChange={(corners) => set({ corners })}
              isReadOnly={isReadOnly}
            />
            <FieldGrid cellMinPx={150}>
              <SignedLength
                label="Width there"
                value={part.width}
                minMm={1}
                onCommit={(width) => set({ width })}
                isReadOnly={isReadOnly}
              />
              <PlusMinusField
                value={part.plusMinusMm}
                onCommit={(plusMinusMm) => set({ plusMinusMm })}
                isReadOnly={isReadOnly}
              />
            </FieldGrid>
          </>
        )}
      </ExtrasList>
      <SoftWallList
        form={form}
        softWalls={extras.softWalls ?? []}
        onChange={(softWalls) => change({ softWalls: softWalls.length === 0 ? undefined : softWalls })}
        isReadOnly={isReadOnly}
      />
      <BeyondFields
        beyond={extras.beyond}
        onChange={(beyond) => change({ beyond })}
        isReadOnly={isReadOnly}
      />
      <ExtrasList
        title="Other seats and floor"
        empty="Seat folded, floor panel out: measure what differs; sheet 02 chooses the state."
        addWords="Add a state of seats and floor"
        parts={extras.states}
        isReadOnly={isReadOnly}
        onChange={(states) => change({ states })}
        make={newState}
      >
        {(part, set) => (
          <StateFields
            state={part}
            form={form}
            readings={survey.readings}
            extras={extras}
            set={set}
            isReadOnly={isReadOnly}
          />
        )}
      </ExtrasList>
    </div>
  );
}
