'use client';

import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import type { LengthValue } from '../../shared/controls/length-entry.ts';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { SaveState } from '../../shared/marks/save-state.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { ConfirmDialog } from '../../shared/overlays/confirm-dialog.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { DrawingView } from '../../shared/sheet/drawing-view.tsx';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { jobTitleCells } from '../../shared/sheet/title-block.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { BoxSection } from './box-section.tsx';
import { SAMPLE_TITLE } from './sample-shop.ts';
import styles from './sheet-sample.module.css';

/** Sheet 04 as it would look in a job. */
export function SheetSample() {
  const say = useMessages();
  const [isAsking, setIsAsking] = useState(false);
  const [width, setWidth] = useState<LengthValue | null>({ mm: 812, typed: '812', unit: 'mm' });
  const [height, setHeight] = useState<LengthValue | null>({ mm: 438.15, typed: '17 1/4 in', unit: 'in' });
  return (
    <>
      <PageHeader
        kicker="Job 2417 · sheet 04 · draft"
        title="Box and dry fit"
        state={<SaveState status={{ kind: 'saved', at: '14:02' }} />}
        acts={
          <>
            <Button onPress={() => window.print()}>Print</Button>
            <Button look="primary" onPress={() => setIsAsking(true)}>
              Issue this sheet
            </Button>
          </>
        }
      />
      <SheetFrame
        viewCaption="Side section on centre line · mm"
        titleBlock={jobTitleCells(SAMPLE_TITLE)}
        notes={
          <>
            <Verdict tone="pass" words="Goes in, comes out">
              <p>
                Tilt the nose up 13°, draw it back. 6.2 mm to spare at the seat back; the tape’s ±3 mm is
                covered.
              </p>
            </Verdict>
            <Rows title="Volume">
              <Row label="Gross inside">80.9 L</Row>
              <Row label="Driver ×1">−2.6 L</Row>
              <Row label="Braces, corner blocks">−1.4 L</Row>
              <Row label="Port">−2.7 L</Row>
              <Row label="Net" isTotal>
                74.2 L · 2.62 ft³
              </Row>
            </Rows>
            <FieldGrid cellMinPx={132}>
              <LengthField label="Width" value={width} onCommit={setWidth} minMm={100} maxMm={2000} />
              <LengthField
                label="Height at seat"
                value={height}
                onCommit={setHeight}
                minMm={100}
                maxMm={1200}
              />
            </FieldGrid>
            <Verdict tone="check" words="31 kg with its driver: two people">
              <p>Or fit the driver once the box is in the car.</p>
            </Verdict>
            <Caution>The seat belts and their anchors stay clear of the box.</Caution>
          </>
        }
      >
        <DrawingView
          label="Side section of the box in the boot of the Halden Brisk"
          legend={
            <>
              <span className="caption">— — opening plane</span>
              <span className={`caption ${styles.mark}`}>ghosts: 2 of 41 poses on the way out</span>
              <span className={`caption ${styles.pencil}`}>tightest point</span>
            </>
          }
        >
          <BoxSection />
        </DrawingView>
      </SheetFrame>
      <ConfirmDialog
        title="Issue sheet 04 as revision D?"
        verb="Issue this sheet"
        keep="Keep the draft"
        isOpen={isAsking}
        onClose={() => setIsAsking(false)}
        onConfirm={() => {
          setIsAsking(false);
          say('Sheet 04 issued as revision D.', { undo: () => say('Back to the draft.') });
        }}
      >
        <p>
          Cutting and price will read this revision. It can’t be changed afterwards, only followed by another.
        </p>
      </ConfirmDialog>
    </>
  );
}
