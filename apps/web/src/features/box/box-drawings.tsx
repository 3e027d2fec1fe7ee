'use client';

import type { BoxSheetResult } from '@gusset/contracts/box';
import type { DrawingView } from '@gusset/drawings';
import { boxFrontScene, boxIsometricScene, boxPlanScene, boxSectionScene } from '@gusset/sheets';
import dynamic from 'next/dynamic';
import { useMemo, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Dialog } from '../../shared/overlays/dialog.tsx';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import { PHONE_WIDTH, useMediaQuery } from '../../shared/shell/use-media-query.ts';
import styles from './box-drawings.module.css';
import type { BoxJobSheet } from './box-types.ts';
import { DimensionOverlay } from './dimension-overlay.tsx';
import { FaceHandleOverlay } from './face-handle-overlay.tsx';
import { planHandles, sectionHandles } from './face-handles.ts';
import { PanelList } from './panel-list.tsx';
import type { LengthRule } from './use-length-rule.ts';

const WIDE = { main: { widthPt: 780, heightPt: 500 }, side: { widthPt: 400, heightPt: 350 } };
const PHONE = { main: { widthPt: 380, heightPt: 320 }, side: { widthPt: 380, heightPt: 300 } };

/** Three dimensions are fetched when somebody asks for them. */
const BoxModel = dynamic(() => import('./box-model.tsx').then((module) => module.BoxModel), {
  ssr: false,
  loading: () => <Skeleton lines={6} what="Fetching the model" />,
});

export type BoxDrawingsProps = {
  readonly sheet: BoxJobSheet;
  readonly result: BoxSheetResult;
  readonly rule: LengthRule;
  readonly errorOf: (field: string) => string | null;
};

/** Section, plan, baffle and a corner view: dimensions are changed where they stand, faces dragged where they are. */
export function BoxDrawings({ sheet, result, rule, errorOf }: BoxDrawingsProps) {
  const [isTurning, setIsTurning] = useState(false);
  const size = useMediaQuery(PHONE_WIDTH) ? PHONE : WIDE;
  const cavity = sheet.data.upstream.survey?.cavity ?? null;
  const isInCar = cavity !== null && result.place !== null;
  const scenes = useMemo(() => {
    const view = (extent: Partial<DrawingView>) => ({ ...extent, formatLength: rule.drawn, textPt: 12 });
    return {
      section: boxSectionScene(result, cavity, view(size.main)),
      plan: boxPlanScene(result, cavity, view(size.side)),
      front: boxFrontScene(result, view(size.side)),
      corner: boxIsometricScene(result, view(size.side)),
    };
  }, [result, cavity, rule, size]);
  const overlay = { sheet, rule, errorOf };
  return (
    <div className={styles.drawings}>
      <SceneDrawing
        scene={scenes.section}
        minWidthPx={300}
        overlay={
          <>
            {sheet.mayEdit ? <DimensionOverlay scene={scenes.section} {...overlay} /> : null}
            <FaceHandleOverlay
              scene={scenes.section}
              handles={sectionHandles(result, isInCar)}
              sheet={sheet}
              rule={rule}
            />
          </>
        }
        legend={
          <>
            {isInCar ? <span className="caption">— — opening plane</span> : null}
            <span className="caption">- - driver behind the section</span>
            <span className={`caption ${styles.screenOnly}`} data-screen-only="">
              press a figure to change it, drag a square to move a face
            </span>
          </>
        }
      />
      <div className={styles.views}>
        <View caption={scenes.plan.title}>
          <SceneDrawing
            scene={scenes.plan}
            minWidthPx={260}
            overlay={
              <>
                {sheet.mayEdit ? <DimensionOverlay scene={scenes.plan} {...overlay} /> : null}
                <FaceHandleOverlay
                  scene={scenes.plan}
                  handles={planHandles(result, isInCar)}
                  sheet={sheet}
                  rule={rule}
                />
              </>
            }
          />
        </View>
        {scenes.front === null ? null : (
          <View caption={scenes.front.title}>
            <SceneDrawing
              scene={scenes.front}
              minWidthPx={260}
              overlay={sheet.mayEdit ? <DimensionOverlay scene={scenes.front} {...overlay} /> : null}
            />
          </View>
        )}
        <View caption={scenes.corner.title}>
          <SceneDrawing scene={scenes.corner} minWidthPx={260} />
          <div data-screen-only="">
            <Button onPress={() => setIsTurning(true)}>Turn it in 3D</Button>
          </div>
        </View>
        <PanelList result={result} rule={rule} />
      </div>
      <Dialog title="The box from all sides" isOpen={isTurning} onClose={() => setIsTurning(false)} isWide>
        <BoxModel result={result} rule={rule} flat={scenes.corner} />
      </Dialog>
    </div>
  );
}

function View({ caption, children }: { readonly caption: string; readonly children: React.ReactNode }) {
  return (
    <div className={styles.view}>
      <p className="caption">{caption}</p>
      {children}
    </div>
  );
}
