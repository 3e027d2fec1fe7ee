'use client';

import { sketchCavity } from '@gusset/cargo';
import { may } from '@gusset/contracts/access';
import type { SectionForm } from '@gusset/contracts/cargo';
import {
  asMeasurement,
  narrowingSlab,
  nextToTake,
  surveyForm,
  toKeepFreeZone,
  toObstruction,
} from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useCallback, useMemo, useState } from 'react';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import { type ShownError, shownError } from '../../shared/data/shop-error.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { paths } from '../../shared/paths.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { usePerson } from '../../shared/shell/person.tsx';
import { PHONE_WIDTH, useMediaQuery } from '../../shared/shell/use-media-query.ts';
import { figureWords } from '../../shared/survey/reading-words.ts';
import { SurveyDrawing } from '../../shared/survey/survey-drawing.tsx';
import { dimensionGroups } from './dimension-groups.ts';
import { DimensionRow } from './dimension-row.tsx';
import { ExtrasEditor } from './extras-editor.tsx';
import { MeasuringHeader } from './measuring-header.tsx';
import styles from './measuring-screen.module.css';
import { MeasuringVerdict } from './measuring-verdict.tsx';
import type { SurveyAnswer } from './photo-upload.ts';
import { ReadingConflict } from './reading-conflict.tsx';
import { dimensionOf, withActs } from './survey-acts.ts';
import { useEntry } from './use-entry.ts';
import { useSurveyActs } from './use-survey-acts.ts';

/** Another person's readings show up while one measures. */
const LOOK_AGAIN_MS = 8_000;

export type MeasuringScreenProps = { readonly start: SurveyAnswer };

/** A survey at the car: the section with its letters, and each of them to take. */
export function MeasuringScreen({ start }: MeasuringScreenProps) {
  const trpc = useTRPC();
  const { data: survey } = useQuery({
    ...trpc.survey.read.queryOptions({ surveyId: start.id }),
    initialData: start,
    refetchInterval: LOOK_AGAIN_MS,
  });
  const form = useMemo(
    () => surveyForm(survey.formKind, survey.extras.free),
    [survey.formKind, survey.extras.free],
  );
  if (isRefusal(form)) {
    return (
      <Page>
        <Verdict tone="fail" words="The outline of this free section does not hold together">
          {form.refusal.why}
        </Verdict>
      </Page>
    );
  }
  return <Measuring survey={survey} form={form} />;
}

type MeasuringProps = { readonly survey: SurveyAnswer; readonly form: SectionForm };

