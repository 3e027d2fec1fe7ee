'use client';

import { useEffect, useState } from 'react';
import { Autocomplete } from 'react-aria-components/Autocomplete';
import { Header } from 'react-aria-components/Header';
import { Menu, MenuItem, MenuSection } from 'react-aria-components/Menu';
import { classNames } from '../controls/class-names.ts';
import { SearchBox } from '../controls/search-box.tsx';
import { Dialog } from '../overlays/dialog.tsx';
import menu from '../overlays/menu.module.css';
import styles from './search-dialog.module.css';

export type SearchHit = {
  readonly id: string;
  readonly title: string;
  /** What tells it from others: customer and date, plate, stock. */
  readonly detail?: string;
  readonly href: string;
};

export type SearchGroup = { readonly kind: string; readonly hits: readonly SearchHit[] };

/** Finds groups for a text; called again for each change, and told to stop when the text moved on. */
export type SearchSource = (text: string, signal: AbortSignal) => Promise<readonly SearchGroup[]>;

export type SearchDialogProps = {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** Places of the app, found without asking the server. */
  readonly places: readonly SearchHit[];
  /** Records: jobs, people, plates, parts. Null where nobody is signed in. */
  readonly source: SearchSource | null;
};

const ASK_AFTER_MS = 150;

const placeGroups = (places: readonly SearchHit[], text: string): readonly SearchGroup[] => {
  const wanted = text.trim().toLocaleLowerCase();
  const hits = places.filter(({ title }) => title.toLocaleLowerCase().includes(wanted));
  return hits.length > 0 ? [{ kind: 'Go to', hits }] : [];
};

type Found = { readonly text: string; readonly groups: readonly SearchGroup[]; readonly failed: boolean };

/** Search everything: arrow keys move, Enter opens, results grouped by kind. */
export function SearchDialog({ isOpen, onClose, places, source }: SearchDialogProps) {
  const [text, setText] = useState('');
  const [found, setFound] = useState<Found>({ text: '', groups: [], failed: false });

  useEffect(() => {
    if (source === null || text.trim() === '') return;
    const stop = new AbortController();
    const timer = setTimeout(() => {
      source(text, stop.signal).then(
        (groups) => setFound({ text, groups, failed: false }),
        (error: unknown) => {
          if (!stop.signal.aborted) setFound({ text, groups: [], failed: error !== undefined });
        },
      );
    }, ASK_AFTER_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [source, text]);

  const recordGroups = text.trim() === '' ? [] : found.groups;
  const isLooking = source !== null && text.trim() !== '' && found.text !== text;
  const groups = [...recordGroups, ...placeGroups(places, text)];
  return (
    <Dialog title="Search" isOpen={isOpen} onClose={onClose}>
      <Autocomplete inputValue={text} onInputChange={setText}>
        <SearchBox label="Jobs, people, plates, parts" value={text} onChange={setText} autoFocus />
        <p className={styles.state} role="status">
          {isLooking ? 'Looking…' : found.failed ? 'The search got no answer. Type on to try again.' : ''}
        </p>
        <Menu
          className={classNames(menu.menu, styles.hits)}
          aria-label="Found"
          onAction={onClose}
          renderEmptyState={() => (
            <p className={styles.none}>{isLooking ? '' : 'Nothing found. Try part of a name or a number.'}</p>
          )}
        >
          {groups.map((group) => (
            <MenuSection key={group.kind} id={group.kind} aria-label={group.kind}>
              <Header className={classNames('caption', menu.title)}>{group.kind}</Header>
              {group.hits.map((hit) => (
                <MenuItem key={hit.id} id={hit.id} href={hit.href} textValue={hit.title} className={menu.act}>
                  <span>{hit.title}</span>
                  {hit.detail ? <span className={menu.detail}>{hit.detail}</span> : null}
                </MenuItem>
              ))}
            </MenuSection>
          ))}
        </Menu>
      </Autocomplete>
    </Dialog>
  );
}
