'use client';

import type { SurveyResult } from '@gusset/contracts/survey';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { letterOf } from '../../shared/survey/finding-words.ts';
import { plusMinusWords, valueWords } from '../../shared/survey/reading-words.ts';
import styles from './survey-screen.module.css';

const SURFACE_WORDS = { hard: 'hard', soft: 'soft trim', open: 'open' } as const;
const LENGTH = { unit: 'length' } as const;
/** The readings that matter most to a wall; the rest add little. */
const SHOWN_SHARES = 3;

/** Every wall with its length and how sure it is: the drawing in figures, for a pencil and for a screen reader. */
export function WallTable({ result }: { readonly result: SurveyResult }) {
  const { lengthUnit, shop } = useDisplay();
  const manner = { unit: lengthUnit, denominator: shop.inchDenominator };
  const { polygon, walls } = result.cavity;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key.
    <section className={styles.tableRoom} aria-label="Walls and how sure they are" tabIndex={0}>
      <table className={styles.table}>
        <caption className="caption">Walls and how sure they are</caption>
        <thead>
          <tr>
            <th scope="col">Wall</th>
            <th scope="col">Length</th>
            <th scope="col">Worst</th>
            <th scope="col">Likely</th>
            <th scope="col">Comes from</th>
          </tr>
        </thead>
        <tbody>
          {walls.map((wall, index) => {
            const from = polygon[index];
            const to = polygon[(index + 1) % polygon.length];
            const lengthMm =
              from === undefined || to === undefined ? 0 : Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
            return (
              <tr key={wall.id}>
                <th scope="row">
                  {wall.name} <small>{SURFACE_WORDS[wall.surface]}</small>
                </th>
                <td className="figures">{valueWords(LENGTH, lengthMm, manner)}</td>
                <td className="figures">{plusMinusWords(LENGTH, wall.plusMinusMm, manner)}</td>
                <td className="figures">{plusMinusWords(LENGTH, wall.likelyPlusMinusMm, manner)}</td>
                <td className="figures">
                  {wall.shares
                    .filter(({ plusMinusMm }) => plusMinusMm > 0)
                    .slice(0, SHOWN_SHARES)
                    .map(
                      ({ key, plusMinusMm }) =>
                        `${letterOf(result.form, key)} ${plusMinusWords(LENGTH, plusMinusMm, manner)}`,
                    )
                    .join(', ')}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
