'use client';

import { useState } from 'react';
import { Button } from '../../../shared/controls/button.tsx';
import { Verdict } from '../../../shared/marks/verdict.tsx';
import { Dialog } from '../../../shared/overlays/dialog.tsx';
import { useOnline } from '../../../shared/shell/online.tsx';
import { SearchAnswerView } from './search-answer.tsx';
import { askedBy, type EntryProblems, problemsOf, type SearchDefaults, startEntry } from './search-entry.ts';
import { SearchForm } from './search-form.tsx';
import { SearchProgressView } from './search-progress.tsx';
import { designId, type FoundDesign } from './search-words.ts';
import { useDriverSearch } from './use-driver-search.ts';

export type SearchDialogProps = {
  readonly defaults: SearchDefaults;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly onTake?: ((design: FoundDesign) => void) | undefined;
};

const NO_PROBLEMS: EntryProblems = {};

/** Question, then progress, then the answer; the question is kept all the while. */
export function SearchDialog({ defaults, isOpen, onClose, onTake }: SearchDialogProps) {
  const [entry, setEntry] = useState(() => startEntry(defaults));
  const [open, setOpen] = useState<EntryProblems>(NO_PROBLEMS);
  const [chosenKey, setChosenKey] = useState<string | null>(null);
  const { state, start, stop, reset } = useDriverSearch();
  const isOnline = useOnline();

  const refused = state.kind === 'failed' ? problemsOf(state.error.fields) : NO_PROBLEMS;
  const problems = { ...refused, ...open };
  const designs = state.kind === 'done' ? [...state.answer.ranked, ...state.answer.front] : [];
  const chosen = designs.find((design) => designId(design) === chosenKey) ?? designs[0] ?? null;

  const search = () => {
    const asked = askedBy(entry, defaults);
    if ('problems' in asked) {
      setOpen(asked.problems);
      return;
    }
    setOpen(NO_PROBLEMS);
    setChosenKey(null);
    start(asked);
  };
  const take = (design: FoundDesign) => {
    onTake?.(design);
    onClose();
  };
  const leave = () => {
    stop();
    onClose();
  };

  return (
    <Dialog
      title="Search the catalogue"
      isOpen={isOpen}
      onClose={leave}
      isWide
      isDismissable={state.kind !== 'running'}
      acts={
        state.kind === 'done' ? (
          <>
            <Button onPress={reset}>Change the question</Button>
            {onTake && chosen ? (
              <Button look="primary" onPress={() => take(chosen)}>
                Take this design
              </Button>
            ) : null}
          </>
        ) : (
          <Button
            look="primary"
            onPress={search}
            isPending={state.kind === 'running'}
            isDisabled={!isOnline && state.kind !== 'running'}
          >
            Search
          </Button>
        )
      }
    >
      {state.kind === 'done' ? (
        <SearchAnswerView
          asked={state.asked}
          answer={state.answer}
          chosen={chosen}
          onChoose={(design) => setChosenKey(designId(design))}
          onReset={reset}
        />
      ) : (
        <>
          {state.kind === 'running' ? null : (
            <SearchForm
              entry={entry}
              defaults={defaults}
              problems={problems}
              onChange={(change) => {
                setEntry({ ...entry, ...change });
                setOpen(NO_PROBLEMS);
              }}
            />
          )}
          <div role="status">
            {state.kind === 'running' ? (
              <SearchProgressView aim={entry.aim} progress={state.progress} onStop={stop} />
            ) : null}
            {state.kind === 'stopped' ? (
              <SearchProgressView aim={entry.aim} progress={state.progress} onStop={null} />
            ) : null}
            {state.kind === 'failed' && state.error.fields.length === 0 ? (
              <Verdict tone="fail" words={state.error.message} />
            ) : null}
            {problems.sheet ? <Verdict tone="fail" words={problems.sheet} /> : null}
            {isOnline ? null : (
              <Verdict tone="note" words="No connection: the catalogue is searched on the server.">
                What you entered stays. Search when the connection is back.
              </Verdict>
            )}
          </div>
        </>
      )}
    </Dialog>
  );
}
