import { Suspense, lazy, useEffect, useState } from 'react';
import type { ReactNode } from 'react';
import { onSignatureNeeded } from './api/signing';
import { Frame } from './ui/frame';
import { placeOf } from './router/places';
import type { Place } from './router/places';
import { Link, useAddress } from './router/router';
import { useSession } from './session/session';
import { TroubleNotice } from './ui/trouble';
import { OfficeWords, useSpeech } from './words/words';
import type { WordKey } from './words/words';

const StartScreen = lazy(() =>
  import('./screens/start/start-screen').then((m) => ({ default: m.StartScreen })),
);
const SignInScreen = lazy(() =>
  import('./screens/sign-in/sign-in-screen').then((m) => ({ default: m.SignInScreen })),
);
const StationScreen = lazy(() =>
  import('./screens/station/station-screen').then((m) => ({ default: m.StationScreen })),
);
const LineScreen = lazy(() => import('./screens/line/line-screen').then((m) => ({ default: m.LineScreen })));
const QualityScreen = lazy(() =>
  import('./screens/quality/quality-screen').then((m) => ({ default: m.QualityScreen })),
);
const StationQualityScreen = lazy(() =>
  import('./screens/quality/station-quality-screen').then((m) => ({ default: m.StationQualityScreen })),
);
const HomeScreen = lazy(() => import('./screens/home/home-screen').then((m) => ({ default: m.HomeScreen })));

const PeopleScreen = lazy(() =>
  import('./screens/people/people-screen').then((m) => ({ default: m.PeopleScreen })),
);
const AuditScreen = lazy(() =>
  import('./screens/audit/audit-screen').then((m) => ({ default: m.AuditScreen })),
);
const RulebookScreen = lazy(() =>
  import('./screens/rulebook/rulebook-screen').then((m) => ({ default: m.RulebookScreen })),
);
const TravelerScreen = lazy(() =>
  import('./screens/traveler/traveler-screen').then((m) => ({ default: m.TravelerScreen })),
);
const PaperLabelScreen = lazy(() =>
  import('./screens/paper-label/paper-label-screen').then((m) => ({ default: m.PaperLabelScreen })),
);
const SetupScreen = lazy(() =>
  import('./screens/setup/setup-screen').then((m) => ({ default: m.SetupScreen })),
);

const DefectsScreen = lazy(() =>
  import('./screens/defects/defects-screen').then((m) => ({ default: m.DefectsScreen })),
);
const HoldsScreen = lazy(() =>
  import('./screens/holds/holds-screen').then((m) => ({ default: m.HoldsScreen })),
);
const EquipmentScreen = lazy(() =>
  import('./screens/equipment/equipment-screen').then((m) => ({ default: m.EquipmentScreen })),
);
const ReleaseScreen = lazy(() =>
  import('./screens/release/release-screen').then((m) => ({ default: m.ReleaseScreen })),
);
const AgencyScreen = lazy(() =>
  import('./screens/inspector/agency-screen').then((m) => ({ default: m.AgencyScreen })),
);
const ReportScreen = lazy(() =>
  import('./screens/inspector/report-screen').then((m) => ({ default: m.ReportScreen })),
);
const ContainmentScreen = lazy(() =>
  import('./screens/containment/containment-screen').then((m) => ({ default: m.ContainmentScreen })),
);
const SiteScreen = lazy(() => import('./screens/site/site-screen').then((m) => ({ default: m.SiteScreen })));
const FeedScreen = lazy(() => import('./screens/feed/feed-screen').then((m) => ({ default: m.FeedScreen })));
const TagScreen = lazy(() => import('./screens/tag/tag-screen').then((m) => ({ default: m.TagScreen })));

const OwnAccessScreen = lazy(() =>
  import('./screens/own-access/own-access-screen').then((m) => ({ default: m.OwnAccessScreen })),
);
const SigningForm = lazy(() =>
  import('./screens/signing/signing-form').then((m) => ({ default: m.SigningForm })),
);
const ClaimsScreen = lazy(() =>
  import('./screens/claims/claims-screen').then((m) => ({ default: m.ClaimsScreen })),
);
const ClaimScreen = lazy(() =>
  import('./screens/claims/claim-screen').then((m) => ({ default: m.ClaimScreen })),
);
const ComplaintScreen = lazy(() =>
  import('./screens/claims/complaint-screen').then((m) => ({ default: m.ComplaintScreen })),
);
const DueScreen = lazy(() => import('./screens/due/due-screen').then((m) => ({ default: m.DueScreen })));
const DeterminationScreen = lazy(() =>
  import('./screens/due/determination-screen').then((m) => ({ default: m.DeterminationScreen })),
);

const VerifyScreen = lazy(() =>
  import('./screens/verify/verify-screen').then((m) => ({ default: m.VerifyScreen })),
);

const LinkScreen = lazy(() => import('./screens/link/link-screen').then((m) => ({ default: m.LinkScreen })));

type At<S extends Place['screen']> = Extract<Place, { readonly screen: S }>;

