import { useState } from 'react';
import type { ReactNode } from 'react';
import { addressOfPhoto } from '../api/photo-address';
import { useSpeech } from '../words/words';
import './photos.css';

type Props = {
  /** SHA-256 of each. */
  readonly of: readonly string[];
  readonly remove?: (photo: string) => void;
};

/** Photos that an entry names. One that never came here is said to be known by its fingerprint only. */
export const Photos = ({ of, remove }: Props): ReactNode =>
  of.length === 0 ? null : (
    <ul className="photos">
      {of.map((photo, n) => (
        <Photo key={photo} photo={photo} number={n + 1} remove={remove} />
      ))}
    </ul>
  );

type PhotoProps = {
  readonly photo: string;
  readonly number: number;
  readonly remove: Props['remove'];
};

const Photo = ({ photo, number, remove }: PhotoProps): ReactNode => {
  const { t } = useSpeech();
  const [absent, setAbsent] = useState(false);
  const address = addressOfPhoto(photo);
  return (
    <li>
      {absent ? (
        <span className="photo-absent small quiet">
          {t('photo.absent')} <code>{photo.slice(0, 12)}…</code>
        </span>
      ) : (
        <a href={address} target="_blank" rel="noreferrer">
          <img
            src={address}
            alt={`${t('photo')} ${String(number)}`}
            loading="lazy"
            onError={() => setAbsent(true)}
          />
        </a>
      )}
      {remove !== undefined && (
        <button type="button" className="button" onClick={() => remove(photo)}>
          {t('photo.remove', { number })}
        </button>
      )}
    </li>
  );
};
