'use client';

import type { SurveyFacts, SurveyInput, SurveyResult, SurveySnapshot } from '@gusset/contracts/survey';
import { formatShopDate } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { Button } from '../../shared/controls/button.tsx';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextArea } from '../../shared/controls/text-area.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { fieldError } from '../../shared/data/shop-error.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import type { JobSheet } from '../../shared/job/use-job-sheet.ts';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { spokenFindings } from '../../shared/survey/finding-words.ts';
import { plusMinusWords, valueWords } from '../../shared/survey/reading-words.ts';
import { CarFields } from './car-fields.tsx';
import { revisionTitle } from './revision-title.ts';

const LENGTH = { unit: 'length' } as const;
/** Steps of a rounded corner: the drawing shows them, a list of them says nothing. */
const BEND = /-(front|rear)-\d+$/u;

export type SurveyNotesProps = {
  readonly job: OpenedJob['job'];
  readonly sheet: JobSheet<SurveyInput, SurveyFacts, null, SurveyResult>;
  readonly survey: SurveySnapshot;
  readonly onChoose: (surveyId: string | null) => void;
};

/** Verdict first, then the way in, then what is pinned and what can be done about it. */
export function SurveyNotes({ job, sheet, survey, onChoose }: SurveyNotesProps) {
  const { input, change, changeNow, mayEdit, data } = sheet;
  const { newer } = data.facts;
  const { states } = survey.extras;
  const { shop } = useDisplay();
  return (
    <>
      <SurveyVerdict sheet={sheet} />
      {newer === null ? null : (
        <Verdict tone="check" words={`Revision ${newer.revision} of this space is settled`}>
          This sheet still reads revision {survey.revision}.
          {mayEdit ? (
            <Button onPress={() => onChoose(newer.surveyId)}>Use revision {newer.revision}</Button>
          ) : null}
        </Verdict>
      )}
      {sheet.outcome.state === 'ready' ? <WayIn result={sheet.outcome.result} /> : null}
      <Rows title="Measured">
        <Row label="By" isWords>
          {survey.takenBy === '' ? '–' : survey.takenBy}
        </Row>
        <Row label="On">{survey.takenOn === null ? '–' : formatShopDate(survey.takenOn, shop.locale)}</Row>
        <Row label="Revision">{survey.revision}</Row>
      </Rows>
      {job.vehicle === null ? null : (
        <PinnedChoice
          modelId={job.vehicle.modelId}
          pinned={survey}
          isReadOnly={!mayEdit}
          onChoose={onChoose}
        />
      )}
      {states.length === 0 ? null : (
        <Select
          label="Seats and floor"
          options={[
            { id: '', label: survey.seatState === '' ? 'As measured' : survey.seatState },
            ...states.map(({ id, name }) => ({ id, label: name })),
          ]}
          value={input.stateId ?? ''}
          onChange={(id) => changeNow({ stateId: id === '' ? null : id })}
          isDisabled={!mayEdit}
        />
      )}
      <CarFields sheet={sheet} survey={survey} />
      <LinkButton href={paths.survey(survey.surveyId)}>
        {mayEdit ? 'Measure on' : 'Open the survey'}
      </LinkButton>
      <TextArea
        label="Notes"
        isOptional
        rows={3}
        value={input.notes}
        onChange={(notes) => change({ notes })}
        isReadOnly={!mayEdit}
        error={fieldError(sheet.autosave.error, 'input.notes')}
      />
      <Caution>
        Check both sides of the floor before drilling, and keep belts, airbags and child-seat anchors as they
        are.
      </Caution>
    </>
  );
}

