import type { ReactNode } from 'react';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';
import type { Book, BookOperation } from './book';

type Props = {
  readonly book: Book;
  readonly operation: BookOperation;
  readonly choose: (id: string) => void;
};

/** One operation: what comes before it, what it covers, and what is required of it. */
export const OperationEntry = ({ book, operation, choose }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const name = (id: string): string => {
    const known = book.operations.find((one) => one.id === id);
    return known === undefined ? id : say(known.name);
  };
  const needs = [
    ...operation.requires.map((edge) => name(edge.operation)),
    ...(operation.allDue ? [t('book.all-due')] : []),
  ];
  return (
    <details className="book-operation">
      <summary>
        <strong>{say(operation.name)}</strong>
        {operation.conditions !== null && <span className="quiet small"> · {say(operation.conditions)}</span>}
      </summary>
      <div className="stack tight">
        {operation.caution !== null && (
          <p className="notice due">
            {t('book.caution')}: {say(operation.caution)}
          </p>
        )}
        <dl className="book-facts">
          <dt>{t('book.needs')}</dt>
          <dd>{needs.length === 0 ? t('book.nothing') : needs.join(', ')}</dd>
          {operation.hides.length > 0 && <dt>{t('book.hides')}</dt>}
          {operation.hides.length > 0 && (
            <dd>{[...new Set(operation.hides.map((hide) => name(hide.operation)))].join(', ')}</dd>
          )}
        </dl>
        <Values book={book} operation={operation} />
        <div className="no-print">
          <button type="button" className="button" onClick={() => choose(operation.id)}>
            {t('book.show')}
          </button>
        </div>
      </div>
    </details>
  );
};

const Values = ({ book, operation }: Omit<Props, 'choose'>): ReactNode => {
  const { t, say } = useSpeech();
  const values = book.values.filter((value) => value.operation === operation.id);
  if (values.length === 0) return null;
  return (
    <TableFrame name={`${t('book.values-of')}: ${say(operation.name)}`}>
      <table className="dense">
        <thead>
          <tr>
            <th scope="col">{t('book.what')}</th>
            <th scope="col">{t('book.where')}</th>
            <th scope="col">{t('book.required')}</th>
            <th scope="col">{t('book.source')}</th>
          </tr>
        </thead>
        <tbody>
          {values.map((value) => (
            <tr key={value.row}>
              <th scope="row">{say(value.label)}</th>
              <td>{value.conditions === null ? t('book.everywhere') : say(value.conditions)}</td>
              <td>{say(value.requires)}</td>
              <td>{say(value.source)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
};
