import type { ReactNode } from 'react';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';
import type { Candidate } from './claim';

type Rate = { readonly count: number; readonly of: number };
type Association = { readonly exposed: Rate; readonly others: Rate; readonly partly: Rate };

/** The tracing library's own counts; the contract hands them on as they are. */
const isAssociation = (detail: unknown): detail is Association =>
  typeof detail === 'object' && detail !== null && 'exposed' in detail && 'others' in detail;

type Props = { readonly candidate: Candidate; readonly unit: 'home' | 'section' };

/** Those that share it beside those that do not: claimed, of all in use. */
export const AssociationTable = ({ candidate, unit }: Props): ReactNode => {
  const { t } = useSpeech();
  const found = candidate.evidence.find(({ kind }) => kind === 'association');
  if (found === undefined || !isAssociation(found.detail)) return null;
  const { exposed, others, partly } = found.detail;
  const rows = [
    ['trace.share-it', exposed],
    ['trace.share-not', others],
    ['trace.share-partly', partly],
  ] as const;
  const name = t('trace.compared', { unit });
  return (
    <div className="stack tight">
      <TableFrame name={name}>
        <table className="counted">
          <caption>{name}</caption>
          <thead>
            <tr>
              <td />
              <th scope="col" className="number">
                {t('trace.claimed')}
              </th>
              <th scope="col" className="number">
                {t('trace.in-use')}
              </th>
              <th scope="col" className="number">
                {t('trace.share')}
              </th>
              <td />
            </tr>
          </thead>
          <tbody>
            {rows
              .filter(([, { of }]) => of > 0)
              .map(([word, rate]) => (
                <tr key={word}>
                  <th scope="row">{t(word)}</th>
                  <td className="number">{rate.count}</td>
                  <td className="number">{rate.of}</td>
                  <td className="number">{`${((100 * rate.count) / rate.of).toFixed(1)} %`}</td>
                  <td>
                    <ShareBar rate={rate} most={mostOf([exposed, others, partly])} />
                  </td>
                </tr>
              ))}
          </tbody>
        </table>
      </TableFrame>
    </div>
  );
};

const shareOf = ({ count, of }: Rate): number => (of === 0 ? 0 : count / of);
const mostOf = (rates: readonly Rate[]): number => Math.max(...rates.map(shareOf), 0.0001);

const ShareBar = ({ rate, most }: { readonly rate: Rate; readonly most: number }): ReactNode => (
  <svg className="counted-bar" viewBox="0 0 100 1" preserveAspectRatio="none" aria-hidden="true">
    <rect className="share" width={(100 * shareOf(rate)) / most} height="1" />
  </svg>
);
