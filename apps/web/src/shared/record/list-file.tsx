'use client';

import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { Button } from '../controls/button.tsx';
import { TextArea } from '../controls/text-area.tsx';
import { type ShownError, shownError } from '../data/shop-error.ts';
import { Verdict } from '../marks/verdict.tsx';
import { Dialog } from '../overlays/dialog.tsx';
import { Menu } from '../overlays/menu.tsx';
import { useMessages } from '../overlays/messages.tsx';
import styles from './list-file.module.css';
import { wholeListKey } from './use-whole-list.ts';

export type ListProblem = { readonly row: number; readonly column: string; readonly why: string };

export type ListPreview = {
  readonly total: number;
  readonly rows: readonly { readonly row: number; readonly name: string; readonly isAlike: boolean }[];
  readonly alikeCount: number;
  readonly problems: readonly ListProblem[];
  readonly problemCount: number;
  readonly ignoredColumns: readonly string[];
};

/** One kind of record as a file, as `useTRPCClient().<kind>` gives it. */
export type ListFile = {
  readonly importPreview: { mutate(input: { text: string }): Promise<ListPreview> };
  readonly import: {
    mutate(input: {
      key: string;
      text: string;
    }): Promise<{ readonly importId: string; readonly count: number }>;
  };
  readonly importUndo: { mutate(input: { importId: string }): Promise<unknown> };
  readonly export: { query(): Promise<{ readonly fileName: string; readonly text: string }> };
};

export type ListFileMenuProps = {
  readonly file: ListFile;
  readonly noun: { readonly one: string; readonly many: string };
  /** Name of the whole list to fetch anew afterwards. */
  readonly listName: string;
  readonly mayImport: boolean;
  readonly mayExport: boolean;
};

/** The list as a spreadsheet: out as a file, in as a file that is looked at first. */
export function ListFileMenu({ file, noun, listName, mayImport, mayExport }: ListFileMenuProps) {
  const say = useMessages();
  const [isImporting, setIsImporting] = useState(false);
  if (!mayImport && !mayExport) return null;
  const save = async () => {
    try {
      const { fileName, text } = await file.export.query();
      saveFile(fileName, text);
    } catch (failure) {
      say(shownError(failure).message, { tone: 'trouble' });
    }
  };
  return (
    <>
      <Menu
        label="Spreadsheet"
        groups={[
          {
            title: 'As a CSV file',
            acts: [
              ...(mayExport
                ? [
                    {
                      id: 'export',
                      label: `Save all ${noun.many} as a file`,
                      detail: 'units in the headers',
                      onAct: () => void save(),
                    },
                  ]
                : []),
              ...(mayImport
                ? [
                    {
                      id: 'import',
                      label: `Take ${noun.many} in from a file`,
                      detail: 'shown before anything is written',
                      onAct: () => setIsImporting(true),
                    },
                  ]
                : []),
            ],
          },
        ]}
      />
      {isImporting ? (
        <ImportDialog file={file} noun={noun} listName={listName} onClose={() => setIsImporting(false)} />
      ) : null}
    </>
  );
}

function saveFile(fileName: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/csv;charset=utf-8' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  URL.revokeObjectURL(address);
}

type ImportDialogProps = Pick<ListFileMenuProps, 'file' | 'noun' | 'listName'> & {
  readonly onClose: () => void;
};

