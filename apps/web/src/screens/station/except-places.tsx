import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSignedIn } from '../../session/session';
import { capital } from '../../words/named';
import { useSpeech } from '../../words/words';

type Props = { readonly except: readonly string[]; readonly change: (except: readonly string[]) => void };

/** Work may be done except at a place: the rest is proven, the place stays open. */
export const ExceptPlaces = ({ except, change }: Props): ReactNode => {
  const { t, say, locale } = useSpeech();
  const { plant } = useSignedIn();
  const [open, setOpen] = useState(except.length > 0);
  const toggle = (place: string): void =>
    change(except.includes(place) ? except.filter((other) => other !== place) : [...except, place]);
  return (
    <fieldset className="stack tight">
      <legend className="field-name">{t('except.where')}</legend>
      <div className="choices">
        <button
          type="button"
          className="button choice"
          aria-pressed={except.length === 0}
          onClick={() => change([])}
        >
          {t('except.nowhere')}
        </button>
        <button type="button" className="button choice" aria-expanded={open} onClick={() => setOpen(!open)}>
          {t('except.at', { count: except.length })}
        </button>
      </div>
      {open && (
        <div className="choices">
          {plant.places.map((place) => (
            <button
              key={place.id}
              type="button"
              className="button choice"
              aria-pressed={except.includes(place.id)}
              onClick={() => toggle(place.id)}
            >
              {capital(say(place.name), locale)}
            </button>
          ))}
        </div>
      )}
    </fieldset>
  );
};
