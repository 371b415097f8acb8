import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';

const EVERYTHING = {};
/** Beyond these nobody reads on. */
const SHOWN = 20;

/** Which rules are overruled or turn out to be a missing signature: the first candidates for mending. */
export const Nuisance = (): ReactNode => {
  const { t, say } = useSpeech();
  const { answer } = useQuestion('nuisance', EVERYTHING);
  if (answer === null || answer.rules.length === 0) return null;
  return (
    <section className="stack tight" aria-labelledby="nuisance">
      <h2 id="nuisance">{t('book.nuisance')}</h2>
      <p className="quiet">{t('book.nuisance-says')}</p>
      <TableFrame name={t('book.nuisance')}>
        <table className="dense">
          <thead>
            <tr>
              <th scope="col">{t('book.rule')}</th>
              <th scope="col">{t('book.raised')}</th>
              <th scope="col">{t('book.overruled')}</th>
              <th scope="col">{t('book.signature')}</th>
              <th scope="col">{t('book.mended')}</th>
              <th scope="col">{t('book.open')}</th>
            </tr>
          </thead>
          <tbody>
            {answer.rules.slice(0, SHOWN).map((rule) => (
              <tr key={`${rule.rule} ${rule.operation} ${rule.characteristic ?? ''}`}>
                <th scope="row">
                  {say(rule.operationName)}
                  {rule.label === null ? '' : `, ${say(rule.label)}`}: {say(rule.name)}
                </th>
                <td>{rule.raised}</td>
                <td>{rule.overruled}</td>
                <td>{rule.signature}</td>
                <td>{rule.mended}</td>
                <td>{rule.open}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
};
