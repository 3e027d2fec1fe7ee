import type { ReactNode } from 'react';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { CornerDrawing } from './corner-drawing.tsx';
import styles from './door-sheet.module.css';

export type DoorSheetProps = {
  /** Stands in the title block: "Sign in". */
  readonly name: string;
  readonly children: ReactNode;
};

/** The sheet before the sign-in: the drawing that gave the program its name, and a form in the notes column. */
export function DoorSheet({ name, children }: DoorSheetProps) {
  return (
    <main id="main" className={styles.door}>
      <SheetFrame
        viewCaption="Corner with gusset · mm · scale 1:2"
        notes={children}
        titleBlock={[
          { caption: 'Program', value: 'Gusset', span: 2 },
          { caption: 'Sheet', value: name, span: 2 },
          { caption: 'For', value: 'mobile-audio fabricators', span: 3 },
          { caption: 'Use', value: 'planning aid only', span: 2 },
        ]}
      >
        <CornerDrawing />
      </SheetFrame>
    </main>
  );
}
