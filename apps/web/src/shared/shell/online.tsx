'use client';

import { useEffect, useState, useSyncExternalStore } from 'react';
import styles from './online.module.css';

const subscribe = (changed: () => void): (() => void) => {
  window.addEventListener('online', changed);
  window.addEventListener('offline', changed);
  return () => {
    window.removeEventListener('online', changed);
    window.removeEventListener('offline', changed);
  };
};

/** Whether the device believes it has a network. The server always answers yes. */
export function useOnline(): boolean {
  return useSyncExternalStore(
    subscribe,
    () => navigator.onLine,
    () => true,
  );
}

export type OfflineNoticeProps = {
  /** Changes kept on this device that still have to be sent. */
  readonly unsent?: number;
};

/** A link of this app that would leave the page. */
function leadsAway({ target }: MouseEvent): boolean {
  const link = target instanceof Element ? target.closest('a[href]') : null;
  return link instanceof HTMLAnchorElement && link.origin === location.origin && link.target === '';
}

/** Without a connection another page would be the browser's error; true once somebody tried to leave. */
function useStaysOpen(isOnline: boolean): boolean {
  const [hasTried, setHasTried] = useState(false);
  useEffect(() => {
    if (isOnline) return;
    const hold = (event: MouseEvent) => {
      if (!leadsAway(event)) return;
      event.preventDefault();
      event.stopPropagation();
      setHasTried(true);
    };
    document.addEventListener('click', hold, true);
    return () => {
      document.removeEventListener('click', hold, true);
      setHasTried(false);
    };
  }, [isOnline]);
  return hasTried;
}

/** Says plainly that the device is offline, and that nothing typed is lost; keeps the page that is open. */
export function OfflineNotice({ unsent = 0 }: OfflineNoticeProps) {
  const isOnline = useOnline();
  const staysOpen = useStaysOpen(isOnline);
  return (
    <div role="status" data-screen-only="">
      {isOnline ? null : (
        <p className={styles.notice}>
          <strong>{unsent > 0 ? `Offline, ${unsent} to send.` : 'Offline.'}</strong> What you type is kept on
          this device and sent when the connection is back.
          {staysOpen ? ' This page stays open: another one needs the connection.' : ''}
        </p>
      )}
    </div>
  );
}
