'use client';

import { createContext, type ReactNode, use, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { Switch } from '../controls/switch.tsx';
import { Dialog } from '../overlays/dialog.tsx';
import { matchesShortcut, type Shortcut, shortcutWords } from './shortcut.ts';
import styles from './shortcuts.module.css';

type Registered = Shortcut & { readonly act: () => void };

type ShortcutBook = {
  readonly add: (shortcut: Registered) => () => void;
  readonly showList: () => void;
};

const ShortcutContext = createContext<ShortcutBook | null>(null);
const STORED_OFF = 'gusset-shortcuts-off';

const isTypingPlace = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    target.matches('input, textarea, select, [role="textbox"], [role="spinbutton"]'));

/** Keeps the list of shortcuts of the page, runs them, and shows them under `?`. */
export function ShortcutProvider({ children }: { readonly children: ReactNode }) {
  const book = useRef(new Set<Registered>());
  const [listed, setListed] = useState<readonly Shortcut[] | null>(null);
  const [isOff, setIsOff] = useState(false);

  useEffect(() => setIsOff(localStorage.getItem(STORED_OFF) === 'yes'), []);

  const add = useCallback((shortcut: Registered) => {
    book.current.add(shortcut);
    return () => {
      book.current.delete(shortcut);
    };
  }, []);
  const showList = useCallback(() => setListed([...book.current]), []);

  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.repeat) return;
      const { key, ctrlKey, metaKey, altKey, shiftKey, target } = event;
      const press = { key, ctrlKey, metaKey, altKey, shiftKey, isTyping: isTypingPlace(target) };
      if (!isOff && matchesShortcut(press, '?')) {
        event.preventDefault();
        showList();
        return;
      }
      const hit = [...book.current].find(
        (shortcut) => matchesShortcut(press, shortcut.keys) && (!isOff || shortcut.keys.includes('mod')),
      );
      if (!hit) return;
      event.preventDefault();
      hit.act();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [isOff, showList]);

  const value = useMemo(() => ({ add, showList }), [add, showList]);
  const isApple = listed !== null && /mac|iphone|ipad/iu.test(navigator.userAgent);
  return (
    <ShortcutContext value={value}>
      {children}
      <Dialog title="Keys" isOpen={listed !== null} onClose={() => setListed(null)}>
        <dl className={styles.keys}>
          {(listed ?? []).map(({ keys, does }) => (
            <div key={keys}>
              <dt>{does}</dt>
              <dd>
                <kbd className="figures">{shortcutWords(keys, isApple)}</kbd>
              </dd>
            </div>
          ))}
          <div>
            <dt>Show this list</dt>
            <dd>
              <kbd className="figures">?</kbd>
            </dd>
          </div>
        </dl>
        <Switch
          isSelected={!isOff}
          onChange={(isOn) => {
            localStorage.setItem(STORED_OFF, isOn ? 'no' : 'yes');
            setIsOff(!isOn);
          }}
          detail="Keys with Ctrl or ⌘ always work"
        >
          Single keys act
        </Switch>
      </Dialog>
    </ShortcutContext>
  );
}

/** Adds a shortcut while the component that calls it is on the page. */
export function useShortcut(keys: string, does: string, act: () => void): void {
  const book = use(ShortcutContext);
  const latest = useRef(act);
  useEffect(() => {
    latest.current = act;
  });
  useEffect(() => book?.add({ keys, does, act: () => latest.current() }), [book, keys, does]);
}

/** Opens the list that `?` opens, for those without a keyboard. */
export function useShortcutList(): () => void {
  const book = use(ShortcutContext);
  if (!book) throw new Error('useShortcutList needs a ShortcutProvider above it.');
  return book.showList;
}
