import { useState } from 'react';
import type { ReactNode } from 'react';
import { addressOf } from '../../api/paths';
import { keepLinkPhoto } from '../../api/photos';
import { Photos } from '../../ui/photos';
import { useSpeech } from '../../words/words';

type Props = {
  readonly token: string;
  readonly photos: readonly string[];
  readonly needed: boolean;
  readonly add: (photo: string) => void;
};

/** Photos of the step, sent as they are taken. */
export const SitePhotos = ({ token, photos, needed, add }: Props): ReactNode => {
  const { t } = useSpeech();
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const take = async (files: readonly File[]): Promise<void> => {
    setBusy(true);
    setTrouble(null);
    for (const file of files) {
      const kept = await keepLinkPhoto(file, addressOf('linkPhoto').path, token);
      if (kept.ok) add(kept.photo);
      else setTrouble(kept.why === 'unreachable' ? t('photo.cannot') : (kept.says ?? t('photo.unreadable')));
    }
    setBusy(false);
  };
  return (
    <div className="stack tight">
      <label className="button photo-button">
        {t('site-link.photo')}
        <input
          type="file"
          accept="image/*"
          capture="environment"
          multiple
          disabled={busy}
          onChange={(event) => void take([...(event.target.files ?? [])])}
        />
      </label>
      <p className="quiet small" role="status" aria-busy={busy}>
        {busy ? '…' : t('site-link.photos', { count: photos.length })}
        {needed && photos.length === 0 && ` · ${t('site-link.photo-needed')}`}
      </p>
      {trouble !== null && (
        <p className="notice due" role="alert">
          {trouble}
        </p>
      )}
      <Photos of={photos} />
    </div>
  );
};