function ImportDialog({ file, noun, listName, onClose }: ImportDialogProps) {
  const say = useMessages();
  const queries = useQueryClient();
  const chooser = useRef<HTMLInputElement>(null);
  const [key] = useState(() => crypto.randomUUID());
  const [text, setText] = useState('');
  const [preview, setPreview] = useState<ListPreview | null>(null);
  const [problem, setProblem] = useState<ShownError | null>(null);
  const [isBusy, setIsBusy] = useState(false);
  const refresh = () => queries.invalidateQueries({ queryKey: wholeListKey(listName) });

  const attempt = async (work: () => Promise<void>): Promise<void> => {
    setIsBusy(true);
    setProblem(null);
    try {
      await work();
    } catch (failure) {
      setProblem(shownError(failure));
    } finally {
      setIsBusy(false);
    }
  };
  const look = (typed: string) =>
    attempt(async () => {
      setText(typed);
      setPreview(await file.importPreview.mutate({ text: typed }));
    });
  const take = () =>
    attempt(async () => {
      const { importId, count } = await file.import.mutate({ key, text });
      say(`${count} ${count === 1 ? noun.one : noun.many} taken in.`, {
        undo: () =>
          void file.importUndo
            .mutate({ importId })
            .then(refresh, (failure) => say(shownError(failure).message)),
      });
      await refresh();
      onClose();
    });
  const canTake = preview !== null && preview.problemCount === 0 && preview.total > 0;

  return (
    <Dialog
      title={`Take in ${noun.many} from a spreadsheet`}
      isOpen
      onClose={onClose}
      isWide
      isDismissable={text === ''}
      acts={
        canTake ? (
          <Button look="primary" onPress={() => void take()} isPending={isBusy}>
            {`Take in ${preview.total} ${preview.total === 1 ? noun.one : noun.many}`}
          </Button>
        ) : (
          <Button
            look="primary"
            onPress={() => void look(text)}
            isPending={isBusy}
            isDisabled={text.trim() === ''}
          >
            Look at it first
          </Button>
        )
      }
    >
      <div className={styles.steps}>
        <p>
          A CSV file with one {noun.one} a row and the names of the columns in the first. Save the list as a
          file to get the names right. Lengths may stand as the tape says them: 438, 43.8 cm, 17 1/4".
        </p>
        <input
          ref={chooser}
          type="file"
          accept=".csv,text/csv,text/plain"
          className="unseen"
          aria-label="CSV file"
          tabIndex={-1}
          onChange={(event) => {
            const [chosen] = event.currentTarget.files ?? [];
            if (chosen) void chosen.text().then(look);
            event.currentTarget.value = '';
          }}
        />
        <div>
          <Button onPress={() => chooser.current?.click()}>Choose a file</Button>
        </div>
        <TextArea
          label="Or paste the rows here"
          rows={6}
          value={text}
          onChange={(typed) => {
            setText(typed);
            setPreview(null);
          }}
        />
        <div role="status">{problem === null ? null : <Verdict tone="fail" words={problem.message} />}</div>
        {preview === null ? null : <PreviewTable preview={preview} noun={noun} />}
      </div>
    </Dialog>
  );
}

function PreviewTable({
  preview,
  noun,
}: {
  readonly preview: ListPreview;
  readonly noun: ListFileMenuProps['noun'];
}) {
  const { problems, problemCount, total, rows, alikeCount, ignoredColumns } = preview;
  return (
    <>
      {problemCount > 0 ? (
        <>
          <Verdict
            tone="fail"
            words={`${problemCount} ${problemCount === 1 ? 'cell needs' : 'cells need'} mending. Nothing is written until all are right.`}
          />
          <table className={styles.table}>
            <thead>
              <tr>
                <th scope="col">Row</th>
                <th scope="col">Column</th>
                <th scope="col">What is wrong</th>
              </tr>
            </thead>
            <tbody>
              {problems.map(({ row, column, why }) => (
                <tr key={`${row} ${column} ${why}`}>
                  <td className="figures">{row}</td>
                  <td>{column === '' ? 'the whole row' : column}</td>
                  <td>{why}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      ) : (
        <>
          <Verdict
            tone={alikeCount > 0 ? 'check' : 'pass'}
            words={
              alikeCount > 0
                ? `${alikeCount} of ${total} are here already by that name. Taking them in makes a second one of each.`
                : `All ${total} ${total === 1 ? 'row reads' : 'rows read'} well.`
            }
          />
          <ul className={styles.names} aria-label={`${noun.many} in the file`}>
            {rows.map(({ row, name, isAlike }) => (
              <li key={row}>
                <span className="figures">{row}</span> {name}
                {isAlike ? <span className={styles.alike}> here already</span> : null}
              </li>
            ))}
          </ul>
        </>
      )}
      {ignoredColumns.length > 0 ? (
        <p>Left out, because no column is called that: {ignoredColumns.join(', ')}.</p>
      ) : null}
    </>
  );
}
