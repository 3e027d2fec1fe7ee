'use client';

import { type SweepView, type TransferSetting, transferSettingSchema } from '@gusset/contracts/measurement';
import { keepPreviousData, skipToken, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Caution } from '../../shared/marks/caution.tsx';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { CarSweepsTable } from './car-sweeps-table.tsx';
import { besideWords, lettered, transferVerdict } from './car-words.ts';
import { KeepTransferForm } from './keep-transfer-form.tsx';
import { KeptTransfers } from './kept-transfers.tsx';
import styles from './measurements.module.css';
import { SweepChart } from './sweep-chart.tsx';
import { overlayChart, transferChart } from './sweep-charts.ts';
import { SweepImport } from './sweep-import.tsx';
import { TransferSettingFields } from './transfer-setting-fields.tsx';
import { startTrial, wholeTrial } from './trial-box.ts';
import { TrialBoxFields } from './trial-box-fields.tsx';

const USES = ['in-car', 'near-cone', 'background-noise', 'microphone-calibration'] as const;
const HOW_TO = {
  'in-car':
    'Microphone where the head will be, doors and tailgate shut as when driving, nobody inside. One file for each place and direction of the trial box, all at the same gain.',
  'near-cone':
    'Microphone a finger’s breadth from the middle of the cone, same gain, same box: it sets the level.',
  'background-noise': 'The same microphone and gain with nothing playing, everything off that can be off.',
  'microphone-calibration': 'The curve that came with the microphone: frequency and its deviation in dB.',
} as const;

export type InCarScreenProps = {
  readonly model: ApiOutputs['vehicleModel']['read'];
  readonly start: ApiOutputs['measurement']['vehicleModel']['list'];
  readonly transfers: ApiOutputs['measurement']['vehicleModel']['transfers'];
};

