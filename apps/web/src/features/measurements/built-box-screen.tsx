'use client';

import type { SweepView } from '@gusset/contracts/measurement';
import { formatLength } from '@gusset/units';
import { keepPreviousData, skipToken, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobIndex } from '../../shared/job/job-sheet-page.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import type { BuiltBox } from './built-box.ts';
import { BuiltDifferencesTable } from './built-differences-table.tsx';
import { builtVerdict, type ShowLength } from './measure-words.ts';
import styles from './measurements.module.css';
import { SweepChart } from './sweep-chart.tsx';
import { builtChart } from './sweep-charts.ts';
import { SweepChoice } from './sweep-choice.tsx';
import { SweepImport } from './sweep-import.tsx';

const USES = ['built-box', 'port-blocked'] as const;
const HOW_TO = {
  'built-box':
    'Everything in and screwed down, port open, box clear of walls. Sweep at the terminals at a few tenths of a volt, from 8 Hz or lower to at least 300 Hz.',
  'port-blocked':
    'The same box with its port stopped tight: the peak between the two gives the tuning a second way.',
} as const;

export type BuiltBoxScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['measurement']['job']['list'];
};

/** The box that was built, by its impedance, beside the one that was drawn. */
export function BuiltBoxScreen({ opened, start }: BuiltBoxScreenProps) {
  const trpc = useTRPC();
  const client = useTRPCClient();
  const queries = useQueryClient();
  const { shop, lengthUnit } = useDisplay();
  const mayMeasure = useMay('survey.edit');
  const { job } = opened;
  const listOptions = trpc.measurement.job.list.queryOptions({ jobId: job.id });
  const { data: sweeps = [] } = useQuery({ ...listOptions, initialData: start });
  const open = sweeps.filter(({ use }) => use === 'built-box');
  const shut = sweeps.filter(({ use }) => use === 'port-blocked');
  const [chosen, setChosen] = useState<{ open?: string; shut?: string | null }>({});
  const sweep = sweepOf(open, chosen.open);
  const blocked = chosen.shut === null ? null : sweepOf(shut, chosen.shut);
  const compare = useQuery({
    ...trpc.measurement.job.compare.queryOptions(
      sweep === null ? skipToken : { jobId: job.id, sweepId: sweep.id, blockedId: blocked?.id ?? null },
    ),
    placeholderData: keepPreviousData,
    retry: false,
  });
  const answer = sweep !== null && compare.isSuccess ? compare.data : null;
  const show: ShowLength = (mm) =>
    formatLength(mm, {
      unit: lengthUnit,
      denominator: shop.inchDenominator,
      ...(lengthUnit === 'mm' ? { digits: 0 } : {}),
    });
  return (
    <Page index={<JobIndex opened={opened} current="sound" />}>
      <PageHeader
        kicker={`Job ${job.number} · beside sheet 03`}
        title="Measure the built box"
        acts={<LinkButton href={paths.job(job.number, 'sound')}>Sheet 03 Sound</LinkButton>}
      />
      <SheetFrame
        viewCaption="Impedance over frequency · Ω"
        isStale={compare.isPlaceholderData}
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 2 },
          { caption: 'Customer', value: job.customer.name, span: 2 },
          { caption: 'Job', value: String(job.number), isFigures: true },
          { caption: 'Drawn', value: answer?.from.join(', ') ?? 'sheet 03', span: 2 },
          {
            caption: 'Swept',
            value: sweep?.takenOn ?? sweep?.importedAt.slice(0, 10) ?? 'not yet',
            isFigures: sweep !== null,
            ...(sweep === null ? { tone: 'pencil' as const } : {}),
          },
          { caption: 'By', value: sweep?.takenBy ?? 'nobody' },
        ]}
        notes={
          <div className={styles.notes}>
            <SweepChoice
              label="Built box"
              sweeps={open}
              value={sweep?.id ?? null}
              onChange={(id) => setChosen(id === null ? chosen : { ...chosen, open: id })}
            />
            <SweepChoice
              label="With the port blocked"
              sweeps={shut}
              value={blocked?.id ?? null}
              without="None"
              onChange={(id) => setChosen({ ...chosen, shut: id })}
            />
            {answer === null ? null : <HowSure answer={answer} />}
            <Caution>
              Sweep quietly: at full power near the tuning a port blows hard and a cone can strike.
            </Caution>
          </div>
        }
      >
        <div className={styles.view}>
          {sweep === null ? (
            <EmptyState title="Not measured yet">
              Sweep the impedance of the finished box. Its air, tuning and leaks follow from the curve and are
              laid beside the drawing.
            </EmptyState>
          ) : (
            <>
              {answer === null ? null : <BuiltVerdictMark answer={answer} show={show} />}
              {compare.isError ? <Verdict tone="fail" words={shownError(compare.error).message} /> : null}
              <SweepChart input={builtChart(sweep.columns, answer)} />
              {answer === null ? (
                compare.isPending ? (
                  <Skeleton lines={6} what="Fitting the box" />
                ) : null
              ) : (
                <BuiltDifferencesTable differences={answer.differences} show={show} />
              )}
            </>
          )}
        </div>
      </SheetFrame>
      {mayMeasure ? (
        <SweepImport
          title="Take in a sweep"
          uses={USES}
          howTo={HOW_TO}
          send={async (key, draft) => {
            const { reading } = await client.measurement.job.import.mutate({
              key,
              sweep: { ...draft, jobId: job.id },
            });
            await queries.invalidateQueries({ queryKey: listOptions.queryKey });
            return reading;
          }}
        />
      ) : null}
    </Page>
  );
}

function BuiltVerdictMark({ answer, show }: { readonly answer: BuiltBox; readonly show: ShowLength }) {
  const { tone, words } = builtVerdict(answer, show);
  return (
    <Verdict tone={tone} words={words}>
      The fit leaves {answer.residualPercent.toFixed(1)} % of the curve. Drawn as in{' '}
      {answer.from.join(' and ')}.
    </Verdict>
  );
}

/** What the figures hang on. */
function HowSure({ answer }: { readonly answer: BuiltBox }) {
  const { litresPerResonancePercent: drift, threePeaks } = answer;
  return (
    <>
      {drift === null ? null : (
        <p>
          A closed box shows one peak, so the driver’s own resonance is taken from its sheet. If that is a
          percent higher in truth, the box is {Math.abs(drift).toFixed(1)} L{' '}
          {drift > 0 ? 'larger' : 'smaller'}. Sweep the driver in free air to be sure.
        </p>
      )}
      {threePeaks === null ? null : (
        <Rows title="Tuning by three peaks">
          <Row label="Lower, upper">
            {threePeaks.lowerHz.toFixed(1)}, {threePeaks.upperHz.toFixed(1)} Hz
          </Row>
          <Row label="Port blocked">{threePeaks.blockedHz.toFixed(1)} Hz</Row>
          <Row label="Tuning" isTotal>
            {threePeaks.tuningHz.toFixed(1)} Hz
          </Row>
        </Rows>
      )}
    </>
  );
}

/** The chosen one, else the newest: they come newest first. */
function sweepOf(sweeps: readonly SweepView[], chosenId: string | undefined): SweepView | null {
  return sweeps.find(({ id }) => id === chosenId) ?? sweeps[0] ?? null;
}