function Measuring({ survey, form }: MeasuringProps) {
  const router = useRouter();
  const person = usePerson();
  const say = useMessages();
  const client = useTRPCClient();
  const { lengthUnit, shop } = useDisplay();
  const isPhone = useMediaQuery(PHONE_WIDTH);
  const [error, setError] = useState<ShownError | null>(null);
  const [comparing, setComparing] = useState<string | null>(null);
  const isReadOnly = !may(person.role, 'survey.edit') || survey.archived;

  const onAnswer = useCallback(
    (answer: SurveyAnswer) => {
      if (answer.id !== survey.id && answer.revisions.some(({ id }) => id === survey.id)) {
        say(`Revision ${survey.revision} was settled: this is revision ${answer.revision} now.`);
        router.replace(paths.survey(answer.id));
      }
    },
    [router, say, survey.id, survey.revision],
  );
  const sending = useSurveyActs(survey.id, onAnswer);
  const ownActs = useMemo(() => {
    const revisions = new Set(survey.revisions.map(({ id }) => id));
    return sending.acts.filter((act) => revisions.has(act.surveyId));
  }, [sending.acts, survey.revisions]);
  const readings = useMemo(
    () => withActs(survey.readings, ownActs, person.name),
    [survey.readings, ownActs, person.name],
  );
  const byKey = useMemo(() => new Map(readings.map((reading) => [reading.key, reading])), [readings]);
  const sketch = useMemo(
    () =>
      sketchCavity(
        form,
        readings.map((reading) => asMeasurement(form, reading)),
      ),
    [form, readings],
  );
  const [activeKey, setActiveKey] = useState<string | null>(() => nextToTake(form, survey.readings, null));
  const [isTouched, setIsTouched] = useState(false);
  const active = form.dimensions.find(({ key }) => key === activeKey) ?? null;

  const entry = useEntry({
    dimension: active,
    reading: active === null ? null : (byKey.get(active.key) ?? null),
    onReading: (reading) =>
      void sending.setReading(reading, byKey.get(reading.key)?.version ?? 0).catch(fault),
    onCleared: () => active !== null && remove(active.key),
  });
  const fault = (thrown: unknown) => setError(shownError(thrown));
  const remove = (key: string) => {
    const reading = byKey.get(key);
    if (reading === undefined) return;
    void sending.removeReading(key, reading.version).catch(fault);
    say(`Reading ${form.dimensions.find((each) => each.key === key)?.letter ?? ''} removed.`, {
      undo: () => {
        const { takenBy: _by, takenAt: _at, version: _version, ...kept } = reading;
        void sending.setReading(kept, 0).catch(fault);
      },
    });
  };
  const select = (key: string | null) => {
    setIsTouched(true);
    if (entry.commit()) setActiveKey(key);
  };
  const goOn = () => {
    setIsTouched(true);
    if (!entry.commit()) return;
    const taken =
      activeKey === null || entry.text.trim() === '' ? readings : [...readings, { key: activeKey }];
    const next = nextToTake(form, taken, activeKey);
    setActiveKey(next);
    if (next === null) say('Every letter asked for is taken.');
  };
  const readingText = useCallback(
    (key: string) => {
      const dimension = form.dimensions.find((each) => each.key === key);
      const reading = byKey.get(key);
      if (isPhone || dimension === undefined || reading === undefined) return null;
      return figureWords(dimension, reading.value, { unit: lengthUnit, denominator: shop.inchDenominator });
    },
    [form, byKey, isPhone, lengthUnit, shop.inchDenominator],
  );
  const { obstructions, keepFree, narrowings } = survey.extras;
  const drawn = useMemo(
    () => ({
      obstructions: obstructions.map(toObstruction),
      keepFree: keepFree.map(toKeepFreeZone),
      narrowings: narrowings.map(narrowingSlab),
    }),
    [obstructions, keepFree, narrowings],
  );
  const drawing = {
    sketch,
    form,
    activeKey,
    readingText,
    showsAll: false,
    title: survey.modelName,
    ...drawn,
    onPressLetter: (letter: string) =>
      select(form.dimensions.find((each) => each.letter === letter)?.key ?? null),
  };
  const view = active?.drawing.view ?? 'section';
  const photosOf = (key: string | null) => survey.photos.filter((photo) => photo.measurementKey === key);
  const removePhoto = (photoId: string) => {
    client.survey.removePhoto
      .mutate({ photoId })
      .then(onAnswer)
      .catch(fault)
      .finally(() => void refresh());
  };
  const { refetch: refresh } = useQuery({
    ...useTRPC().survey.read.queryOptions({ surveyId: survey.id }),
    enabled: false,
  });

  return (
    <Page>
      <MeasuringHeader
        survey={survey}
        form={form}
        sending={sending}
        waiting={ownActs.length}
        isReadOnly={isReadOnly}
        onFault={setError}
      />
      {error === null ? null : <Verdict tone="fail" words={error.message} />}
      {sending.cannotKeep ? (
        <Verdict tone="check" words="This device cannot keep what you measure">
          Without a line, readings would be lost: leave private browsing or free some room.
        </Verdict>
      ) : null}
      <div className={styles.bench}>
        <section className={styles.drawings} aria-label="The space as far as it is measured">
          {isPhone ? (
            <SurveyDrawing {...drawing} view={view} widthPx={390} heightPx={264} />
          ) : (
            <>
              <SurveyDrawing {...drawing} view="section" widthPx={720} heightPx={440} />
              <SurveyDrawing {...drawing} view="plan" widthPx={720} heightPx={360} />
            </>
          )}
        </section>
        <section className={styles.letters} aria-label="Dimensions">
          <MeasuringVerdict
            survey={survey}
            form={form}
            sketch={sketch}
            readings={readings}
            onSelect={select}
          />
          {dimensionGroups(form).map(({ id, title, dimensions }) => (
            <section key={id} aria-label={title}>
              <h2 className={`caption ${styles.groupTitle}`}>{title}</h2>
              <ul className={styles.rows}>
                {dimensions.map((dimension) => (
                  <DimensionRow
                    key={dimension.key}
                    dimension={dimension}
                    reading={byKey.get(dimension.key) ?? null}
                    acts={ownActs.filter(
                      (act) =>
                        dimensionOf(act) === dimension.key ||
                        (act.kind === 'photo' && act.measurementKey === dimension.key),
                    )}
                    photos={photosOf(dimension.key)}
                    isActive={dimension.key === activeKey}
                    isReadOnly={isReadOnly}
                    takesFocus={isTouched}
                    entry={entry}
                    onSelect={() => select(dimension.key === activeKey ? null : dimension.key)}
                    onNext={goOn}
                    onRemove={() => remove(dimension.key)}
                    onCompare={() => setComparing(dimension.key)}
                    onPhoto={(photo) => void sending.addPhoto(photo, dimension.key).catch(fault)}
                    onRemovePhoto={removePhoto}
                  />
                ))}
              </ul>
            </section>
          ))}
          <ExtrasEditor form={form} survey={survey} isReadOnly={isReadOnly} onAnswer={onAnswer} />
        </section>
      </div>
      <ReadingConflict
        form={form}
        acts={ownActs}
        dimensionKey={comparing}
        onClose={() => setComparing(null)}
        onKeepTheirs={(act) => void sending.drop(act.id).then(() => refresh())}
        onKeepMine={(act, version) => void sending.sendOver(act, version).catch(fault)}
      />
    </Page>
  );
}
