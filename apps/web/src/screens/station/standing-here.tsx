import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { Mark } from '../../ui/mark';
import { useNow } from '../../ui/now';
import { Serial } from '../../ui/serial';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { Station } from './cards';

type Standing = AnswerOf<'line'>['sections'][number];
type Props = { readonly station: Station; readonly sections: readonly Standing[] };

/** Before anything is scanned: what stands here now, one tap away. */
export const StandingHere = ({ station, sections }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const times = useTimes();
  const now = useNow();
  const here =
    station.kind === 'shop'
      ? sections.filter(({ stage }) => stage === 'on-line')
      : sections.filter((one) => one.station === station.id);
  return (
    <section className="stack tight" aria-labelledby="standing">
      <h2 id="standing">
        {t(station.kind === 'shop' ? 'standing.line' : 'standing.here', { count: here.length })}
      </h2>
      {here.length === 0 && <p className="waits">{t('standing.nothing')}</p>}
      <ul className="standing">
        {here.map((section) => (
          <li key={section.serial}>
            <Link className="standing-link" to={places.sectionAt(station.id, section.serial)}>
              <Serial of={section.serial} />
              <span className="standing-says">
                {section.model}
                {section.since !== null && ` · ${times.since(section.since, now)}`}
              </span>
              {section.heldBy !== null && (
                <span className="standing-hold">
                  <Mark name="held" size={20} /> {say(section.heldBy)}
                </span>
              )}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
};
