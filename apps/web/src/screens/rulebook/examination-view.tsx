import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { FindingList } from '../../ui/finding-list';
import { Serial } from '../../ui/serial';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';

export type Examination = AnswerOf<'examination'>;
type SectionChanges = Examination['sections'][number];

/** Every problem; without one, every difference in words and what it would mean on the line today. */
export const ExaminationView = ({ is }: { readonly is: Examination }): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="stack" role="status">
      <h2>{t('book.problems', { count: is.problems.length })}</h2>
      {is.problems.length > 0 ? <Problems of={is} /> : <Changes of={is} />}
    </div>
  );
};

const Problems = ({ of }: { readonly of: Examination }): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <TableFrame name={t('book.says')}>
      <table className="dense">
        <thead>
          <tr>
            <th scope="col">{t('book.file')}</th>
            <th scope="col">{t('book.row')}</th>
            <th scope="col">{t('book.column')}</th>
            <th scope="col">{t('book.says')}</th>
          </tr>
        </thead>
        <tbody>
          {of.problems.map((problem, index) => (
            <tr key={index}>
              <th scope="row">{problem.file}</th>
              <td>{problem.row}</td>
              <td>{problem.column ?? ''}</td>
              <td>{say(problem.words)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
};

const Changes = ({ of }: { readonly of: Examination }): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <>
      <h2>{t('book.changes', { count: of.changes.length, base: of.base ?? 0 })}</h2>
      <ul className="stack tight">
        {of.changes.map((change, index) => (
          <li key={index}>
            {say(change.says)}{' '}
            {change.touches !== null && (
              <span className="tag">
                {t(change.touches === 'design' ? 'book.touches-design' : 'book.touches-manual')}
              </span>
            )}
          </li>
        ))}
      </ul>
      <h2>{t('book.dry-run', { count: of.sections.length, looked: of.looked })}</h2>
      {of.sections.map((section) => (
        <SectionView key={section.serial} of={section} />
      ))}
    </>
  );
};

/** What it would mean for one section: newly due, no longer due, required differently, not accepted. */
export const SectionView = ({
  of,
  open = false,
}: {
  readonly of: SectionChanges;
  readonly open?: boolean;
}): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <details className="book-operation" open={open}>
      <summary>
        <Serial of={of.serial} />
      </summary>
      <ul className="stack tight">
        {of.unfit !== null && <li>{t('book.unfit', { says: of.unfit })}</li>}
        {of.due.map(({ id, name }) => (
          <li key={id}>{t('book.would-due', { name: say(name) })}</li>
        ))}
        {of.notDue.map(({ id, name }) => (
          <li key={id}>{t('book.would-drop', { name: say(name) })}</li>
        ))}
        {of.changed.map(({ says }, index) => (
          <li key={index}>{say(says)}</li>
        ))}
      </ul>
      <FindingList findings={of.findings} />
    </details>
  );
};
