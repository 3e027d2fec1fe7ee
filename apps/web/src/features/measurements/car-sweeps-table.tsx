'use client';

import type { SweepView, TransferAnswer } from '@gusset/contracts/measurement';
import { Button } from '../../shared/controls/button.tsx';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { classNames } from '../../shared/controls/class-names.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { type LetteredSweep, placeName } from './car-words.ts';
import { rejectionWords } from './measure-words.ts';
import styles from './measurements.module.css';
import { sweepDetail } from './sweep-choice.tsx';

/** Read off the overlay at these; the nearest points are shown. */
const READ_AT_HZ = [25, 40, 63, 100] as const;

export type CarSweepsTableProps = {
  /** In the order of the table, each with the letter that stands at its curve. */
  readonly sweeps: readonly LetteredSweep[];
  readonly chosenIds: readonly string[];
  readonly onChoose: (ids: readonly string[]) => void;
  readonly answer: TransferAnswer | null;
  /** Answers how to bring it back; null = this person may not. */
  readonly putAway: ((sweepId: string) => Promise<() => Promise<void>>) | null;
};

/** The sweeps one by one: which count, how loud each is where it matters, and why one does not count. */
export function CarSweepsTable({ sweeps, chosenIds, onChoose, answer, putAway }: CarSweepsTableProps) {
  const say = useMessages();
  const laidOf = ({ id }: SweepView) => answer?.sweeps.find((each) => each.id === id) ?? null;
  const remove = async (sweep: SweepView) => {
    if (putAway === null) return;
    try {
      const bringBack = await putAway(sweep.id);
      say(`${placeName(sweep)} put away.`, {
        undo: () =>
          void bringBack().catch((failure) => say(shownError(failure).message, { tone: 'trouble' })),
      });
    } catch (failure) {
      say(shownError(failure).message, { tone: 'trouble' });
    }
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key.
    <section className={styles.scroll} aria-label="Sweeps one by one" tabIndex={0}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Place and direction</th>
            {READ_AT_HZ.map((hz) => (
              <th key={hz} scope="col" className="figures">
                {hz} Hz
              </th>
            ))}
            <th scope="col" className="figures">
              Over noise
            </th>
            {putAway === null ? null : (
              <th scope="col" data-screen-only="">
                <span className="unseen">What to do with it</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {sweeps.map(({ letter, sweep }) => {
            const laid = laidOf(sweep);
            const rejection = laid?.rejection ?? null;
            return (
              <tr key={sweep.id} data-rejected={rejection === null ? undefined : ''}>
                <th scope="row">
                  <Checkbox
                    isSelected={chosenIds.includes(sweep.id)}
                    onChange={(isChosen) =>
                      onChoose(
                        isChosen ? [...chosenIds, sweep.id] : chosenIds.filter((id) => id !== sweep.id),
                      )
                    }
                    detail={sweepDetail(sweep)}
                  >
                    <span className={classNames('figures', styles.letter)}>{letter}</span>
                    {placeName(sweep)}
                  </Checkbox>
                  {rejection === null ? null : <small>Rejected. {rejectionWords(rejection)}</small>}
                </th>
                {READ_AT_HZ.map((hz) => (
                  <td key={hz} className="figures">
                    {answer === null || laid === null ? '' : levelAt(answer.frequenciesHz, laid.levelDb, hz)}
                  </td>
                ))}
                <td className="figures">
                  {laid === null
                    ? ''
                    : laid.worstSnrDb === null
                      ? 'not known'
                      : `${laid.worstSnrDb.toFixed(0).replace('-', '−')} dB`}
                </td>
                {putAway === null ? null : (
                  <td data-screen-only="">
                    <Button look="quiet" onPress={() => void remove(sweep)}>
                      Put away
                    </Button>
                  </td>
                )}
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

function levelAt(frequenciesHz: readonly number[], levelDb: readonly number[], hz: number): string {
  const at = frequenciesHz.findIndex((each) => each >= hz);
  const level = levelDb[at === -1 ? levelDb.length - 1 : at];
  return level === undefined ? '' : level.toFixed(1);
}
