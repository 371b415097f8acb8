import type { ReactNode } from 'react';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Serial } from '../../ui/serial';
import { named } from '../../words/named';
import { useSpeech } from '../../words/words';
import { severityWord } from './claim';
import type { Claim } from './claim';
import { useDay } from './days';

const Fact = ({ name, children }: { readonly name: string; readonly children: ReactNode }): ReactNode => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
);

/** What is on record of it, with what was not told left out. */
export const ClaimFacts = ({ claim }: { readonly claim: Claim }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const day = useDay();
  const { home, section, place, noticedOn, delivery, asFound, words, because, determined } = claim;
  const told: readonly (readonly [string, ReactNode])[] = [
    [t('complaint.home'), home !== null && <SerialLink of={home} />],
    [t('complaint.section'), section !== null && <SerialLink of={section} />],
    [t('complaint.place'), place !== null && say(named(plant.places, place))],
    [t('complaint.noticed'), noticedOn !== null && day(noticedOn)],
    [t('complaint.occupied'), delivery?.occupiedOn != null && day(delivery.occupiedOn)],
    [t('complaint.set'), delivery?.setOn != null && day(delivery.setOn)],
    [t('complaint.retailer'), delivery?.retailer],
    [t('complaint.hauler'), delivery?.hauler],
    [t('complaint.installer'), delivery?.installer],
    [t('complaint.address'), delivery?.addressKnown === true && t('claims.address-known')],
    [t('claims.photos'), claim.photos.length > 0 && String(claim.photos.length)],
  ];
  return (
    <section className="stack tight">
      {words !== null && <blockquote className="notice">“{words}”</blockquote>}
      {because !== null && <p className="notice proven">{t('claims.because', { because })}</p>}
      {determined !== null && (
        <p className="notice proven">
          {t('claims.determined', {
            severity: t(severityWord(determined.severity)),
            day: day(determined.decidedOn),
            by: determined.by,
            bases: determined.bases ?? '',
          })}
        </p>
      )}
      <dl className="claim-facts">
        {told.map(([name, value]) =>
          value === false || value == null ? null : (
            <Fact key={name} name={name}>
              {value}
            </Fact>
          ),
        )}
        {asFound !== null && <AsFoundFacts asFound={asFound} />}
      </dl>
    </section>
  );
};

const SerialLink = ({ of }: { readonly of: string }): ReactNode => (
  <Link to={places.home(of)}>
    <Serial of={of} />
  </Link>
);

const AsFoundFacts = ({ asFound }: { readonly asFound: NonNullable<Claim['asFound']> }): ReactNode => {
  const { t, say } = useSpeech();
  const list = (ids: typeof asFound.pointsTo): string => ids.map(({ name }) => say(name)).join(', ');
  return (
    <>
      {asFound.pointsTo.length > 0 && <Fact name={t('claims.points-to')}>{list(asFound.pointsTo)}</Fact>}
      {asFound.speaksAgainst.length > 0 && (
        <Fact name={t('claims.speaks-against')}>{list(asFound.speaksAgainst)}</Fact>
      )}
      {asFound.note !== null && <Fact name={t('claims.as-found')}>“{asFound.note}”</Fact>}
    </>
  );
};
