'use client';

import { briefSheet } from '@gusset/sheets';
import { useMemo, useRef, useState } from 'react';
import { Switch } from '../../shared/controls/switch.tsx';
import { TextArea } from '../../shared/controls/text-area.tsx';
import { useAutosave } from '../../shared/data/use-autosave.ts';
import { useEngine } from '../../shared/data/use-engine.ts';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { SaveState } from '../../shared/marks/save-state.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { StyleGroup } from './style-group.tsx';

const KEY = { userId: 'style-page', shopId: 'style-page', document: 'note' };
const asText = (kept: unknown): string | null => (typeof kept === 'string' ? kept : null);

/** A note whose "server" is this component: pull the plug, type, reload, and it comes back. */
export function AutosaveSample() {
  const [isPlugged, setIsPlugged] = useState(true);
  const plugged = useRef(true);
  const note = useAutosave<string>({
    key: KEY,
    start: { value: 'Keeps the spare wheel.', version: 1 },
    readDraft: asText,
    save: async (_text, version) => {
      if (!plugged.current) throw new TypeError('The plug is pulled.');
      return { version: version + 1 };
    },
  });
  return (
    <StyleGroup title="Saves while one types">
      <TextArea
        label="Note"
        value={note.value}
        onChange={note.change}
        onBlur={note.onBlur}
        hint={note.isRestored ? 'Brought back from this device' : 'Pull the plug, type, reload'}
      />
      <SaveState status={note.status} />
      <Switch
        isSelected={isPlugged}
        onChange={(next) => {
          plugged.current = next;
          setIsPlugged(next);
        }}
      >
        Server plugged in
      </Switch>
    </StyleGroup>
  );
}

/** The brief sheet worked out in the worker, from nothing: it says what it still needs. */
export function EngineSample() {
  const request = useMemo(
    () => ({ kind: 'brief' as const, input: briefSheet.emptyInput(), facts: null, upstream: null }),
    [],
  );
  const { outcome, isStale, fault } = useEngine(request);
  if (fault) return <Verdict tone="fail" words={fault} />;
  const missing = outcome?.state === 'incomplete' ? outcome.missing : [];
  return (
    <StyleGroup title="Worked out beside the page">
      <Rows title="The worker answers">
        <Row label="Brief, empty" isWords>
          {isStale ? 'working…' : (outcome?.state ?? 'nothing yet')}
        </Row>
        {missing.map(({ field, what }) => (
          <Row key={field} label={field} isWords>
            {what}
          </Row>
        ))}
      </Rows>
    </StyleGroup>
  );
}
