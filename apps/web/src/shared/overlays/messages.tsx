'use client';

import { createContext, type ReactNode, use, useCallback, useEffect, useRef, useState } from 'react';
import { Button } from '../controls/button.tsx';
import { classNames } from '../controls/class-names.ts';
import { addMessage, dropMessage, type ShopMessage } from './message-queue.ts';
import styles from './messages.module.css';

const PLAIN_MS = 6_000;
/** Long enough to notice a mistake and reach the button with a glove on. */
const UNDO_MS = 10_000;

export type SayOptions = { readonly undo?: () => void; readonly tone?: ShopMessage['tone'] };

type Say = (text: string, options?: SayOptions) => void;

const MessagesContext = createContext<Say | null>(null);

/** Holds the polite live region. A message here is never the only place where something is told. */
export function MessagesProvider({ children }: { readonly children: ReactNode }) {
  const [queue, setQueue] = useState<readonly ShopMessage[]>([]);
  const lastId = useRef(0);

  const say = useCallback<Say>((text, { undo, tone = 'plain' } = {}) => {
    lastId.current += 1;
    const message = { id: lastId.current, text, tone, undo: undo ?? null };
    setQueue((shown) => addMessage(shown, message));
  }, []);
  const drop = useCallback((id: number) => setQueue((shown) => dropMessage(shown, id)), []);

  return (
    <MessagesContext value={say}>
      {children}
      <section className={styles.region} aria-label="Messages" data-screen-only="">
        <div role="status" aria-live="polite" aria-atomic="false">
          {queue.map((message) => (
            <MessageLine key={message.id} message={message} onDone={drop} />
          ))}
        </div>
      </section>
    </MessagesContext>
  );
}

function MessageLine({
  message,
  onDone,
}: {
  readonly message: ShopMessage;
  readonly onDone: (id: number) => void;
}) {
  const [isHeld, setIsHeld] = useState(false);
  const { id, text, tone, undo } = message;

  useEffect(() => {
    if (isHeld) return;
    const timer = setTimeout(() => onDone(id), undo ? UNDO_MS : PLAIN_MS);
    return () => clearTimeout(timer);
  }, [id, isHeld, onDone, undo]);

  const hold = () => setIsHeld(true);
  const release = () => setIsHeld(false);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: being over or inside the message only stops its clock.
    <div
      className={classNames(styles.message, tone === 'trouble' && styles.trouble)}
      onPointerEnter={hold}
      onPointerLeave={release}
      onFocus={hold}
      onBlur={release}
    >
      <span>{text}</span>
      {undo ? (
        <Button
          look="quiet"
          onPress={() => {
            undo();
            onDone(id);
          }}
        >
          Undo
        </Button>
      ) : (
        <Button look="quiet" aria-label={`Close message: ${text}`} onPress={() => onDone(id)}>
          Close
        </Button>
      )}
    </div>
  );
}

/** `say('Brace removed.', { undo })` */
export function useMessages(): Say {
  const say = use(MessagesContext);
  if (!say) throw new Error('useMessages needs a MessagesProvider above it.');
  return say;
}