/** A place without its screen does not compile. */
const SCREENS: { readonly [S in Place['screen']]: (place: At<S>) => ReactNode } = {
  start: () => <StartScreen />,
  'sign-in': () => <SignInScreen />,
  line: () => <LineScreen />,
  audit: () => <AuditScreen />,
  verify: () => <VerifyScreen />,
  people: () => <PeopleScreen />,
  'own-access': () => <OwnAccessScreen />,
  rulebook: ({ part }) => <RulebookScreen part={part} />,
  'paper-label': ({ kind, code }) => <PaperLabelScreen key={code} kind={kind} code={code} />,
  traveler: ({ serial }) => <TravelerScreen key={serial} serial={serial} />,
  quality: () => <QualityScreen />,
  'station-quality': ({ station }) => <StationQualityScreen key={station} station={station} />,
  home: ({ serial }) => <HomeScreen serial={serial} />,
  station: ({ station, serial }) => <StationScreen key={station} station={station} serial={serial} />,
  defects: () => <DefectsScreen />,
  holds: () => <HoldsScreen />,
  equipment: () => <EquipmentScreen />,
  release: ({ serial }) => <ReleaseScreen key={serial} serial={serial} />,
  agency: () => <AgencyScreen />,
  'agency-report': () => <ReportScreen />,
  containment: () => <ContainmentScreen />,
  site: () => <SiteScreen />,
  feed: () => <FeedScreen />,
  link: ({ part }) => <LinkScreen key={part} part={part} />,
  claims: () => <ClaimsScreen />,
  claim: ({ claim }) => <ClaimScreen key={claim} claim={claim} />,
  complaint: () => <ComplaintScreen />,
  due: () => <DueScreen />,
  determination: ({ determination }) => (
    <DeterminationScreen key={determination} determination={determination} />
  ),
  tag: ({ serial, hold }) => <TagScreen serial={serial} hold={hold} />,
  unknown: () => <UnknownPlace />,
};

/** The table pairs each place with its own screen; the compiler has checked that where it is written. */
const screenOf = (place: Place): ReactNode => (SCREENS[place.screen] as (place: Place) => ReactNode)(place);

const UnknownPlace = (): ReactNode => {
  const { t } = useSpeech();
  return (
    <main className="page stack" id="main">
      <h1>{t('unknown-place')}</h1>
      <p>
        <Link to="/">{t('nav.start')}</Link>
      </p>
    </main>
  );
};

/** Until it is known who is there, nothing of the plant is shown. */
const Gate = ({ place }: { readonly place: Place }): ReactNode => {
  const { state, renew } = useSession();
  // A packet is verified by whoever has one, with no server to ask; a link opens its home without an account.
  if (place.screen === 'verify' || place.screen === 'link')
    return <OfficeWords>{screenOf(place)}</OfficeWords>;
  if (state === 'asking') return <main className="page" id="main" aria-busy="true" />;
  if (state === 'unreachable')
    return (
      <main className="page" id="main">
        <TroubleNotice trouble={{ kind: 'unreachable' }} again={() => void renew()} />
      </main>
    );
  if (state === 'set-up') return <SetupScreen />;
  if (state === 'signed-out') return <SignInScreen />;
  return ON_THE_FLOOR.has(place.screen) ? screenOf(place) : <OfficeWords>{screenOf(place)}</OfficeWords>;
};

/** Screens a tablet shows at a station: they do without the words of all others. */
const ON_THE_FLOOR: ReadonlySet<Place['screen']> = new Set(['start', 'sign-in', 'station', 'unknown']);

const TITLES: Readonly<Record<Place['screen'], WordKey>> = {
  start: 'nav.start',
  'sign-in': 'sign-in',
  line: 'nav.line',
  quality: 'nav.quality',
  'station-quality': 'nav.quality',
  people: 'nav.people',
  'own-access': 'nav.own-access',
  rulebook: 'nav.rulebook',
  'paper-label': 'nav.labels',
  traveler: 'nav.traveler',
  audit: 'nav.audit',
  verify: 'nav.verify',
  home: 'nav.homes',
  link: 'nav.homes',
  defects: 'nav.defects',
  holds: 'nav.holds',
  equipment: 'nav.equipment',
  release: 'nav.release',
  agency: 'nav.agency',
  'agency-report': 'nav.agency',
  containment: 'nav.containment',
  site: 'nav.site',
  feed: 'nav.feed',
  claims: 'nav.claims',
  claim: 'nav.claims',
  complaint: 'nav.complaint',
  due: 'nav.due',
  determination: 'nav.due',
  tag: 'nav.holds',
  station: 'nav.station',
  unknown: 'unknown-place',
};

/** Over whatever screen sent something that is signed by hand. */
const Signing = (): ReactNode => {
  const [wanted, setWanted] = useState<{
    readonly key: string;
    readonly done: (signed: boolean) => void;
  } | null>(null);
  useEffect(() => onSignatureNeeded((key) => new Promise((done) => setWanted({ key, done }))), []);
  if (wanted === null) return null;
  const done = (signed: boolean): void => {
    setWanted(null);
    wanted.done(signed);
  };
  return (
    <Suspense fallback={null}>
      <OfficeWords>
        <SigningForm sentAs={wanted.key} done={done} />
      </OfficeWords>
    </Suspense>
  );
};

export const App = (): ReactNode => {
  const { t } = useSpeech();
  const place = placeOf(useAddress().pathname);
  const title = t(TITLES[place.screen]);
  useEffect(() => {
    document.title = `${title} · Studbook`;
  }, [title]);

  return (
    <Frame place={place}>
      <Suspense fallback={<main className="page" id="main" aria-busy="true" />}>
        <Gate place={place} />
      </Suspense>
      <Signing />
    </Frame>
  );
};
