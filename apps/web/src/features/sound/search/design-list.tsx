'use client';

import { formatMoney } from '@gusset/units';
import { Button } from '../../../shared/controls/button.tsx';
import { useDisplay } from '../../../shared/shell/display-provider.tsx';
import styles from './design-list.module.css';
import {
  boxWords,
  designId,
  deviationWords,
  driversWords,
  type FoundDesign,
  outputWords,
  reachWords,
} from './search-words.ts';

export type DesignListProps = {
  readonly caption: string;
  readonly designs: readonly FoundDesign[];
  readonly chosen: FoundDesign;
  readonly onChoose: (design: FoundDesign) => void;
};

/** Designs as a table, as cards on a phone; each can be taken in hand. */
export function DesignList({ caption, designs, chosen, onChoose }: DesignListProps) {
  const { shop } = useDisplay();
  const hasCosts = designs.some(({ costMinor }) => costMinor !== null);
  const isChosen = (design: FoundDesign) => designId(design) === designId(chosen);
  return (
    <table className={styles.table}>
      <caption className="caption">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Drivers and box</th>
          <th scope="col">Holds down to</th>
          <th scope="col">Plays</th>
          <th scope="col">Rises and falls</th>
          {hasCosts ? <th scope="col">Drivers cost</th> : null}
          <th scope="col">
            <span className="unseen">Take it in hand</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {designs.map((design) => (
          <tr key={designId(design)} data-chosen={isChosen(design) ? '' : undefined}>
            <th scope="row">
              {driversWords(design)}
              <small>{boxWords(design)}</small>
            </th>
            <td className="figures" data-label="Holds down to">
              {reachWords(design.lowCornerHz)}
            </td>
            <td className="figures" data-label="Plays">
              {outputWords(design.outputDb)}
            </td>
            <td className="figures" data-label="Rises and falls">
              {deviationWords(design.deviationDb)}
            </td>
            {hasCosts ? (
              <td className="figures" data-label="Drivers cost">
                {design.costMinor === null
                  ? 'not known'
                  : formatMoney({ minor: design.costMinor, currency: shop.currency }, shop.locale)}
              </td>
            ) : null}
            <td className={styles.act}>
              {isChosen(design) ? (
                <span className={styles.inHand}>In hand</span>
              ) : (
                <Button
                  look="quiet"
                  onPress={() => onChoose(design)}
                  aria-label={`Look at ${driversWords(design)}, ${boxWords(design)}`}
                >
                  Look at
                </Button>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
