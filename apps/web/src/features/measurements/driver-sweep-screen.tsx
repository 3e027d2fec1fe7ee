'use client';

import type { SweepView } from '@gusset/contracts/measurement';
import { keepPreviousData, skipToken, useQuery, useQueryClient } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Caution } from '../../shared/marks/caution.tsx';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { paths } from '../../shared/paths.ts';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { type Bench, benchOf, startBench } from './driver-bench.ts';
import { DriverBenchFields } from './driver-bench-fields.tsx';
import { DriverFiguresTable } from './driver-figures-table.tsx';
import { DriverFitVerdict, PeakReadingRows } from './driver-fit-verdict.tsx';
import styles from './measurements.module.css';
import { SweepChart } from './sweep-chart.tsx';
import { driverChart } from './sweep-charts.ts';
import { SweepChoice } from './sweep-choice.tsx';
import { SweepImport } from './sweep-import.tsx';

const DRIVERS = 'drivers';
const USES = ['free-air', 'added-mass', 'known-box'] as const;
const HOW_TO = {
  'free-air':
    'Hang or clamp the driver clear of walls, cone upright, and sweep at a few tenths of a volt from 5 Hz or lower to at least 300 Hz.',
  'added-mass':
    'Press putty or magnets of known mass evenly round the cone, so that the resonance falls to about three quarters, and sweep at the same level.',
  'known-box':
    'Screw the driver to a tight, unlined box about as large as half its Vas, and sweep at the same level.',
} as const;

export type DriverSweepScreenProps = {
  readonly driver: ApiOutputs['part']['driver']['read'];
  readonly start: ApiOutputs['measurement']['driver']['list'];
};

/** A driver's figures from its impedance: swept, fitted, laid beside what its sheet says. */
export function DriverSweepScreen({ driver, start }: DriverSweepScreenProps) {
  const trpc = useTRPC();
  const client = useTRPCClient();
  const queries = useQueryClient();
  const router = useRouter();
  const say = useMessages();
  const { shop } = useDisplay();
  const mayEdit = useMay('catalogue.edit');
  const listOptions = trpc.measurement.driver.list.queryOptions({ driverId: driver.id });
  const { data: sweeps = [] } = useQuery({ ...listOptions, initialData: start });
  const freeAirs = sweeps.filter(({ use }) => use === 'free-air');
  const seconds = sweeps.filter(({ use }) => use !== 'free-air');
  const [chosen, setChosen] = useState<{ freeAir?: string; second?: string | null }>({});
  const freeAir = sweepOf(freeAirs, chosen.freeAir);
  const second = chosen.second === null ? null : sweepOf(seconds, chosen.second);
  const [bench, setBench] = useState<Bench>(() => startBench(driver.figures.dataSheet));
  const asked =
    freeAir === null
      ? null
      : { driverId: driver.id, freeAirId: freeAir.id, secondId: second?.id ?? null, bench: benchOf(bench) };
  const fit = useQuery({
    ...trpc.measurement.driver.fit.queryOptions(asked ?? skipToken),
    placeholderData: keepPreviousData,
    retry: false,
  });
  const answer = asked !== null && fit.isSuccess ? fit.data : null;
  const problem = fit.isError ? shownError(fit.error) : null;
  const [isTaking, setIsTaking] = useState(false);
  const take = async () => {
    if (asked === null) return;
    setIsTaking(true);
    try {
      await client.measurement.driver.take.mutate({ ...asked, version: driver.version });
      say('The measured figures stand in the catalogue; the ones before are in the record.');
      router.refresh();
    } catch (failure) {
      say(shownError(failure).message, { tone: 'trouble' });
    } finally {
      setIsTaking(false);
    }
  };
  const name = [driver.maker, driver.name].filter((word) => word !== '').join(' ');
  return (
    <Page>
      <PageHeader
        kicker={`Parts · Drivers · ${name}`}
        title="From an impedance sweep"
        acts={
          <>
            <LinkButton href={paths.cataloguePart(DRIVERS, driver.id)}>The driver</LinkButton>
            {mayEdit && answer !== null ? (
              <Button look="primary" isPending={isTaking} onPress={() => void take()}>
                Take these figures
              </Button>
            ) : null}
          </>
        }
      />
      <SheetFrame
        viewCaption="Impedance over frequency · Ω"
        isStale={fit.isPlaceholderData}
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 2 },
          { caption: 'Driver', value: name, span: 3 },
          {
            caption: 'Swept',
            value: freeAir?.takenOn ?? freeAir?.importedAt.slice(0, 10) ?? 'not yet',
            isFigures: freeAir !== null,
          },
          {
            caption: 'By',
            value: freeAir?.takenBy ?? 'nobody',
            ...(freeAir === null ? { tone: 'pencil' as const } : {}),
          },
        ]}
        notes={
          <div className={styles.notes}>
            <SweepChoice
              label="In free air"
              sweeps={freeAirs}
              value={freeAir?.id ?? null}
              onChange={(id) => setChosen(id === null ? chosen : { ...chosen, freeAir: id })}
            />
            <SweepChoice
              label="Once more, for Vas and the mass"
              sweeps={seconds}
              value={second?.id ?? null}
              without="Free air alone"
              onChange={(id) => setChosen({ ...chosen, second: id })}
            />
            <DriverBenchFields
              bench={bench}
              onChange={setBench}
              coils={driver.figures.dataSheet.coils}
              error={problem}
            />
            {answer === null ? null : <PeakReadingRows agreement={answer.agreement} />}
            <Caution>Small signal only: a cone driven hard near its resonance hits its stops.</Caution>
          </div>
        }
      >
        <div className={styles.view}>
          {freeAir === null ? (
            <EmptyState title="Nothing swept yet">
              Take in a sweep of this driver in free air. Its resonance, Qs and coil follow from it; with
              added mass or a known box its Vas does too.
            </EmptyState>
          ) : (
            <>
              {answer === null ? null : (
                <DriverFitVerdict answer={answer} stated={driver.figures.dataSheet} />
              )}
              {problem === null ? null : <Verdict tone="fail" words={problem.message} />}
              <SweepChart input={driverChart(freeAir.columns, second?.columns ?? null, answer)} />
              {answer === null ? (
                fit.isPending ? (
                  <Skeleton lines={6} what="Fitting the curve" />
                ) : null
              ) : (
                <DriverFiguresTable stated={driver.figures.dataSheet} answer={answer} />
              )}
            </>
          )}
        </div>
      </SheetFrame>
      {mayEdit ? (
        <SweepImport
          title="Take in a sweep"
          uses={USES}
          howTo={HOW_TO}
          send={async (key, sweep) => {
            const { reading } = await client.measurement.driver.import.mutate({
              key,
              sweep: { ...sweep, driverId: driver.id },
            });
            await queries.invalidateQueries({ queryKey: listOptions.queryKey });
            return reading;
          }}
        />
      ) : null}
    </Page>
  );
}

/** The chosen one, else the newest: they come newest first. */
function sweepOf(sweeps: readonly SweepView[], chosenId: string | undefined): SweepView | null {
  return sweeps.find(({ id }) => id === chosenId) ?? sweeps[0] ?? null;
}
