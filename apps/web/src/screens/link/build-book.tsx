import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { usePrintFoot } from '../../look/print-foot';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import { BookSteps } from './book-steps';
import { useBookDay } from './book-day';
import { LinkTrouble } from './link-trouble';
import { useLink } from './use-link';

type Book = AnswerOf<'linkBook'>;

const Keep = ({ book }: { readonly book: Book }): ReactNode => {
  const { t } = useSpeech();
  const parts = book.sections.map(({ serial, label }) =>
    label === null ? serial : `${serial} (${t('build-book.label', { label })})`,
  );
  return (
    <section className="stack tight">
      <h2>{t('build-book.keep')}</h2>
      <ul className="book-list">
        <li>{t('build-book.keep-page')}</li>
        <li>{t('build-book.keep-numbers', { list: parts.join(', ') })}</li>
        <li>{t('build-book.keep-plates')}</li>
      </ul>
    </section>
  );
};

const Tests = ({ book }: { readonly book: Book }): ReactNode => {
  const { t, say } = useSpeech();
  const day = useBookDay();
  return (
    <section className="stack tight">
      <h2>{t('build-book.tests')}</h2>
      {book.tests.length === 0 && <p className="quiet">{t('build-book.no-tests')}</p>}
      <ul className="book-marked">
        {book.tests.map(({ says, on }) => (
          <li key={says.en}>
            <Mark name="proven" size={20} />
            <p>
              {say(says)} <span className="quiet small">{day(on)}</span>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
};

const Mended = ({ mended }: { readonly mended: NonNullable<Book['mended']> }): ReactNode => {
  const { t, say } = useSpeech();
  const day = useBookDay();
  return (
    <section className="stack tight">
      <h2>{t('build-book.mended')}</h2>
      {mended.length === 0 && <p className="quiet">{t('build-book.no-mended')}</p>}
      <ul className="book-list">
        {mended.map(({ says, on }, n) => (
          <li key={n}>
            {say(says)} <span className="quiet small">{day(on)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
};

const Pages = ({ book }: { readonly book: Book }): ReactNode => {
  const { t, say } = useSpeech();
  usePrintFoot(book.home);
  const day = useBookDay();
  const { home, model, plant, agencySaw, open, mended } = book;
  return (
    <article className="stack book">
      <div className="page-head">
        <div>
          <h1>{t('build-book.title')}</h1>
          <p>{t('build-book.says', { home, model, plant })}</p>
          {book.demonstration && <p className="quiet">{t('build-book.demonstration')}</p>}
        </div>
        <button type="button" className="button no-print" onClick={() => window.print()}>
          {t('build-book.print')}
        </button>
      </div>
      <BookSteps stations={book.stations} />
      <Tests book={book} />
      {agencySaw.length > 0 && <p>{t('build-book.agency', { stages: agencySaw.map(say).join(', ') })}</p>}
      {mended !== null && <Mended mended={mended} />}
      {open.length > 0 && (
        <section className="stack tight">
          <h2>{t('build-book.open')}</h2>
          <p>{open.map(say).join(' · ')}</p>
        </section>
      )}
      <Keep book={book} />
      <p className="quiet small no-print">{t('link.until', { until: day(book.until) })}</p>
      <p className="governing">{say(book.governing)}</p>
    </article>
  );
};

/** How one home was built, for its owner. */
export const BuildBook = ({ token }: { readonly token: string }): ReactNode => {
  const { answer, trouble, again } = useLink('linkBook', token);
  return (
    <div aria-busy={answer === null && trouble === null}>
      {trouble !== null && <LinkTrouble trouble={trouble} again={again} />}
      {answer !== null && <Pages book={answer} />}
    </div>
  );
};
