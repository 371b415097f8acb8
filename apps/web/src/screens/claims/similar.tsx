import type { ReactNode } from 'react';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { Serial } from '../../ui/serial';
import { useSpeech } from '../../words/words';
import { STANDINGS } from './claim';
import type { Claim } from './claim';
import type { Complaint } from './complaint';
import { useDay } from './days';

type Draft = Pick<Complaint, 'component' | 'symptom' | 'home' | 'words'>;
type Props = { readonly draft: Draft; readonly claims: readonly Claim[] };

/** Shorter words are in every complaint. */
const LETTERS = 4;
const SHOWN = 8;

const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word.length >= LETTERS);

/** The same failure counts most, then the same home, the same component, and words both have. */
const likeness = (claim: Claim, draft: Draft): number => {
  const said = new Set(wordsIn(`${claim.words ?? ''} ${claim.says.en} ${claim.says.es}`));
  const shared = wordsIn(draft.words).filter((word) => said.has(word)).length;
  const part = draft.component !== '' && claim.component === draft.component;
  return (
    (part && claim.symptom === draft.symptom ? 8 : part ? 3 : 0) +
    (draft.home !== '' && claim.home === draft.home ? 4 : 0) +
    Math.min(shared, 3)
  );
};

/** Earlier claims like the one that is being written down. */
export const Similar = ({ draft, claims }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const day = useDay();
  const alike = claims
    .map((claim) => ({ claim, like: likeness(claim, draft) }))
    .filter(({ like }) => like > 0)
    .sort((one, other) => other.like - one.like);
  return (
    <aside
      className="stack tight"
      aria-live="polite"
      aria-label={t('complaint.similar', { count: alike.length })}
    >
      <h2>{t('complaint.similar', { count: alike.length })}</h2>
      {alike.length === 0 && <p className="quiet">{t('complaint.similar-none')}</p>}
      <ul className="rows">
        {alike.slice(0, SHOWN).map(({ claim }) => (
          <li key={claim.claim}>
            <div className="grow">
              <p>
                <Link to={places.claim(claim.claim)}>{say(claim.says)}</Link>
                {claim.home !== null && (
                  <>
                    {' · '}
                    <Serial of={claim.home} />
                  </>
                )}
              </p>
              <p className="quiet small">
                {day(claim.receivedOn)} · {t(STANDINGS[claim.standing])}
              </p>
              {claim.words !== null && <p className="small">“{claim.words}”</p>}
            </div>
          </li>
        ))}
      </ul>
    </aside>
  );
};
