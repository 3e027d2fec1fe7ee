'use client';

import type { BoxSheetResult } from '@gusset/contracts/box';
import type { CavityResult } from '@gusset/contracts/cargo';
import { boxFrontScene, boxIsometricScene, boxPlanScene, boxSectionScene } from '@gusset/sheets';
import { memo, useMemo } from 'react';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import styles from './box-drawings.module.css';
import { BoxCaution, OtherFindings } from './box-notes.tsx';
import { PanelList } from './panel-list.tsx';

/** Drawn for half as much again as the room on an A4 page on its side (130 × 75 mm, and three of 63 × 43 mm), so that
 * the figures, which shrink with it, come out at 7 pt. */
const MAIN = { widthPt: 530, heightPt: 306, textPt: 10.5 };
const SIDE = { widthPt: 290, heightPt: 200, textPt: 11 };

export type PrintDrawingsProps = {
  readonly result: BoxSheetResult;
  readonly cavity: CavityResult | null;
  readonly rule: LengthRule;
};

/** The same drawings built for the size that paper gives them, so that figures stay as large as lettering. */
export const PrintDrawings = memo(function PrintDrawings({ result, cavity, rule }: PrintDrawingsProps) {
  const { section, small } = useMemo(() => {
    const view = { formatLength: rule.drawn };
    const front = boxFrontScene(result, { ...SIDE, ...view });
    return {
      section: boxSectionScene(result, cavity, { ...MAIN, ...view }),
      small: [
        boxPlanScene(result, cavity, { ...SIDE, ...view }),
        ...(front === null ? [] : [front]),
        boxIsometricScene(result, { ...SIDE, ...view }),
      ],
    };
  }, [result, cavity, rule]);
  return (
    <div data-print-only="">
      <div className={styles.printMain}>
        <SceneDrawing scene={section} minWidthPx={0} />
        <PanelList result={result} rule={rule} />
      </div>
      <div className={styles.printViews}>
        {small.map((scene) => (
          <div key={scene.title}>
            <p className="caption">{scene.title}</p>
            <SceneDrawing scene={scene} minWidthPx={0} />
          </div>
        ))}
      </div>
      <div className={styles.printNotes}>
        <OtherFindings result={result} length={rule.words} />
        <BoxCaution />
      </div>
    </div>
  );
});