/** What a model of vehicle does to the sound: swept at several places, overlaid, kept for every later job. */
export function InCarScreen({ model, start, transfers }: InCarScreenProps) {
  const trpc = useTRPC();
  const client = useTRPCClient();
  const queries = useQueryClient();
  const { shop } = useDisplay();
  const mayEdit = useMay('vehicle.edit');
  const listOptions = trpc.measurement.vehicleModel.list.queryOptions({ modelId: model.id });
  const keptOptions = trpc.measurement.vehicleModel.transfers.queryOptions({ modelId: model.id });
  const { data: sweeps = [] } = useQuery({ ...listOptions, initialData: start });
  const { data: kept = [] } = useQuery({ ...keptOptions, initialData: transfers });
  const inCar = sweeps.filter(({ use }) => use === 'in-car');
  const [chosen, setChosen] = useState<readonly string[] | null>(null);
  const chosenIds = (chosen ?? sameTrialAsNewest(inCar)).filter((id) =>
    inCar.some((sweep) => sweep.id === id),
  );
  const [setting, setSetting] = useState<TransferSetting>(() => transferSettingSchema.parse({}));
  const bandError = transferSettingSchema.safeParse(setting).error?.issues[0]?.message ?? null;
  const worked = useQuery({
    ...trpc.measurement.vehicleModel.workOut.queryOptions(
      chosenIds.length === 0 || bandError !== null
        ? skipToken
        : { modelId: model.id, sweepIds: [...chosenIds], setting },
    ),
    placeholderData: keepPreviousData,
    retry: false,
  });
  const answer = chosenIds.length > 0 && worked.isSuccess ? worked.data : null;
  const inOrder = lettered(inCar, answer);
  const letterOf = (sweepId: string) => inOrder.find(({ sweep }) => sweep.id === sweepId)?.letter ?? '';
  const [trial, setTrial] = useState(() => startTrial(start));
  const name = `${model.make} ${model.model}`;
  const [latest] = kept;
  // What stands kept is the answer until somebody chooses anew.
  const isTrying = chosen !== null || latest === undefined;
  const now = isTrying ? (answer?.transfer ?? null) : null;
  const verdict = transferVerdict(now, latest ?? null);
  const refresh = () => queries.invalidateQueries({ queryKey: listOptions.queryKey });
  return (
    <Page>
      <PageHeader
        kicker={`Vehicle models · ${name}`}
        title="In this car"
        acts={<LinkButton href={paths.vehicleModel(model.id)}>The model</LinkButton>}
      />
      <SheetFrame
        viewCaption="Level over frequency · dB"
        isStale={worked.isPlaceholderData}
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 2 },
          { caption: 'Vehicle', value: name, span: 3 },
          { caption: 'Sweeps', value: inCar.length, isFigures: true },
          {
            caption: 'Counts for jobs',
            value: latest === undefined ? 'nothing kept' : `measurement ${latest.revision}`,
            span: 2,
            ...(latest === undefined ? { tone: 'pencil' as const } : {}),
          },
        ]}
        notes={
          <div className={styles.notes}>
            {now !== null && mayEdit ? (
              <KeepTransferForm
                model={model.id}
                sweeps={inCar.filter(({ id }) => chosenIds.includes(id))}
                setting={setting}
                onKept={async () => {
                  await queries.invalidateQueries({ queryKey: keptOptions.queryKey });
                  setChosen(null);
                }}
              />
            ) : null}
            <KeptTransfers transfers={kept} />
            <Caution>
              Sweeps are loud in a closed car. Nobody sits inside; start low; wear hearing protection near it.
            </Caution>
          </div>
        }
      >
        <div className={styles.view}>
          <Verdict tone={verdict.tone} words={verdict.words}>
            {verdict.detail}
          </Verdict>
          {worked.isError ? <Verdict tone="fail" words={shownError(worked.error).message} /> : null}
          {inCar.length === 0 ? (
            <EmptyState title="No sweeps in this car yet">
              Put a trial box in the places it could go, sweep each one, and the car’s own lift comes out: a
              measurement in place of an estimate, for every later job in a car like this.
            </EmptyState>
          ) : (
            <>
              {answer === null ? null : <SweepChart input={overlayChart(answer, letterOf)} />}
              {chosenIds.length > 0 && worked.isPending ? (
                <Skeleton lines={6} what="Working out the car" />
              ) : null}
              <CarSweepsTable
                sweeps={inOrder}
                chosenIds={chosenIds}
                onChoose={setChosen}
                answer={answer}
                putAway={
                  mayEdit
                    ? async (sweepId) => {
                        await client.measurement.vehicleModel.archive.mutate({ sweepId, archived: true });
                        await refresh();
                        return async () => {
                          await client.measurement.vehicleModel.archive.mutate({ sweepId, archived: false });
                          await refresh();
                        };
                      }
                    : null
                }
              />
              <p className={styles.how}>{besideWords(answer?.used ?? null)}</p>
              <TransferSettingFields setting={setting} onChange={setSetting} bandError={bandError} />
            </>
          )}
          {now !== null || latest !== undefined ? (
            <SweepChart input={transferChart(now, latest ?? null)} />
          ) : null}
        </div>
      </SheetFrame>
      {mayEdit && !model.archived ? (
        <SweepImport
          title="Take in a sweep"
          uses={USES}
          howTo={HOW_TO}
          trial={{
            fields: <TrialBoxFields trial={trial} onChange={setTrial} />,
            value: wholeTrial(trial),
          }}
          send={async (key, sweep) => {
            const { reading } = await client.measurement.vehicleModel.import.mutate({
              key,
              sweep: { ...sweep, modelId: model.id },
            });
            setChosen(null);
            await refresh();
            return reading;
          }}
        />
      ) : null}
    </Page>
  );
}

/** Every sweep of the trial box that played last: those can be laid over each other. */
function sameTrialAsNewest(inCar: readonly SweepView[]): readonly string[] {
  const says = ({ conditions: { trial } }: SweepView) =>
    trial === null ? '' : [trial.driverId, trial.net.litres, trial.tuning?.hz, trial.drive.volts].join(' ');
  const [newest] = inCar;
  return newest === undefined
    ? []
    : inCar.filter((sweep) => says(sweep) === says(newest)).map(({ id }) => id);
}
