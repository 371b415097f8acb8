import { useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { ChoiceField, TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { Issued } from './issued';
import { Neighbours } from './neighbours';
import { Nuisance } from './nuisance';
import { OperationEntry } from './operation-entry';
import { WholeGraph } from './whole-graph';
import type { Book } from './book';

const LATEST = {};

const holds = (text: string, ...parts: readonly string[]): boolean =>
  parts.some((part) => part.toLowerCase().includes(text));

/** Stations, operations in their order, and every required value with where it comes from. */
export const ReadPart = (): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('rulebook', LATEST);
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  if (answer === null) return null;
  if (answer.operations.length === 0) return <h1>{t('book.none')}</h1>;
  return <BookView book={answer} />;
};

const BookView = ({ book }: { readonly book: Book }): ReactNode => {
  const { t, say } = useSpeech();
  const [search, setSearch] = useState('');
  const [station, setStation] = useState('');
  const [focus, setFocus] = useState('');
  /** Chosen again it is let go. */
  const choose = (id: string): void => setFocus((last) => (last === id ? '' : id));
  const text = search.trim().toLowerCase();
  const found = book.operations.filter(
    ({ id, name, station: at }) =>
      (station === '' || at === station) &&
      (text === '' ||
        holds(text, id, name.en, name.es) ||
        book.values.some(
          ({ operation, label, requires }) =>
            operation === id && holds(text, label.en, label.es, requires.en, requires.es),
        )),
  );
  return (
    <>
      <div className="page-head">
        <h1>{t('book.title', { revision: book.revision })}</h1>
        <button type="button" className="button no-print" onClick={() => window.print()}>
          {t('book.print')}
        </button>
      </div>
      <div className="book-find no-print">
        <TextField name={t('book.search')} value={search} change={setSearch} />
        <ChoiceField
          name={t('book.station')}
          value={station}
          from={book.stations.map(({ id, name }) => ({ id, says: say(name) }))}
          change={setStation}
          none={t('book.all-stations')}
        />
      </div>
      <WholeGraph book={book} of={focus} choose={choose} found={new Set(found.map(({ id }) => id))} />
      <Neighbours book={book} of={focus} choose={choose} />
      <p className="governing">{say(book.governing)}</p>
      {book.stations
        .filter(({ id }) => found.some((operation) => operation.station === id))
        .map(({ id, name, lanes }) => (
          <section key={id} className="stack tight" aria-labelledby={`station-${id}`}>
            <h2 id={`station-${id}`}>{say(name)}</h2>
            {lanes.length > 1 && (
              <p className="quiet small">{t('book.lanes', { lanes: lanes.join(' · ') })}</p>
            )}
            {found
              .filter((operation) => operation.station === id)
              .map((operation) => (
                <OperationEntry key={operation.id} book={book} operation={operation} choose={choose} />
              ))}
          </section>
        ))}
      <Nuisance />
      <Issued book={book} />
    </>
  );
};
