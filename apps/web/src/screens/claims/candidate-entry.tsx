import { useState } from 'react';
import type { ReactNode } from 'react';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import { AssociationTable } from './association-table';
import { mayDetermine } from './claim';
import type { Candidate, Claim, Evidence, Trace } from './claim';
import { ConfirmForm } from './confirm-form';

type Props = {
  readonly candidate: Candidate;
  readonly trace: Trace;
  readonly claim: Claim;
  readonly open: boolean;
  readonly again: () => void;
  readonly expose: () => void;
};

const SPEAKS = ['for', 'against', 'neither'] as const;
const SPEAKS_WORDS: Readonly<Record<Evidence['speaks'], WordKey>> = {
  for: 'trace.for',
  against: 'trace.against',
  neither: 'trace.neither',
};
const SPEAKS_MARKS = { for: 'proven', against: 'refused', neither: 'note' } as const;

/** A cause with all that speaks for it and against it; what is in words here can be looked up behind its links. */
export const CandidateEntry = (props: Props): ReactNode => {
  const { candidate, trace, open, expose } = props;
  const { t, say } = useSpeech();
  const tied = trace.candidates.filter(({ key }) => candidate.tiedWith.includes(key));
  return (
    <details className="cause" open={open}>
      <summary>
        <span className="cause-rank">{candidate.rank}</span>
        <strong>{say(candidate.says)}</strong>
        <span className="cause-sure">
          <Sure share={candidate.confidence} />
          <span>
            {say(candidate.confidenceSays)}, {Math.round(candidate.confidence * 100)} %
          </span>
        </span>
      </summary>
      <div className="cause-why">
        {tied.length > 0 && (
          <p className="notice due">
            {t('trace.tied', { others: tied.map(({ says }) => say(says)).join('; ') })}
          </p>
        )}
        <AssociationTable candidate={candidate} unit={trace.unit} />
        {SPEAKS.map((speaks) => (
          <Why key={speaks} speaks={speaks} candidate={candidate} trace={trace} />
        ))}
        <Behind candidate={candidate} />
        <div className="row no-print">
          <button type="button" className="button" onClick={expose}>
            {t('trace.expose')}
          </button>
          <Confirm {...props} />
        </div>
      </div>
    </details>
  );
};

const Confirm = ({ candidate, claim, again }: Props): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const [open, setOpen] = useState(false);
  if (!mayDetermine(me)) return null;
  return (
    <>
      <button type="button" className="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {t('trace.confirm')}
      </button>
      {open && <ConfirmForm candidate={candidate} claim={claim} done={again} />}
    </>
  );
};

/** How sure, as a length. */
const Sure = ({ share }: { readonly share: number }): ReactNode => (
  <svg className="cause-bar" viewBox="0 0 100 1" preserveAspectRatio="none" aria-hidden="true">
    <rect width={share * 100} height="1" />
  </svg>
);

type WhyProps = Pick<Props, 'candidate' | 'trace'> & { readonly speaks: Evidence['speaks'] };
const Why = ({ speaks, candidate, trace }: WhyProps): ReactNode => {
  const { t, say } = useSpeech();
  const said = candidate.evidence.filter((one) => one.speaks === speaks);
  if (said.length === 0) return null;
  return (
    <div>
      <h3>{t(SPEAKS_WORDS[speaks])}</h3>
      <ul className="why">
        {said.map((one) => (
          <li key={say(one.says)}>
            <Mark name={SPEAKS_MARKS[speaks]} size={20} />
            <span>
              {say(one.says)} <Claims ids={one.claims} trace={trace} />
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
};

/** To the record behind it: the claim, and the section's own history. */
const Claims = ({ ids, trace }: { readonly ids: readonly string[]; readonly trace: Trace }): ReactNode =>
  ids.map((id) => {
    const like = trace.claims.find(({ claim }) => claim === id);
    const serial = like?.section ?? like?.home;
    return (
      <span key={id} className="small">
        {' '}
        <Link to={places.claim(id)}>{id}</Link>
        {serial !== undefined && (
          <>
            {' ('}
            <Link to={places.home(serial)}>{serial}</Link>
            {')'}
          </>
        )}
      </span>
    );
  });

/** Station, operation and lot in question, where they are looked up. */
const Behind = ({ candidate: { cause } }: Pick<Props, 'candidate'>): ReactNode => {
  const { t } = useSpeech();
  const isMaterial = cause.factor === 'lot' || cause.factor === 'instrument' || cause.factor === 'maker';
  return (
    <p className="row small no-print">
      {cause.station !== null && <Link to={places.stationQuality(cause.station)}>{t('trace.station')}</Link>}
      {cause.operation !== null && <Link to={places.rulebook}>{t('trace.operation')}</Link>}
      {isMaterial && <Link to={places.equipment}>{t('trace.material', { value: cause.value })}</Link>}
    </p>
  );
};
