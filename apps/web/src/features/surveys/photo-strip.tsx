'use client';

import { useEffect, useId, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Dialog } from '../../shared/overlays/dialog.tsx';
import styles from './measuring-screen.module.css';
import { photoPath, type SurveyAnswer } from './photo-upload.ts';
import type { SurveyAct } from './survey-acts.ts';

type Photo = SurveyAnswer['photos'][number];
type WaitingPhoto = Extract<SurveyAct, { kind: 'photo' }>;

export type PhotoStripProps = {
  /** "C, opening, square to the way in" */
  readonly about: string;
  readonly photos: readonly Photo[];
  readonly waiting: readonly WaitingPhoto[];
  readonly isReadOnly: boolean;
  readonly onRemove: (photoId: string) => void;
};

/** One tap opens the camera of a phone, or the files of a computer. */
export function CameraButton({
  about,
  onPhoto,
}: {
  readonly about: string;
  readonly onPhoto: (photo: File) => void;
}) {
  const id = useId();
  return (
    <label className={styles.camera} htmlFor={id}>
      Photo<span className="unseen"> of {about}</span>
      <input
        id={id}
        type="file"
        accept="image/jpeg,image/png,image/webp,image/avif"
        capture="environment"
        className="unseen"
        onChange={(event) => {
          const [photo] = event.target.files ?? [];
          if (photo !== undefined) onPhoto(photo);
          event.target.value = '';
        }}
      />
    </label>
  );
}

/** Photos of one dimension, sent or still waiting on this device. */
export function PhotoStrip({ about, photos, waiting, isReadOnly, onRemove }: PhotoStripProps) {
  const [opened, setOpened] = useState<Photo | null>(null);
  return (
    <div className={styles.photos}>
      {photos.map((photo, index) => (
        <button
          key={photo.id}
          type="button"
          className={styles.thumb}
          aria-label={`Photo ${index + 1} of ${about}`}
          onClick={() => setOpened(photo)}
        >
          {/* biome-ignore lint/performance/noImgElement: the API makes the small size and lets nobody else see it. */}
          <img src={photoPath(photo.fileId, 'thumb')} alt="" loading="lazy" />
        </button>
      ))}
      {waiting.map((act) => (
        <WaitingThumb key={act.id} act={act} />
      ))}
      <Dialog
        title={about}
        isWide
        isOpen={opened !== null}
        onClose={() => setOpened(null)}
        acts={
          isReadOnly || opened === null ? null : (
            <Button
              look="danger"
              onPress={() => {
                onRemove(opened.id);
                setOpened(null);
              }}
            >
              Take this photo off
            </Button>
          )
        }
      >
        {opened === null ? null : (
          // biome-ignore lint/performance/noImgElement: see above.
          <img className={styles.photo} src={photoPath(opened.fileId, 'full')} alt={about} />
        )}
      </Dialog>
    </div>
  );
}

function WaitingThumb({ act }: { readonly act: WaitingPhoto }) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(act.photo);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [act.photo]);
  return (
    <span className={styles.thumb} data-waiting="">
      {/* biome-ignore lint/performance/noImgElement: it lives on this device only. */}
      {address === null ? null : <img src={address} alt="Kept on this device, not sent yet" />}
      <span className={styles.waitingWord}>
        {act.trouble?.kind === 'refused' ? act.trouble.message : 'to send'}
      </span>
    </span>
  );
}
