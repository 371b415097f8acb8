import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import type { Speech } from '../../words/words';
import { useBookDay } from './book-day';

type Station = AnswerOf<'linkBook'>['stations'][number];
type Work = Station['work'][number];

const knownSays = (t: Speech['t'], { hidden, known }: Work): string => {
  if (known === 'reconstructed') return t('build-book.reconstructed');
  if (known === 'signed') return t('build-book.signed');
  return t(hidden ? 'build-book.seen' : 'build-book.looked-at');
};

const Step = ({ work }: { readonly work: Work }): ReactNode => {
  const { t, say } = useSpeech();
  const day = useBookDay();
  return (
    <li>
      <Mark name={work.hidden ? 'covered' : 'proven'} size={20} />
      <div>
        <p>{say(work.says)}</p>
        <p className="quiet small">
          {day(work.on)}. {work.hidden && `${t('build-book.hidden')} `}
          {knownSays(t, work)} {work.photos > 0 && t('build-book.photos', { count: work.photos })}
        </p>
      </div>
    </li>
  );
};

/** Station by station, in the order the home went through them. */
export const BookSteps = ({ stations }: { readonly stations: readonly Station[] }): ReactNode => {
  const { t, say } = useSpeech();
  const day = useBookDay();
  return (
    <section className="stack">
      <h2>{t('build-book.steps')}</h2>
      {stations
        .filter(({ work }) => work.length > 0)
        .map(({ name, from, to, work }) => (
          <section key={name.en} className="stack tight book-station">
            <h3>
              {say(name)}{' '}
              <span className="quiet small">
                {from === to ? day(to) : t('build-book.from-to', { from: day(from), to: day(to) })}
              </span>
            </h3>
            <ul className="book-marked">
              {work.map((one) => (
                <Step key={one.says.en} work={one} />
              ))}
            </ul>
          </section>
        ))}
    </section>
  );
};
