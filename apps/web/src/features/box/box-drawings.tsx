'use client';

import type { BoxSheetResult } from '@gusset/contracts/box';
import type { DrawingView, Scene } from '@gusset/drawings';
import { boxFrontScene, boxIsometricScene, boxPlanScene, boxSectionScene } from '@gusset/sheets';
import dynamic from 'next/dynamic';
import { type ReactNode, useDeferredValue, useMemo, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Dialog } from '../../shared/overlays/dialog.tsx';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import { PHONE_WIDTH, useMediaQuery } from '../../shared/shell/use-media-query.ts';
import styles from './box-drawings.module.css';
import type { BoxJobSheet } from './box-types.ts';
import { DimensionOverlay } from './dimension-overlay.tsx';
import { FaceHandleOverlay } from './face-handle-overlay.tsx';
import { type FaceHandle, planHandles, sectionHandles } from './face-handles.ts';
import { PanelList } from './panel-list.tsx';
import { PrintDrawings } from './print-drawings.tsx';

const WIDE = { main: { widthPt: 780, heightPt: 500 }, side: { widthPt: 400, heightPt: 350 } };
const PHONE = { main: { widthPt: 380, heightPt: 290 }, side: { widthPt: 380, heightPt: 300 } };

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
  /** Stands under the section: the fields of what it shows. */
  readonly children: ReactNode;
};

/** Section, plan, baffle and a corner view: dimensions are changed where they stand, faces dragged where they are. */
export function BoxDrawings({ sheet, result, rule, errorOf, children }: BoxDrawingsProps) {
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
  // Paper can wait while a face is dragged.
  const calm = useDeferredValue(result);
  const changeable = (scene: Scene, handles: readonly FaceHandle[]) =>
    sheet.mayEdit ? (
      <>
        <DimensionOverlay scene={scene} sheet={sheet} rule={rule} errorOf={errorOf} />
        <FaceHandleOverlay scene={scene} handles={handles} sheet={sheet} rule={rule} />
      </>
    ) : null;
  return (
    <>
      <PrintDrawings result={calm} cavity={cavity} rule={rule} />
      <div className={styles.drawings} data-screen-only="">
        <SceneDrawing
          scene={scenes.section}
          minWidthPx={300}
          overlay={changeable(scenes.section, sectionHandles(result, isInCar))}
          legend={<SectionLegend isInCar={isInCar} mayEdit={sheet.mayEdit} />}
        />
        {children}
        <div className={styles.views}>
          <View caption={scenes.plan.title}>
            <SceneDrawing
              scene={scenes.plan}
              minWidthPx={260}
              overlay={changeable(scenes.plan, planHandles(result, isInCar))}
            />
          </View>
          {scenes.front === null ? null : (
            <View caption={scenes.front.title}>
              <SceneDrawing scene={scenes.front} minWidthPx={260} overlay={changeable(scenes.front, [])} />
            </View>
          )}
          <View caption={scenes.corner.title}>
            <SceneDrawing scene={scenes.corner} minWidthPx={260} />
            <TurnButton result={result} rule={rule} flat={scenes.corner} />
          </View>
          <PanelList result={result} rule={rule} />
        </div>
      </div>
    </>
  );
}

function SectionLegend({ isInCar, mayEdit }: { readonly isInCar: boolean; readonly mayEdit: boolean }) {
  return (
    <>
      {isInCar ? <span className="caption">— — opening plane</span> : null}
      <span className="caption">- - driver behind the section</span>
      {mayEdit ? (
        <span className={`caption ${styles.hint}`}>
          press a figure to change it, drag a square to move a face
        </span>
      ) : null}
    </>
  );
}

function TurnButton(model: {
  readonly result: BoxSheetResult;
  readonly rule: LengthRule;
  readonly flat: Scene;
}) {
  const [isTurning, setIsTurning] = useState(false);
  return (
    <div>
      <Button onPress={() => setIsTurning(true)}>Turn it in 3D</Button>
      <Dialog title="The box from all sides" isOpen={isTurning} onClose={() => setIsTurning(false)} isWide>
        <BoxModel {...model} />
      </Dialog>
    </div>
  );
}

function View({ caption, children }: { readonly caption: string; readonly children: ReactNode }) {
  return (
    <div className={styles.view}>
      <p className="caption">{caption}</p>
      {children}
    </div>
  );
}
