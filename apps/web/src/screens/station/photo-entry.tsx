import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSpeech } from '../../words/words';

type Props = {
  readonly photos: readonly string[];
  readonly needed: boolean;
  readonly change: (photos: readonly string[]) => void;
};

const fingerprint = async (file: File): Promise<string> => {
  const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
};

/** A photo's fingerprint goes into the record; the photo itself stays where the plant keeps its photos. */
export const PhotoEntry = ({ photos, needed, change }: Props): ReactNode => {
  const { t } = useSpeech();
  const [cannot, setCannot] = useState(false);
  const take = async (files: FileList | null): Promise<void> => {
    // A browser gives this out only to pages it trusts: https, or the device itself.
    if (!('subtle' in crypto)) {
      setCannot(true);
      return;
    }
    const taken = await Promise.all(Array.from(files ?? [], fingerprint));
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
          onChange={(event) => void take(event.target.files)}
        />
      </label>
      <p className="quiet small" role="status">
        {cannot ? t('photo.cannot') : t('photo.taken', { count: photos.length })}
      </p>
    </div>
  );
};
