'use client';

import { compareSurveys } from '@gusset/cargo';
import type { DimensionComparison } from '@gusset/contracts/cargo';
import { asMeasurement, surveyForm } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Select } from '../../shared/controls/select.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { plusMinusWords, valueWords } from '../../shared/survey/reading-words.ts';
import styles from './compare-spaces.module.css';

type SurveyHead = ApiOutputs['survey']['ofModel']['surveys'][number];
type Survey = ApiOutputs['survey']['read'];

const VERDICT_WORDS: Readonly<Record<DimensionComparison['verdict'], string>> = {
  agrees: 'agrees',
  differs: 'differs',
  'only-first': 'first only',
  'only-second': 'second only',
};

/** Two surveys of one form, letter by letter. Shown where the model has two to compare. */
export function CompareSpaces({ surveys }: { readonly surveys: readonly SurveyHead[] }) {
  const comparable = surveys.filter((one) =>
    surveys.some((other) => other.id !== one.id && other.formKind === one.formKind),
  );
  const [chosen, setChosen] = useState<{ readonly first: string; readonly second: string } | null>(null);
  const start = comparable[0];
  if (start === undefined) return null;
  const partnersOf = (id: string) => {
    const kind = comparable.find((each) => each.id === id)?.formKind;
    return comparable.filter((each) => each.id !== id && each.formKind === kind);
  };
  // The older one first: what differs then reads as what has changed since.
  const second = chosen?.second ?? start.id;
  const first = chosen?.first ?? partnersOf(second)[0]?.id ?? second;
  const chooseSecond = (id: string) => {
    const partners = partnersOf(id);
    const kept = partners.find((each) => each.id === first) ?? partners[0];
    if (kept !== undefined) setChosen({ first: kept.id, second: id });
  };
  return (
    <section className={styles.compare} aria-label="Two surveys compared">
      <h2>Two surveys, letter by letter</h2>
      <div className={styles.choice}>
        <Select
          label="Survey"
          options={comparable.map((each) => ({ id: each.id, label: titleOf(each) }))}
          value={second}
          onChange={chooseSecond}
        />
        <Select
          label="Against"
          options={partnersOf(second).map((each) => ({ id: each.id, label: titleOf(each) }))}
          value={first}
          onChange={(id) => setChosen({ first: id, second })}
        />
      </div>
      <Comparison firstId={first} secondId={second} />
    </section>
  );
}

function titleOf({ formName, spaceName, seatState, revision }: SurveyHead): string {
  return [spaceName === '' ? formName : spaceName, seatState, `revision ${revision}`]
    .filter((part) => part !== '')
    .join(' · ');
}

function Comparison({ firstId, secondId }: { readonly firstId: string; readonly secondId: string }) {
  const trpc = useTRPC();
  const first = useQuery(trpc.survey.read.queryOptions({ surveyId: firstId }));
  const second = useQuery(trpc.survey.read.queryOptions({ surveyId: secondId }));
  const error = first.error ?? second.error;
  if (error !== null) return <Verdict tone="fail" words={shownError(error).message} />;
  if (first.data === undefined || second.data === undefined) {
    return <Skeleton lines={6} what="Fetching both surveys" />;
  }
  return <ComparisonTable first={first.data} second={second.data} />;
}

function ComparisonTable({ first, second }: { readonly first: Survey; readonly second: Survey }) {
  const { lengthUnit, shop } = useDisplay();
  const manner = { unit: lengthUnit, denominator: shop.inchDenominator };
  const form = surveyForm(second.formKind, second.extras.free);
  if (isRefusal(form)) return <Verdict tone="check" words="This section has no outline yet" />;
  const takenOf = ({ readings }: Survey) => readings.map((reading) => asMeasurement(form, reading));
  const rows = compareSurveys(form, takenOf(first), takenOf(second));
  const differing = rows.filter(({ verdict }) => verdict === 'differs');
  const side = (row: DimensionComparison, taken: DimensionComparison['first']) =>
    taken === null
      ? '–'
      : `${valueWords(row, taken.value, manner)} ${plusMinusWords(row, taken.plusMinus, manner)}`;
  return (
    <>
      {rows.length === 0 ? (
        <Verdict tone="check" words="Neither has a letter taken" />
      ) : differing.length === 0 ? (
        <Verdict tone="pass" words="They agree within their ±" />
      ) : (
        <Verdict
          tone="check"
          words={`${differing.length} of ${rows.length} letters differ by more than both ± explain`}
        >
          Another car, another trim, or a reading to take again:{' '}
          {differing.map(({ letter }) => letter).join(', ')}.
        </Verdict>
      )}
      {rows.length === 0 ? null : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key.
        <section className={styles.room} aria-label="Letters of both surveys" tabIndex={0}>
          <table className={styles.table}>
            <thead>
              <tr>
                <th scope="col">Letter</th>
                <th scope="col">Apart</th>
                <th scope="col">Against</th>
                <th scope="col">Survey</th>
                <th scope="col">Both ±</th>
                <th scope="col">Verdict</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.key} data-differs={row.verdict === 'differs'}>
                  <th scope="row">
                    {row.letter} <small>{row.label}</small>
                  </th>
                  <td className="figures">
                    {row.difference === null ? '–' : valueWords(row, row.difference, manner)}
                  </td>
                  <td className="figures">{side(row, row.first)}</td>
                  <td className="figures">{side(row, row.second)}</td>
                  <td className="figures">
                    {row.allowed === null ? '–' : plusMinusWords(row, row.allowed, manner)}
                  </td>
                  <td>{VERDICT_WORDS[row.verdict]}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </>
  );
}