function SurveyVerdict({ sheet }: Pick<SurveyNotesProps, 'sheet'>) {
  const { lengthUnit, shop } = useDisplay();
  const { outcome } = sheet;
  if (outcome.state === 'incomplete') {
    return (
      <Verdict
        tone="check"
        words={outcome.missing.length === 1 ? 'One letter to go' : `${outcome.missing.length} letters to go`}
      >
        <ul>
          {outcome.missing.map(({ field, what }) => (
            <li key={field}>{what}</li>
          ))}
        </ul>
      </Verdict>
    );
  }
  if (outcome.state === 'refused') {
    return (
      <Verdict tone="fail" words="These readings leave no space">
        <ul>
          {outcome.refusals.map(({ field, why, allowed }) => (
            <li key={field}>
              {why}. Accepted: {allowed}.
            </li>
          ))}
        </ul>
      </Verdict>
    );
  }
  const { cavity, form, worthTaking } = outcome.result;
  const findings = spokenFindings(cavity.findings, form, {
    unit: lengthUnit,
    denominator: shop.inchDenominator,
  });
  const faults = findings.filter(({ tone }) => tone === 'fail');
  const others = findings.filter(({ tone }) => tone !== 'fail');
  return (
    <>
      {faults.length > 0 ? (
        <Verdict tone="fail" words="Readings contradict each other">
          <ul>
            {faults.map(({ id, words }) => (
              <li key={id}>{words}</li>
            ))}
          </ul>
        </Verdict>
      ) : (
        <Verdict tone={worthTaking.length > 0 ? 'check' : 'pass'} words="The section closes">
          {worthTaking.length > 0
            ? `Surer with ${worthTaking.map(({ letter }) => letter).join(', ')} taken too.`
            : 'Every letter that steadies a wall is taken.'}
        </Verdict>
      )}
      {others.length === 0 ? null : (
        <details>
          <summary>What is assumed or to check</summary>
          <ul>
            {others.map(({ id, words }) => (
              <li key={id}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function WayIn({ result }: { readonly result: SurveyResult }) {
  const { lengthUnit, shop } = useDisplay();
  const manner = { unit: lengthUnit, denominator: shop.inchDenominator };
  const { opening, walls, widthSlabs } = result.cavity;
  const sure = (mm: number, plusMinusMm: number) =>
    `${valueWords(LENGTH, mm, manner)} ${plusMinusWords(LENGTH, plusMinusMm, manner)}`;
  const plane = walls[opening.wallIndex];
  return (
    <Rows title="Way in">
      <Row label="Height, square to the way in">{sure(opening.heightMm, opening.heightPlusMinusMm)}</Row>
      <Row label="Width">{sure(opening.widthMm, opening.widthPlusMinusMm)}</Row>
      {plane === undefined ? null : (
        <Row label="Plane, worst and likely">
          {plusMinusWords(LENGTH, plane.plusMinusMm, manner)} /{' '}
          {plusMinusWords(LENGTH, plane.likelyPlusMinusMm, manner)}
        </Row>
      )}
      {widthSlabs
        .filter(({ id }) => !BEND.test(id))
        .map(({ id, name, zMinMm, zMaxMm, sidePlusMinusMm }) => (
          <Row key={id} label={`Width ${name}`}>
            {sure(zMaxMm - zMinMm, sidePlusMinusMm * 2)}
          </Row>
        ))}
    </Rows>
  );
}

type PinnedChoiceProps = {
  readonly modelId: string;
  readonly pinned: SurveySnapshot;
  readonly isReadOnly: boolean;
  readonly onChoose: (surveyId: string) => void;
};

/** Another space or revision; the pinned one is listed even where it was put away since. */
function PinnedChoice({ modelId, pinned, isReadOnly, onChoose }: PinnedChoiceProps) {
  const trpc = useTRPC();
  const { data } = useQuery(trpc.survey.ofModel.queryOptions({ modelId }));
  const listed = data?.surveys ?? [];
  const options = listed.map((survey) => ({ id: survey.id, label: revisionTitle(survey) }));
  const { surveyId, modelName, spaceName, seatState, revision } = pinned;
  const own = { id: surveyId, label: revisionTitle({ formName: modelName, spaceName, seatState, revision }) };
  return (
    <Select
      label="Survey"
      options={options.some(({ id }) => id === surveyId) ? options : [own, ...options]}
      value={surveyId}
      onChange={(id) => (id === surveyId ? undefined : onChoose(id))}
      isDisabled={isReadOnly}
    />
  );
}
