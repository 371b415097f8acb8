import type { ReactNode } from 'react';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useNow } from '../../ui/now';
import { RoleTag } from '../../ui/role-tag';
import { Serial } from '../../ui/serial';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { SectionFacts } from './cards';
import { useWork } from './work-context';

const STAGES = {
  ordered: 'stage.ordered',
  'on-line': 'stage.on-line',
  pulled: 'stage.pulled',
  shipped: 'stage.shipped',
} as const;

const WhereItIs = ({ section }: { readonly section: SectionFacts }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const times = useTimes();
  const now = useNow();
  const station = plant.stations.find(({ id }) => id === section.station);
  const where = station === undefined ? t(STAGES[section.stage]) : say(station.name);
  return (
    <span>
      {section.stage === 'pulled' ? `${t('stage.pulled')} · ` : ''}
      {section.since === null ? where : t('head.where', { where, since: times.since(section.since, now) })}
    </span>
  );
};

/** Always in sight: whose section this is, and the facts of its design that matter here. */
export const SectionHead = ({ section }: { readonly section: SectionFacts }): ReactNode => {
  const { t, say } = useSpeech();
  const role = section.sections.find(({ serial }) => serial === section.serial)?.role ?? null;
  const facts = section.facts.filter(({ matters }) => matters);
  return (
    <header className="section-head">
      <h1 className="section-serial">
        <Serial of={section.serial} />
      </h1>
      <p className="section-home">
        <Link to={places.home(section.home)}>
          {t('head.home', { home: section.home, model: section.model })}
        </Link>
        {!facts.some(({ attribute }) => attribute === 'role') && <RoleTag role={role} />}
        {section.label !== null && (
          <span className="tag">
            {t('head.label')} <span className="mono">{section.label}</span>
          </span>
        )}
        <WhereItIs section={section} />
      </p>
      {facts.length > 0 && (
        <ul className="facts">
          {facts.map((fact, at) => (
            <li key={fact.attribute}>
              {at > 0 && ' · '}
              {say(fact.says)}
            </li>
          ))}
        </ul>
      )}
    </header>
  );
};

/** Where what holds it came from: `Floor, Rough-in`. A hold of nobody's work is from nowhere in particular. */
const useHeldFrom = (holds: SectionFacts['holds']): string => {
  const { say, locale } = useSpeech();
  const { plant } = useSignedIn();
  const stations = new Set(
    holds.map(({ operation }) => plant.operations.find(({ id }) => id === operation)?.station),
  );
  const names = plant.stations.filter(({ id }) => stations.has(id)).map(({ name }) => say(name));
  return new Intl.ListFormat(locale).format(names);
};

/** Nothing stands in the way of the work here; what is open elsewhere is said all the same, and nothing is green. */
const useOpenSays = (section: SectionFacts): string | null => {
  const { t } = useSpeech();
  const from = useHeldFrom(section.holds);
  const { length } = section.defects.filter(({ state }) => state !== 'closed');
  if (section.holds.length > 0)
    return t(from === '' ? 'head.holds' : 'head.holds-from', { count: section.holds.length, from });
  return length > 0 ? t('head.defects', { count: length }) : null;
};

/** One sentence: what blocks this section here, or that nothing does. */
export const BlockedLine = ({ section }: { readonly section: SectionFacts }): ReactNode => {
  const { t, say } = useSpeech();
  const held = section.holds.length > 0;
  const open = useOpenSays(section);
  const says = section.blocked === null ? open : say(section.blocked);
  if (says === null)
    return (
      <p className="blocked clear">
        <Mark name="proven" size={28} /> {t('head.nothing-blocks')}
      </p>
    );
  return (
    <p className={held ? 'blocked held-line' : 'blocked refused-line'}>
      <Mark name={held ? 'held' : 'refused'} size={28} /> {says}
    </p>
  );
};

/** It stands at another station than this tablet: said in large letters, before anybody works on the wrong one. */
export const StandsElsewhere = ({ section }: { readonly section: SectionFacts }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const { station } = useWork();
  const stands = plant.stations.find(({ id }) => id === section.station);
  if (stands === undefined || stands.id === station.id || station.kind !== 'line') return null;
  return (
    <p className="notice due elsewhere">
      <Mark name="note" size={28} />
      <span className="grow">
        {t('head.stands-at', { station: say(stands.name), here: say(station.name) })}{' '}
        <Link className="button" to={places.sectionAt(stands.id, section.serial)}>
          {t('head.open-there', { station: say(stands.name) })}
        </Link>
      </span>
    </p>
  );
};
