import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useNow } from '../../ui/now';
import { Serial } from '../../ui/serial';
import { named } from '../../words/named';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';

type Standing = AnswerOf<'line'>['sections'][number];

export const defectsOf = ({ defects }: Standing): number =>
  defects.nonconformance + defects.punch + defects.shortage + defects.record;

/** Where it is, and why it is off the line. */
const Away = ({ section }: { readonly section: Standing }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const from = section.station === null ? '' : say(named(plant.stations, section.station));
  return (
    <p className="small">
      {section.stage === 'pulled' && section.pulledFor
        ? t('line.pulled', { from, why: say(section.pulledFor) })
        : from}
    </p>
  );
};

/** A section as it stands: hitch ahead, the way it travels, its serial, how long, and a bar across it while it is held. */
export const StandingBlock = ({
  section,
  away = false,
}: {
  readonly section: Standing;
  /** Drawn apart from the bay it belongs to: it says itself where it is, and why. */
  readonly away?: boolean;
}): ReactNode => {
  const { t, say } = useSpeech();
  const times = useTimes();
  const now = useNow();
  const defects = defectsOf(section);
  const to =
    section.station === null
      ? places.home(section.serial)
      : places.sectionAt(section.station, section.serial);
  return (
    <li className={section.heldBy === null ? 'block' : 'block held-block'}>
      <div className="block-body">
        <Link className="block-serial" to={to}>
          <Serial of={section.serial} />
        </Link>
        {away && <Away section={section} />}
        <p className="small block-about">
          {section.since !== null && <span>{times.since(section.since, now)} · </span>}
          <Link to={places.home(section.home)}>{section.model}</Link>
        </p>
        {section.heldBy !== null && (
          <p className="block-hold small">
            <Mark name="held" size={20} /> <span>{say(section.heldBy)}</span>
          </p>
        )}
        {section.openWork > 0 && (
          <p className="small block-note">
            <Mark name="due" size={16} /> {t('line.open-work', { count: section.openWork })}
          </p>
        )}
        {defects > 0 && (
          <p className="small block-note">
            <Mark name="refused" size={16} /> {t('line.defects', { count: defects })}
          </p>
        )}
      </div>
      <svg className="hitch" width="12" height="24" viewBox="0 0 12 24" aria-hidden="true" focusable="false">
        <path d="M0 2l10 10L0 22" fill="none" stroke="currentColor" strokeWidth="2" />
      </svg>
    </li>
  );
};
