'use client';

import { useSyncExternalStore } from 'react';
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

/** Says plainly that the device is offline, and that nothing typed is lost. */
export function OfflineNotice({ unsent = 0 }: OfflineNoticeProps) {
  const isOnline = useOnline();
  return (
    <div role="status" data-screen-only="">
      {isOnline ? null : (
        <p className={styles.notice}>
          <strong>{unsent > 0 ? `Offline, ${unsent} to send.` : 'Offline.'}</strong> What you type is kept on
          this device and sent when the connection is back.
        </p>
      )}
    </div>
  );
}
