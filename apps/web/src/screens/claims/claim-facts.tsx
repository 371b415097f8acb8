import type { ReactNode } from 'react';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Serial } from '../../ui/serial';
import { named } from '../../words/named';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import { severityWord } from './claim';
import type { Claim } from './claim';
import { useDay } from './days';

const Fact = ({ name, children }: { readonly name: string; readonly children: ReactNode }): ReactNode => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
);

type Told = readonly (readonly [string, ReactNode])[];

/** What was told of the home and of how it reached its place. */
const useTold = ({ home, section, place, noticedOn, delivery, photos }: Claim): Told => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const day = useDay();
  const dayOf = (on: string | null | undefined): ReactNode => on != null && day(on);
  return [
    [t('complaint.home'), home !== null && <SerialLink of={home} />],
    [t('complaint.section'), section !== null && <SerialLink of={section} />],
    [t('complaint.place'), place !== null && say(named(plant.places, place))],
    [t('complaint.noticed'), dayOf(noticedOn)],
    ...deliveryTold(delivery, dayOf).map(([key, value]) => [t(key), value] as const),
    [t('claims.photos'), photos.length > 0 && String(photos.length)],
  ];
};

const deliveryTold = (
  delivery: Claim['delivery'],
  dayOf: (on: string | null | undefined) => ReactNode,
): readonly (readonly [WordKey, ReactNode])[] =>
  delivery === null
    ? []
    : [
        ['complaint.occupied', dayOf(delivery.occupiedOn)],
        ['complaint.set', dayOf(delivery.setOn)],
        ['complaint.retailer', delivery.retailer],
        ['complaint.hauler', delivery.hauler],
        ['complaint.installer', delivery.installer],
        ['complaint.address', delivery.addressKnown && <AddressKnown />],
      ];

const AddressKnown = (): ReactNode => useSpeech().t('claims.address-known');

/** What is on record of it, with what was not told left out. */
export const ClaimFacts = ({ claim }: { readonly claim: Claim }): ReactNode => {
  const { t } = useSpeech();
  const day = useDay();
  const told = useTold(claim);
  const { asFound, words, because, determined } = claim;
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
