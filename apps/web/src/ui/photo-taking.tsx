import { useState } from 'react';
import type { ReactNode } from 'react';
import { keepPhoto } from '../api/photos';
import type { KeptPhoto } from '../api/photos';
import { useSpeech } from '../words/words';
import type { Speech } from '../words/words';
import { Photos } from './photos';

export type PhotoEntryProps = {
  /** SHA-256 of each: what is told names them by it. */
  readonly photos: readonly string[];
  readonly needed: boolean;
  readonly change: (photos: readonly string[]) => void;
};

type Trouble = Extract<KeptPhoto, { readonly ok: false }>;

const troubleSays = (t: Speech['t'], { why, says }: Trouble): string =>
  why === 'unreachable'
    ? t('photo.cannot')
    : why === 'unreadable'
      ? t('photo.unreadable')
      : (says ?? t('photo.unreadable'));

/** Takes or chooses photos and brings them to the plant at once; the entry then names them. */
export const PhotoTaking = ({ photos, needed, change }: PhotoEntryProps): ReactNode => {
  const { t } = useSpeech();
  const [busy, setBusy] = useState(false);
  const [waits, setWaits] = useState(false);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const take = async (files: readonly File[]): Promise<void> => {
    setBusy(true);
    setTrouble(null);
    const taken: string[] = [];
    for (const file of files) {
      const kept = await keepPhoto(file);
      if (!kept.ok) setTrouble(kept);
      else {
        taken.push(kept.photo);
        setWaits(kept.waits);
      }
    }
    setBusy(false);
    change([...new Set([...photos, ...taken])]);
  };
  return (
    <div className="field">
      <span className="field-name">{t(needed ? 'photo.needed' : 'photo')}</span>
      <label className="button photo-button">
        {t('photo.take')}
        <input
          type="file"
          accept="image/*"
          capture="environment"
          multiple
          disabled={busy}
          onChange={(event) => {
            const files = [...(event.target.files ?? [])];
            // So that the same picture can be chosen again after it was taken out.
            event.target.value = '';
            void take(files);
          }}
        />
      </label>
      <p className="quiet small" role="status" aria-busy={busy}>
        {busy ? '…' : t('photo.taken', { count: photos.length })}
        {waits && ` ${t('photo.waits')}`}
      </p>
      {trouble !== null && (
        <p className="notice due" role="alert">
          {troubleSays(t, trouble)}
        </p>
      )}
      <Photos of={photos} remove={(photo) => change(photos.filter((other) => other !== photo))} />
    </div>
  );
};

export { sendPhotosAgain } from '../api/photos';
