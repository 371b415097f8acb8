import { useState } from 'react';
import type { ReactNode } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Serial } from '../../ui/serial';
import { useSoon } from '../../ui/soon';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { STANDINGS, mayDetermine, sourceWord } from './claim';
import type { Claim } from './claim';
import { useDay } from './days';
import { ClaimsFile } from './claims-file';
import { DUE_MARKS, DueWords } from './standing';
import { Mark } from '../../ui/mark';
import '../release/release.css';
import './claims.css';

const EVERYTHING = {};
const WHICH = ['undecided', 'new', 'claim', 'all'] as const;
type Which = (typeof WHICH)[number];
const WHICH_WORDS = {
  undecided: 'claims.undecided',
  new: 'claims.new',
  claim: 'claims.claims',
  all: 'claims.all',
} as const;
/** More are no help on a screen; the search finds the others. */
const SHOWN = 100;

const isUndecided = ({ due }: Claim): boolean => due.doneOn === null;
const IS: { readonly [which in Which]: (claim: Claim) => boolean } = {
  undecided: isUndecided,
  new: ({ standing }) => standing === 'new',
  claim: ({ standing }) => standing === 'claim',
  all: () => true,
};

/** Every word of it, in either order. */
const isFound = (claim: Claim, search: string): boolean => {
  const { says, home, words, component, symptom, delivery } = claim;
  const text = [claim.claim, home, claim.section, says.en, says.es, words, component, symptom]
    .concat(delivery?.installer ?? null, delivery?.hauler ?? null, delivery?.retailer ?? null)
    .join(' ')
    .toLowerCase();
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
};

const byDueDay = (one: Claim, other: Claim): number =>
  Number(other.due.doneOn === null) - Number(one.due.doneOn === null) ||
  (isUndecided(one)
    ? one.due.day.localeCompare(other.due.day)
    : other.receivedOn.localeCompare(one.receivedOn));

const ClaimRow = ({ claim }: { readonly claim: Claim }): ReactNode => {
  const { t, say } = useSpeech();
  const day = useDay();
  return (
    <li>
      <Mark name={DUE_MARKS[claim.due.standing]} size={28} />
      <div className="grow stack tight">
        <p>
          <Link to={places.claim(claim.claim)}>{say(claim.says)}</Link>
          {claim.home !== null && (
            <>
              {' · '}
              <Serial of={claim.section ?? claim.home} />
            </>
          )}
        </p>
        <p className="quiet small">
          <span className="mono">{claim.claim}</span> · {t(STANDINGS[claim.standing])} ·{' '}
          {t('claims.came', { day: day(claim.receivedOn), from: t(sourceWord(claim.source)) })}
        </p>
        {claim.words !== null && <p>“{claim.words}”</p>}
      </div>
      <p className="claim-due small">
        <DueWords due={claim.due} />
      </p>
    </li>
  );
};

type FindProps = {
  readonly which: Which;
  readonly setWhich: (which: Which) => void;
  readonly search: string;
  readonly setSearch: (search: string) => void;
  readonly count: (is: (claim: Claim) => boolean) => number;
};

const Find = ({ which, setWhich, search, setSearch, count }: FindProps): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="claim-find no-print">
      <div className="choices" role="group" aria-label={t('claims.which')}>
        {WHICH.map((name) => (
          <button
            key={name}
            type="button"
            className="button"
            aria-pressed={which === name}
            onClick={() => setWhich(name)}
          >
            {t(WHICH_WORDS[name])} ({count(IS[name])})
          </button>
        ))}
      </div>
      <label className="field">
        <span className="field-name">{t('claims.search')}</span>
        <input
          className="input"
          type="search"
          value={search}
          autoComplete="off"
          onChange={(event) => setSearch(event.target.value)}
        />
      </label>
    </div>
  );
};

/** How many wait, and how many of them are late. */
const Head = ({ claims }: { readonly claims: readonly Claim[] | null }): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const count = (is: (claim: Claim) => boolean): number => (claims ?? []).filter(is).length;
  const blanks = {
    count: count(isUndecided),
    new: count(IS.new),
    over: count(({ due }) => due.standing === 'over'),
    soon: count(({ due }) => due.standing === 'soon'),
  };
  return (
    <div className="page-head">
      <div>
        <h1>{claims === null ? t('nav.claims') : t('claims.title', blanks)}</h1>
        {claims !== null && <p>{t('claims.title-says', blanks)}</p>}
      </div>
      {mayDetermine(me) && (
        <Link className="button primary no-print" to={places.complaint}>
          {t('claims.log')}
        </Link>
      )}
    </div>
  );
};

/** What came in, and by when it must be decided: the first due first. */
export const ClaimsScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { me, plant } = useSignedIn();
  const { answer, trouble, again } = useQuestion('claims', EVERYTHING);
  const [which, setWhich] = useState<Which>('undecided');
  const [search, setSearch] = useState('');
  const soon = useSoon(again);
  useLive(soon);
  const all = answer?.claims ?? [];
  const count = (is: (claim: Claim) => boolean): number => all.filter(is).length;
  const rows = all
    .filter(IS[which])
    .filter((claim) => isFound(claim, search.trim()))
    .sort(byDueDay);
  return (
    <main className="page stack" id="main" aria-busy={answer === null}>
      <Head claims={answer?.claims ?? null} />
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <Find {...{ which, setWhich, search, setSearch, count }} />
      {answer !== null && rows.length === 0 && <p role="status">{t('claims.none')}</p>}
      <ul className="rows">
        {rows.slice(0, SHOWN).map((claim) => (
          <ClaimRow key={claim.claim} claim={claim} />
        ))}
      </ul>
      {rows.length > SHOWN && <p>{t('claims.more', { count: rows.length - SHOWN })}</p>}
      {mayDetermine(me) && <ClaimsFile again={again} />}
      <p className="quiet small">{t('claims.counsel', { plant: plant.name })}</p>
    </main>
  );
};
