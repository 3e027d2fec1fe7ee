'use client';

import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { Progress } from '../../shared/marks/progress.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { SaveState } from '../../shared/marks/save-state.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { ConfirmDialog } from '../../shared/overlays/confirm-dialog.tsx';
import { ConflictDialog } from '../../shared/overlays/conflict-dialog.tsx';
import { Menu } from '../../shared/overlays/menu.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { Tabs } from '../../shared/overlays/tabs.tsx';
import { ChangeList } from '../../shared/sheet/change-list.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { AutosaveSample, EngineSample } from './live-sample.tsx';
import { SAMPLE_SHEETS } from './sample-shop.ts';
import { StyleGroup } from './style-group.tsx';

export function MarksSample() {
  return (
    <>
      <PageHeader kicker="Style page" title="Verdicts, marks, dialogs" />
      <VerdictSamples />
      <WorkSamples />
      <AutosaveSample />
      <EngineSample />
      <DialogSamples />
      <StyleGroup title="Nothing here yet">
        <EmptyState title="No photos of this boot" act={<Button look="primary">Take a photo</Button>}>
          A photo with a tape in it saves the second trip to the car.
        </EmptyState>
      </StyleGroup>
    </>
  );
}

function VerdictSamples() {
  return (
    <StyleGroup title="Verdict first, then the number, then how sure">
      <Verdict tone="pass" words="Goes in, comes out">
        <p>6.2 mm to spare at the seat back; the tape’s ±3 mm is covered.</p>
      </Verdict>
      <Verdict tone="check" words="Tight: 2.1 mm at the lid seal">
        <p>Less than the tape’s ±3 mm. Measure the seal again, or take 4 mm off the depth.</p>
      </Verdict>
      <Verdict tone="fail" words="Does not come out">
        <p>The lower edge meets the sill by 11.4 mm at 22°. Largest that still loads: 68.3 L.</p>
      </Verdict>
      <Verdict tone="note" words="Worked out with the seats up">
        <p>Folding them changes the opening, not the box.</p>
      </Verdict>
      <Caution>Two people lift this box.</Caution>
    </StyleGroup>
  );
}

function WorkSamples() {
  const [isRunning, setIsRunning] = useState(true);
  return (
    <StyleGroup title="Saving, working">
      <Rows title="What the header says">
        <Row label="Sending" isWords>
          <SaveState status={{ kind: 'saving' }} />
        </Row>
        <Row label="Sent" isWords>
          <SaveState status={{ kind: 'saved', at: '14:02' }} />
        </Row>
        <Row label="No connection" isWords>
          <SaveState status={{ kind: 'waiting', unsent: 3 }} />
        </Row>
        <Row label="Changed twice" isWords>
          <SaveState status={{ kind: 'conflict' }} onResolve={() => setIsRunning(true)} />
        </Row>
      </Rows>
      <Progress
        what="Trying the ways out through the hatch"
        share={isRunning ? 0.62 : 1}
        soFar={isRunning ? '26 of 41 poses, best so far 6.2 mm' : 'Stopped, kept 6.2 mm'}
        onCancel={isRunning ? () => setIsRunning(false) : undefined}
      />
      <Progress what="Asking the server for the layout" share={null} soFar="4 s so far" />
    </StyleGroup>
  );
}

function DialogSamples() {
  const say = useMessages();
  const [open, setOpen] = useState<'confirm' | 'conflict' | null>(null);
  const close = () => setOpen(null);
  return (
    <StyleGroup title="Dialogs, menus, tabs">
      <StyleGroup title="Buttons that open" isRow>
        <Button onPress={() => setOpen('confirm')}>Send quote</Button>
        <Button onPress={() => setOpen('conflict')}>Show a conflict</Button>
        <Button onPress={() => say('Brace removed.', { undo: () => say('Brace is back.') })}>
          Remove brace
        </Button>
        <Button onPress={() => say('The printer gave no answer.', { tone: 'trouble' })}>Print</Button>
        <Menu
          label="More"
          groups={[
            {
              title: 'This sheet',
              acts: [
                { id: 'copy', label: 'Copy to another job', onAct: () => say('Copied.') },
                { id: 'print', label: 'Print', detail: 'Ctrl P', onAct: () => window.print() },
              ],
            },
            {
              acts: [
                { id: 'remove', label: 'Remove box 2', removes: true, onAct: () => say('Box 2 removed.') },
              ],
            },
          ]}
        />
      </StyleGroup>
      <Tabs
        label="Views of the box"
        pages={[
          { id: 'section', label: 'Section', content: <p>Cut on the centre line.</p> },
          { id: 'plan', label: 'Plan', content: <p>From above, lid off.</p> },
          {
            id: 'changes',
            label: 'Changes',
            content: <ChangeList changes={SAMPLE_SHEETS[4]?.changes ?? []} />,
          },
        ]}
      />
      <ConfirmDialog
        title="Send quote 2417 rev C to R. Okafor?"
        verb="Send quote"
        keep="Keep the draft"
        isOpen={open === 'confirm'}
        onClose={close}
        onConfirm={() => {
          close();
          say('Quote sent.');
        }}
      >
        <p>It goes to okafor@example.com and can’t be called back. A later change makes revision D.</p>
      </ConfirmDialog>
      <ConflictDialog
        otherPerson="J. Sato, 14:02"
        isOpen={open === 'conflict'}
        onClose={close}
        onResolve={close}
        fields={[
          { field: 'opening', label: 'Opening, square to the way in', mine: '597 mm', theirs: '604 mm' },
          { field: 'note', label: 'Note', mine: 'Seal is worn', theirs: 'Measured twice' },
        ]}
      />
    </StyleGroup>
  );
}
