'use client';

import type { DriverSearchInput } from '@gusset/contracts/acoustics';
import { formatMoney } from '@gusset/units';
import { useEffect, useRef } from 'react';
import { Button } from '../../../shared/controls/button.tsx';
import { Caution } from '../../../shared/marks/caution.tsx';
import { EmptyState } from '../../../shared/marks/empty-state.tsx';
import { Row, Rows } from '../../../shared/marks/row.tsx';
import { Verdict } from '../../../shared/marks/verdict.tsx';
import { useDisplay } from '../../../shared/shell/display-provider.tsx';
import { DesignList } from './design-list.tsx';
import { FrontView } from './front-view.tsx';
import styles from './search-answer.module.css';
import {
  boxWords,
  countWords,
  deviationWords,
  driversWords,
  type FoundDesign,
  leftOutWords,
  outputWords,
  reachWords,
  type SearchAnswer,
  winnerWords,
  wiringWords,
} from './search-words.ts';

export type SearchAnswerViewProps = {
  readonly asked: DriverSearchInput;
  readonly answer: SearchAnswer;
  readonly chosen: FoundDesign | null;
  readonly onChoose: (design: FoundDesign) => void;
  readonly onReset: () => void;
};

/** The winner in words, the ranking, what is traded for what, and the design in hand. */
export function SearchAnswerView({ asked, answer, chosen, onChoose, onReset }: SearchAnswerViewProps) {
  const { ranked, counts, drivers, leftOut } = answer;
  const notTried = leftOutWords(leftOut);
  // The button that was pressed is gone with the question: reading goes on here.
  const top = useRef<HTMLDivElement>(null);
  useEffect(() => top.current?.focus(), []);
  const [winner] = ranked;
  if (winner === undefined || chosen === null) {
    return (
      <EmptyState
        title={drivers === 0 ? 'No drivers in the catalogue' : 'No design does all of that'}
        act={<Button onPress={onReset}>Change the question</Button>}
      >
        {drivers === 0
          ? 'Enter the shop’s drivers in the catalogue first; their data sheets are what is searched.'
          : `${notTried ?? ''} ${countWords(counts.designs)} designs were tried. Ask for less output, more volume or more kinds of box.`}
      </EmptyState>
    );
  }
  return (
    <div className={styles.answer} ref={top} tabIndex={-1}>
      <Verdict tone="pass" words={winnerWords(asked.brief.aim, winner)}>
        {`Best of ${countWords(counts.designs)} designs from ${countWords(drivers)} ${drivers === 1 ? 'driver' : 'drivers'}. `}
        {notTried}
      </Verdict>
      <div className={styles.hand}>
        <FrontView answer={answer} chosen={chosen} onChoose={onChoose} />
        <ChosenDesign design={chosen} />
      </div>
      <DesignList caption="Best first" designs={ranked} chosen={chosen} onChoose={onChoose} />
      <Caution>
        Levels like these harm hearing within minutes. Outputs are worked out from makers’ figures; a real car
        differs by 5 to 10 dB.
      </Caution>
    </div>
  );
}

function ChosenDesign({ design }: { readonly design: FoundDesign }) {
  const { shop } = useDisplay();
  const { port, costMinor } = design;
  return (
    <div aria-live="polite">
      <Rows title={`In hand: ${driversWords(design)}`}>
        <Row label="Box" isWords>
          {boxWords(design)}
        </Row>
        <Row label="Wired" isWords>
          {wiringWords(design)}
        </Row>
        <Row label="Amplifier gives">{`${Math.round(design.watts)} W`}</Row>
        {port === null ? null : (
          <Row label="Port">{`Ø ${port.diameterMm} mm, ${Math.round(port.lengthMm)} mm long`}</Row>
        )}
        <Row label="Holds down to">{reachWords(design.lowCornerHz)}</Row>
        <Row label="Plays, 30 to 80 Hz">{outputWords(design.outputDb)}</Row>
        <Row label="Rises and falls">{deviationWords(design.deviationDb)}</Row>
        {costMinor === null ? null : (
          <Row label="Drivers cost">
            {formatMoney({ minor: costMinor, currency: shop.currency }, shop.locale)}
          </Row>
        )}
        <Row label="On the shelf">{String(design.inStock)}</Row>
      </Rows>
    </div>
  );
}
