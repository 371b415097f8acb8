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
          {facts.map((fact) => (
            <li key={fact.attribute}>{say(fact.says)}</li>
          ))}
        </ul>
      )}
    </header>
  );
};

/** One sentence: what blocks this section here, or that nothing does. */
export const BlockedLine = ({ section }: { readonly section: SectionFacts }): ReactNode => {
  const { t, say } = useSpeech();
  const held = section.holds.length > 0;
  if (section.blocked === null)
    return (
      <p className="blocked clear">
        <Mark name="proven" size={28} /> {t('head.nothing-blocks')}
      </p>
    );
  return (
    <p className={held ? 'blocked held-line' : 'blocked refused-line'}>
      <Mark name={held ? 'held' : 'refused'} size={28} /> {say(section.blocked)}
    </p>
  );
};
