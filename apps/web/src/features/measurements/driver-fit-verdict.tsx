import type { DriverFromSweeps } from '@gusset/contracts/measurement';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { cautionWords, FIT_FIELD_WORDS, percentWords } from './measure-words.ts';

/** How well the fit stands, and the classic reading of the peak beside it. */
export function DriverFitVerdict({ answer }: { readonly answer: DriverFromSweeps }) {
  const { agreement, cautions, fit } = answer;
  return (
    <>
      {cautions.length === 0 ? (
        <Verdict tone="pass" words="The curve is a driver’s curve">
          The fit leaves {fit.residualPercent.toFixed(1)} % of the magnitude.
        </Verdict>
      ) : (
        cautions.map((caution) => {
          const { words, advice } = cautionWords(caution);
          return (
            <Verdict key={words} tone="check" words={words}>
              {advice}
            </Verdict>
          );
        })
      )}
      {agreement.length === 0 ? (
        <p>The peak alone can’t be read: the curve does not fall far enough on both sides.</p>
      ) : (
        <Rows title="By the peak alone">
          {agreement.map(({ field, byPeak, percent }) => (
            <Row key={field} label={FIT_FIELD_WORDS[field]}>
              {byPeak.toPrecision(4)} ({percentWords(percent)})
            </Row>
          ))}
        </Rows>
      )}
    </>
  );
}
