import type { DriverDataSheet } from '@gusset/contracts/acoustics';
import type { DriverFromSweeps } from '@gusset/contracts/measurement';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { driverHeadline, figureRows } from './driver-figures.ts';
import { cautionWords, FIT_FIELD_WORDS, percentWords } from './measure-words.ts';

/** How far the driver lies from its sheet, then how well that is known. */
export function DriverFitVerdict({
  answer,
  stated,
}: {
  readonly answer: DriverFromSweeps;
  readonly stated: DriverDataSheet;
}) {
  const rows = figureRows(stated, answer);
  const isFar = rows.some((row) => row.isFar);
  return (
    <>
      <Verdict tone={isFar ? 'check' : 'pass'} words={driverHeadline(rows)}>
        The fit leaves {answer.fit.residualPercent.toFixed(1)} % of the curve.
        {isFar ? ' More than samples and drift explain: is it this driver, run in?' : null}
      </Verdict>
      {answer.cautions.map((caution) => {
        const { words, advice } = cautionWords(caution);
        return (
          <Verdict key={words} tone="check" words={words}>
            {advice}
          </Verdict>
        );
      })}
    </>
  );
}

/** The classic reading of the peak, to set beside the fit of the whole curve. */
export function PeakReadingRows({ agreement }: Pick<DriverFromSweeps, 'agreement'>) {
  if (agreement.length === 0) {
    return <p>The peak alone can’t be read: the curve does not fall far enough on both sides.</p>;
  }
  return (
    <Rows title="By the peak alone">
      {agreement.map(({ field, byPeak, percent }) => (
        <Row key={field} label={FIT_FIELD_WORDS[field]}>
          {byPeak.toPrecision(4)} ({percentWords(percent)})
        </Row>
      ))}
    </Rows>
  );
}
